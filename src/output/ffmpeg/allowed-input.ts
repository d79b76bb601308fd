/**
 * What ffmpeg may open. A scene may come from a stranger, and a file that it calls a recording can be a list of other
 * files, of addresses or of devices, whatever its name ends in. So each input of each call names the protocols and the
 * formats that it may have (`protocol_whitelist` and `format_whitelist` of libavformat): all else ends with an error
 * before it is read.
 */
import { closeSync, openSync, readSync } from 'node:fs';

/**
 * Formats in which one file holds pictures or sound itself, by the names of ffmpeg's demuxers. Left out are those that
 * open further files, addresses or devices: `hls`, `concat`, `dash`, `sdp`, `rtsp`, `image2` (a pattern of names),
 * `imf`, `mlv`, `vobsub`, `lavfi`. `mov` opens what it refers to only where it is asked to (`enable_drefs`).
 */
const recordingFormats: readonly string[] = [
  ...['mov', 'matroska', 'avi', 'mpegts', 'mpeg', 'mpegvideo', 'asf', 'flv', 'mxf', 'nut', 'ivf', 'dv', 'yuv4mpegpipe'],
  ...['h264', 'hevc', 'm4v', 'av1', 'obu', 'gif', 'apng', 'png_pipe', 'webp_pipe', 'bmp_pipe'],
  ...['wav', 'w64', 'flac', 'mp3', 'aac', 'ac3', 'eac3', 'ogg', 'aiff', 'au', 'caf', 'amr', 'ape', 'wv', 'tta'],
];

/** The options before an input that is a file on this machine. */
export const fileInput: readonly string[] = [
  ...['-protocol_whitelist', 'file'],
  ...['-format_whitelist', recordingFormats.join(',')],
];

/** The options before an input that we write down ffmpeg's throat. */
export const pipedInput: readonly string[] = ['-protocol_whitelist', 'pipe'];

/** The options before an input that stands in the call itself. */
export const textInput: readonly string[] = ['-protocol_whitelist', 'data'];

/** What the file is, in words, if it is of no allowed format; looks at its first bytes alone. */
export function whatIsRefused(path: string): string {
  const head = headOf(path);
  if (/^\xff\xd8\xff/.test(head)) return 'a JPEG picture, which could stand for a row of them; save it as a PNG';
  const list = lists.find(([beginning]) => beginning.test(head))?.[1] ?? 'of a form that may lead to other files';
  return `${list}; name the recording itself`;
}

/** How texts begin that name other files or addresses, and what they are called. */
const lists: readonly (readonly [RegExp, string])[] = [
  [/^#EXTM3U/, 'a playlist (M3U8)'],
  [/^ffconcat version/, 'a list of files to join (ffconcat)'],
  [/^v=0\r?\n/, 'the description of a stream (SDP)'],
  [/^<\?xml[\s\S]{0,200}<MPD/, 'the description of a stream (DASH)'],
  [/^<\?xml[\s\S]{0,200}<(CompositionPlaylist|AssetMap)/, 'a playlist (IMF)'],
];

/** Without a byte order mark and the blanks before the first word. */
function headOf(path: string): string {
  const bytes = Buffer.alloc(512);
  const file = openSync(path, 'r');
  try {
    return bytes
      .toString('latin1', 0, readSync(file, bytes))
      .replace(/^\xef\xbb\xbf/, '')
      .trimStart();
  } finally {
    closeSync(file);
  }
}
