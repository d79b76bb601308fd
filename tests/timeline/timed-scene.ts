/**
 * Small scenes for tests of time: a nearly full 4x4 grid, and steps as YAML.
 */

import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import type { Code } from '../../src/scene/codes.ts';
import type { Scene } from '../../src/scene/scene.ts';
import { type Narration, readNarration } from '../../src/timeline/narration.ts';
import type { Schedule, ScheduleOptions } from '../../src/timeline/schedule.ts';

/** A narration of two cues. */
export const talk = `WEBVTT

intro
00:01.000 --> 00:05.000
Look at the corner here.

middle
00:10.000 --> 00:20.000
It is here or it is here, and this ends it.
`;

export interface Fixture {
  /** Lines below `video:`, indented by two. */
  readonly video?: string;
  /** Items of `steps`, each line indented by two. */
  readonly steps: string;
  readonly narration?: string;
  readonly options?: Partial<ScheduleOptions>;
}

export interface Timed {
  readonly schedule: Schedule;
  readonly scene: Scene;
  /** `line:column severity code: message`, notes after it as `(line: message)`; lines and columns of `video` and `steps` from 1. */
  readonly diagnostics: readonly string[];
  /** Of the same faults, in the same order. */
  readonly codes: readonly Code[];
}

/** The scene of a fixture, and its schedule. */
export function timed({ video = '  rate: 25\n', steps, narration, options = {} }: Fixture): Timed {
  const named = narration === undefined || video.includes('narration:') ? '' : '  narration: talk.vtt\n';
  const head = 'proofreel: 1\npuzzle:\n  boxes: 2x2\n  givens: 1.34 3412 2143 432.\nvideo:\n  size: 1280x720\n';
  const text = `${head}${named}${video}steps:\n${steps}`;
  const read = readScene(text);
  if (read.scene === undefined)
    throw new Error(`the fixture is not a scene: ${read.diagnostics.map((fault) => fault.message).join('; ')}`);
  const talk: Narration | undefined =
    narration === undefined ? undefined : readNarration(narration, 'talk.vtt').narration;
  const { schedule: made, diagnostics } = schedule(read.scene, talk, options);
  const linesBefore = `${head}${named}`.split('\n').length - 1;
  return {
    schedule: made,
    scene: read.scene,
    codes: diagnostics.map(({ code }) => code),
    diagnostics: diagnostics.map(({ span, severity, code, message, notes = [] }) => {
      const before = text.slice(0, span.start).split('\n');
      const noted = notes.map(
        (note) => ` (${text.slice(0, note.span.start).split('\n').length - linesBefore}: ${note.message})`,
      );
      return `${before.length - linesBefore}:${before.at(-1)!.length + 1} ${severity} ${code}: ${message}${noted.join('')}`;
    }),
  };
}

/**
 * Takes the expected faults out of a fixture's text: a line `#  ^^^ error CODE: PART` speaks of the line above it,
 * the first `^` under the fault's first sign; the message must contain PART.
 */
export function withoutExpectations(text: string): {
  readonly text: string;
  readonly expected: readonly { readonly place: string; readonly part: string }[];
} {
  const kept: string[] = [];
  const expected: { place: string; part: string }[] = [];
  for (const line of text.split('\n')) {
    const match = /^#\s*\^+ (error|warning) ([a-z-]+): (.*)$/.exec(line);
    if (match === null) kept.push(line);
    else expected.push({ place: `${kept.length}:${line.indexOf('^') + 1} ${match[1]} ${match[2]}`, part: match[3]! });
  }
  return { text: kept.join('\n'), expected };
}
