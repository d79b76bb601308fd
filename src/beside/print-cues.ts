/**
 * Cues as files: WebVTT (W3C) and SRT (no standard; as players read it).
 */
import type { TextCue } from './cue.ts';

export type CueFormat = 'vtt' | 'srt';

/** The whole file, line breaks as `\n`. */
export function printCues(cues: readonly TextCue[], format: CueFormat): string {
  if (format === 'srt') return cues.map((cue, index) => srtCue(cue, index + 1)).join('\n');
  return ['WEBVTT\n', ...cues.map(vttCue)].join('\n');
}

function vttCue({ name, from, to, lines }: TextCue): string {
  const identifier = name === undefined ? '' : `${name}\n`;
  const text = directed(lines).map((line) =>
    line.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll(rightToLeft, '&rlm;'),
  );
  return `${identifier}${clock(from, '.')} --> ${clock(to, '.')}\n${text.join('\n')}\n`;
}

/** SRT has no escapes: an arrow would be read as times, and anything that looks like a tag is one. */
function srtCue({ from, to, lines }: TextCue, number: number): string {
  const text = directed(lines).map((line) => line.replaceAll('-->', '\u2192').replaceAll('<', '\u2039'));
  return `${number}\n${clock(from, ',')} --> ${clock(to, ',')}\n${text.join('\n')}\n`;
}

/** `00:01:02.500`. */
function clock(time: number, sign: '.' | ','): string {
  const two = (value: number) => String(value).padStart(2, '0');
  const seconds = Math.floor(time / 1000);
  const rest = String(time % 1000).padStart(3, '0');
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}${sign}${rest}`;
}

const rightToLeft = '\u200F';

/**
 * A player sets each line by its first letter (W3C WebVTT, section 7.2, by the Unicode bidirectional algorithm): a line
 * of right-to-left text that begins with a Latin letter, such as `r3c5`, gets a mark before it.
 */
function directed(lines: readonly string[]): readonly string[] {
  const text = lines.join(' ');
  const [right, left] = [text.match(fromTheRight)?.length ?? 0, text.match(/\p{Script=Latin}/gu)?.length ?? 0];
  if (right <= left) return lines;
  return lines.map((line) => {
    const first = /\p{L}/u.exec(line)?.[0];
    return first === undefined || first.match(fromTheRight) === null ? `${rightToLeft}${line}` : line;
  });
}

const fromTheRight = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/gu;
