/**
 * Everything that is looked up by a name somebody wrote: a name that every object of JavaScript answers to is not one of
 * ours. The keys of scenes and looks are in `fixtures/scenes/keys-of-every-object.yaml` and its like.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPhrases } from '../../src/draft/phrases.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { canonicalName, familyNamed, nearestNames } from '../../src/scene/argument-names.ts';
import type { Diagnostic } from '../../src/scene/diagnostic.ts';
import { readTeachingCosts } from '../../src/scene/teaching-costs.ts';
import { techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { UsageError } from '../../src/verbs/usage-error.ts';
import type { Option } from '../../src/verbs/verb.ts';
import { verbs } from '../../src/verbs/verbs.ts';
import { towers } from '../staging/stage.ts';

const names = [
  ...Object.getOwnPropertyNames(Object.prototype),
  ...['prototype', 'length', 'name', 'constructor.name', 'map', 'caller'],
];
const english = readFileSync(new URL('../../assets/phrases/en.yaml', import.meta.url), 'utf8');
const codesOf = (diagnostics: readonly Diagnostic[]) => diagnostics.map(({ code }) => code);

it('every object has members of such names', () => {
  expect(names).toEqual(expect.arrayContaining(['constructor', 'toString', '__proto__', 'hasOwnProperty', 'valueOf']));
});

describe.each(names)('%s', (name) => {
  it('is no argument, family or technique', () => {
    expect([canonicalName(name), familyNamed(name)]).toEqual([undefined, undefined]);
    expect(nearestNames(name).every((near) => techniqueNamed(near).name === near)).toBe(true);
  });

  it('has no cost, is not free, and is no key of the table', () => {
    const { diagnostics } = readTeachingCosts(`step: 1\n${name}: 1\nfree: [${name}]\nnames: {${name}: 3}\n`);
    const codes = codesOf(diagnostics);
    if (name === 'name') expect(codes).toContain('unknown-key');
    else expect(codes).toEqual(['unknown-key', 'unknown-name', 'unknown-name']);
  });

  it('is no phrase, no slot and nothing that a language has a word for', () => {
    const key = english.replace(/^parts:$/m, `parts:\n  ${name}: x`);
    expect(codesOf(readPhrases(key).diagnostics)).toEqual(['unknown-key']);
    const named = english.replace('names: {}', `names: {${name}: x}`).replace('{given} digits', `{${name}} digits`);
    expect(codesOf(readPhrases(named).diagnostics)).toEqual(['unknown-name', 'unknown-word']);
  });

  it.each(['vtt', 'srt', 'json'])('names a cue of a narration in %s only where one is called so', (ending) => {
    const cue = `${name}\n00:00:01,000 --> 00:00:02,000\nLook here.\n`;
    const json = `[{"word": "Look", "start": 1, "end": 2, "${name}": 1, "__proto__": {"word": 3}}]`;
    const text = { vtt: `WEBVTT\n\n${cue.replaceAll(',', '.')}`, srt: cue, json }[ending] ?? '';
    const { narration } = readNarration(text, `a.${ending}`);
    expect(narration.cues).toHaveLength(1);
    const other = name === 'valueOf' ? 'toString' : 'valueOf';
    for (const called of [name, other]) {
      const steps = `  - {id: s, at: "cue ${called}", say: Look.}`;
      const { scene } = readScene(towers(steps, 'narration: a.vtt'));
      const codes = scene === undefined ? ['not read'] : codesOf(schedule(scene, narration, {}).diagnostics);
      expect(codes.includes('cue-not-found')).toBe(!(called === name && ending !== 'json'));
    }
  });
});

const options = Object.entries(verbs).flatMap(([verb, record]) =>
  Object.entries<Option<unknown, unknown>>(record.options).map(([key, option]) => ({ verb, key, option })),
);

it.each(options)('$verb --$key', ({ key, option }) => {
  for (const name of names) {
    let value: unknown;
    try {
      value = option.read(name, `--${key}`);
    } catch (failure) {
      expect(failure).toBeInstanceOf(UsageError);
      continue;
    }
    // What is taken as it stands, or read to a value of its own: never what an object had by that name.
    expect(typeof value).not.toBe('function');
    expect(value).not.toBe(Object.prototype);
    if (typeof value === 'string' || Array.isArray(value)) expect(String(value)).toContain(name);
  }
});
