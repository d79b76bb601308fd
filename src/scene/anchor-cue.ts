/**
 * `cue NAME`, `cue NAME +0.5`: the start of a cue of the narration, or some time after it.
 */

import { type Anchor, fault, type ReadTime, resolved, type SpokenCues, unresolved } from './anchor.ts';
import { secondsOf } from './anchor-absolute.ts';
import { add, type Fraction, zero } from './fraction.ts';
import { didYouMean } from './nearest-word.ts';

export interface CueTime {
  readonly kind: 'cue';
  readonly cue: string;
  readonly plus: Fraction;
}

export const cueAnchor: Anchor<CueTime> = {
  examples: ['cue NAME'],
  samples: ['cue intro', 'cue intro +0.5'],
  word: 'cue',
  dependsOn: ['narration'],
  read: (text) => (/^cue\b/i.test(text) ? readCue(text) : undefined),
  resolve({ cue: name, plus }, { narration }) {
    if (narration === 'unread') return { ok: false, fault: undefined };
    if (narration === 'none') {
      const message = `cue ${name} needs a narration; name one in video (narration: talk.vtt), or give the time itself (12.5, 1:02)`;
      return unresolved('no-narration', message);
    }
    const cue = findCue(narration, name);
    if (cue !== undefined) return resolved(add(cue.start, plus));
    return unresolved('cue-not-found', whyNoCue(narration, name));
  },
  absolutePart: () => undefined,
  whyNowhere: ({ cue }, { narration }) =>
    typeof narration === 'string' || findCue(narration, cue) !== undefined ? undefined : whyNoCue(narration, cue),
};

/** By identifier, else by number; of several with the same identifier, the first in the file. */
export function findCue({ cues }: SpokenCues, name: string): SpokenCues['cues'][number] | undefined {
  const named = cues.filter((cue) => cue.identifier === name).sort((a, b) => a.number - b.number);
  return named[0] ?? cues.find((cue) => String(cue.number) === name);
}

function whyNoCue({ name: file, cues }: SpokenCues, name: string): string {
  const identifiers = cues.flatMap((cue) => (cue.identifier === undefined ? [] : [cue.identifier]));
  const near = didYouMean(name, identifiers);
  if (near !== '') return `${file} has no cue "${name}"${near}`;
  if (cues.length === 0) return `${file} has no cue at all, so none "${name}"`;
  const some = identifiers.slice(0, 5).map((identifier) => `"${identifier}"`);
  const known =
    some.length === 0 ? 'none has a name' : `named ${some.join(', ')}${identifiers.length > 5 ? ' and so on' : ''}`;
  return `${file} has no cue "${name}"; it has ${cues.length}, numbered from 1, ${known}`;
}

function readCue(text: string): ReadTime<CueTime> {
  const rest = text.slice(3).trim();
  const match = /^(.*?)(?:\s\+\s*(\S+))?$/s.exec(rest);
  const cue = (match?.[1] ?? '').trim();
  if (cue === '' || cue.startsWith('+')) {
    const message = `"${text}" names no cue; write cue and its name or number in the narration`;
    return fault('not-a-time', 0, text.length, message);
  }
  const goesBack = /\s[-\u2212]\s*\d[\d.:]*s?$/;
  if (goesBack.test(cue)) {
    const at = text.search(goesBack) + 1;
    const message = 'a time can lie after the start of a cue, not before it; write cue NAME +0.5, or words "as said"';
    return fault('not-a-time', at, text.length - at, message);
  }
  const written = match?.[2];
  const plus = written === undefined ? zero : secondsOf(written);
  if (plus !== undefined) return { ok: true, time: { kind: 'cue', cue, plus } };
  const at = text.lastIndexOf(written!);
  return fault('not-a-time', at, written!.length, `"${written}" is not a number of seconds; write cue ${cue} +0.5`);
}
