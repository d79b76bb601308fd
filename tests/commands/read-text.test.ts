import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readText } from '../../src/commands/read-text.ts';
import { UsageError } from '../../src/verbs/usage-error.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-text-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string, bytes: Uint8Array | string): string => {
  writeFileSync(join(folder, name), bytes);
  return join(folder, name);
};

describe('the text of a file', () => {
  it.each([
    ['plain', 'title: Zwölf\n'],
    ['nothing', ''],
    ['with a byte order mark', '\uFEFFtitle: x\n'],
  ])('%s', (name, text) => {
    expect(readText(file(name, text), 'scene file')).toBe(text);
  });

  mkdirSync(join(folder, 'inner'));
  it.each([
    ['none', 'nowhere.yaml', 'there is no look nowhere.yaml'],
    ['a folder', join(folder, 'inner'), `${join(folder, 'inner')} is a folder; name a look`],
    ['not UTF-8', file('a', Uint8Array.of(0x66, 0xfc, 0x72)), `${join(folder, 'a')} is not UTF-8 text`],
    ['zeros', file('b', Uint8Array.of(0x66, 0, 0x72)), `${join(folder, 'b')} is not UTF-8 text`],
    ['UTF-16', file('c', Uint8Array.of(0xff, 0xfe, 0x66, 0)), `${join(folder, 'c')} is written in UTF-16`],
  ])('%s is refused', (_, path, message) => {
    expect(() => readText(path, 'look')).toThrow(message);
    expect(() => readText(path, 'look')).toThrow(UsageError);
  });
});
