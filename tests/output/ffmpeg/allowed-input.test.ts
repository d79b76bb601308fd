/**
 * Recordings that are none: lists of other files and addresses under any name, devices. Each is refused with its name, and
 * what it names is not opened: a server on this machine hears of no request, and a list of a recording that can be read
 * gives none of it.
 */
import { execFile, execFileSync } from 'node:child_process';
import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createServer as createSocket } from 'node:net';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decode, type Input, run } from '../../../src/output/ffmpeg/ffmpeg.ts';
import { countFrames, cutOffAt, probeMedia } from '../../../src/output/ffmpeg/media.ts';
import { fraction, zero } from '../../../src/scene/fraction.ts';
import { ffmpeg, scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
let requests = 0;
const server = createServer((_, answer) => {
  requests += 1;
  answer.end(readFileSync(scratch.at('clip.mp4')));
});
const socket = createSocket();
let address = '';

beforeAll(async () => {
  const source = ['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25', '-f', 'lavfi', '-i', 'sine=duration=1'];
  ffmpeg([...source, '-frames:v', '25', '-c:v', 'libx264', '-pix_fmt', 'yuv420p', scratch.at('clip.mp4')]);
  ffmpeg(['-i', scratch.at('clip.mp4'), '-frames:v', '1', scratch.at('photo.jpg')]);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  await new Promise<void>((resolve) => socket.listen(scratch.at('socket.mp4'), resolve));
  const bound = server.address();
  address = `http://127.0.0.1:${typeof bound === 'object' ? bound?.port : ''}`;
});
afterAll(() => {
  server.close();
  socket.close();
  scratch.remove();
});

const mpd = (url: string): string => `<?xml version="1.0"?>
<MPD xmlns="urn:mpeg:dash:schema:mpd:2011" type="static" mediaPresentationDuration="PT1S" profiles="urn:mpeg:dash:profile:full:2011">
<Period><AdaptationSet mimeType="video/mp4"><Representation id="a" bandwidth="1"><BaseURL>${url}</BaseURL></Representation></AdaptationSet></Period></MPD>
`;

/** `url`: a file beside the list, or one of the server's. */
const lists: readonly { name: string; text: (url: string) => string; said: string }[] = [
  {
    name: 'm3u8',
    text: (url) => `#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\n${url}\n#EXT-X-ENDLIST\n`,
    said: 'is a playlist (M3U8); name the recording itself',
  },
  {
    name: 'ffconcat',
    text: (url) => `ffconcat version 1.0\nfile '${url}'\n`,
    said: 'is a list of files to join (ffconcat); name the recording itself',
  },
  {
    name: 'sdp',
    text: () => 'v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=video 5004 RTP/AVP 33\n',
    said: 'is the description of a stream (SDP); name the recording itself',
  },
  { name: 'mpd', text: mpd, said: 'is the description of a stream (DASH); name the recording itself' },
];
const named = lists.flatMap((list) =>
  [list.name, 'mp4'].flatMap((ending) =>
    ['file', 'http'].map((to) => ({ ...list, ending, to, file: `${list.name}-of-${to}.${ending}` })),
  ),
);

describe('a list of other files', () => {
  it.each(named)('$file', async ({ file, text, to, said }) => {
    writeFileSync(scratch.at(file), text(to === 'file' ? 'clip.mp4' : `${address}/clip.mp4`));
    const media = await probeMedia(scratch.at(file));
    expect(media).toEqual({ kind: 'unreadable', message: `${file} ${said}` });
    expect(requests).toBe(0);
  });

  it('is refused by each program that is handed it, though it were put there after the first look', async () => {
    const input = (file: string): Input => ({ kind: 'file', file, options: [] });
    for (const { name } of lists) {
      const list = scratch.at(`${name}-of-http.mp4`);
      const output = scratch.at('out.mp4');
      const options = ['-c', 'copy', '-f', 'mp4'];
      const copying = run({ inputs: [input(list)], filter: undefined, outputOptions: options, output }, undefined);
      await expect(copying).rejects.toThrow('the encoder failed');
      const decoding = decode(
        { file: list, decoder: undefined, filter: 'null', pixelFormat: 'gray', frameBytes: 64 * 48 },
        () => expect.unreachable('a picture'),
        undefined,
      );
      await expect(decoding).rejects.toThrow('cannot be decoded');
      expect(await countFrames(list)).toBe(0);
      expect(await cutOffAt(list, fraction(5n))).toEqual(zero);
    }
    expect(requests).toBe(0);
  });

  it('but what they name can be read where it is named itself, and by an address where that is allowed', async () => {
    expect(await probeMedia(scratch.at('clip.mp4'))).toMatchObject({ kind: 'media', hasAudio: true });
    // What would happen without the lists of what is allowed: the same file leads there.
    const list = scratch.at('m3u8-of-http.m3u8');
    const allowed = ['-protocol_whitelist', 'file,http,tcp', '-allowed_extensions', 'ALL'];
    // Not in this thread, which answers the request.
    await promisify(execFile)('ffmpeg', ['-v', 'error', '-nostdin', ...allowed, '-i', list, '-f', 'null', '-']);
    expect(requests).toBeGreaterThan(0);
    requests = 0;
  });
});

describe('what is not a file', () => {
  it('is refused by what it is', async () => {
    execFileSync('mkfifo', [scratch.at('pipe.mp4')]);
    symlinkSync('/dev/zero', scratch.at('zero.mp4'));
    const rows: readonly [string, string][] = [
      ['zero.mp4', 'a device'],
      ['pipe.mp4', 'a pipe'],
      ['socket.mp4', 'a socket'],
      ['.', 'a folder'],
    ];
    for (const [name, what] of rows) {
      const message = expect.stringMatching(new RegExp(` is ${what}, not a recording$`));
      expect(await probeMedia(scratch.at(name))).toEqual({ kind: 'unreadable', message });
    }
  });

  it.each([
    'http://127.0.0.1/clip.mp4',
    'file:clip.mp4',
    'concat:clip.mp4|clip.mp4',
    'pipe:0',
    'data:video/mp4;base64,AAAA',
    'subfile,,start,0,end,9,,:clip.mp4',
  ])('%s is the name of a file that is not there', async (name) => {
    expect(await probeMedia(name)).toEqual({ kind: 'unreadable', message: `there is no file ${name}` });
  });
});

it('a picture of a kind that stands for a row of them is refused, with what to do', async () => {
  expect(await probeMedia(scratch.at('photo.jpg'))).toEqual({
    kind: 'unreadable',
    message: 'photo.jpg is a JPEG picture, which could stand for a row of them; save it as a PNG',
  });
});
