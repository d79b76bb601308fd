/**
 * Lines, columns and markers: with tabs, wide signs, byte order marks and long lines.
 */
import { describe, expect, it } from 'vitest';
import { placeOf, printDiagnostic } from '../../src/scene/locate.ts';

describe('the place of an offset', () => {
  const rows: readonly [string, number, number, number][] = [
    ['', 0, 1, 1],
    ['ab\ncd', 0, 1, 1],
    ['ab\ncd', 2, 1, 3],
    ['ab\ncd', 3, 2, 1],
    ['ab\r\ncd', 4, 2, 1],
    ['\ufeffab', 1, 1, 1],
    ['\ufeffab\ncd', 4, 2, 1],
    ['\tab', 1, 1, 2],
    ['👍x', 2, 1, 2],
    ['日本x', 2, 1, 3],
  ];
  it.each(rows)('%j at %i', (text, offset, line, column) => {
    expect(placeOf(text, offset)).toEqual({ line, column });
  });
});

/** The line and the marker that stands under `fault` in the text. */
function markerUnder(text: string, fault: string): string {
  const start = text.indexOf(fault);
  const span = { start, end: start + fault.length };
  const printed = printDiagnostic('f.yaml', text, { code: 'notation', severity: 'error', span, message: 'm' });
  return printed.split('\n').slice(1).join('\n');
}

describe('the marker lies under the fault', () => {
  it('at the beginning, and in the middle', () => {
    expect(markerUnder('so: r1', 'so')).toBe('   1 | so: r1\n     | ^^');
    expect(markerUnder('a: 1\nso: r1\nb: 2', 'r1')).toBe('   2 | so: r1\n     |     ^^');
  });
  it('after a tab, which it repeats', () => expect(markerUnder('a:\tx', 'x')).toBe('   1 | a:\tx\n     |   \t^'));
  it('after wide signs, which take two columns', () => {
    expect(markerUnder('a: 日本 x', 'x')).toBe('   1 | a: 日本 x\n     |         ^');
    expect(markerUnder('a: 日本 x', '日本')).toBe('   1 | a: 日本 x\n     |    ^^^^');
  });
  it('after signs that take no column', () =>
    expect(markerUnder('a: e\u0301 x', 'x')).toBe('   1 | a: e\u0301 x\n     |      ^'));
  it('in the first line after a byte order mark', () =>
    expect(markerUnder('\ufeffab', 'b')).toBe('   1 | ab\n     |  ^'));
  it('to the end of its line, where it goes on in the next', () => {
    expect(markerUnder('a: b c\n  d', 'b c\n  d')).toBe('   1 | a: b c\n     |    ^^^');
  });
  it('without the carriage return of a line', () =>
    expect(markerUnder('ab\r\ncd', 'ab\r\ncd')).toBe('   1 | ab\n     | ^^'));
  it('in a long line, of which the part around it is shown', () => {
    const [line, marker] = markerUnder(`${'r1c1=1 '.repeat(60)}fault ${'r1c1=1 '.repeat(60)}`, 'fault').split('\n');
    expect(line!.length).toBeLessThan(160);
    expect(line!.slice(marker!.indexOf('^'), marker!.lastIndexOf('^') + 1)).toBe('fault');
  });
});

it('prints notes with places of their own', () => {
  const printed = printDiagnostic('f.yaml', 'id: a\nid: b\n', {
    code: 'duplicate-key',
    severity: 'error',
    span: { start: 6, end: 8 },
    message: 'twice',
    notes: [{ span: { start: 0, end: 2 }, message: 'the first' }],
  });
  expect(printed.split('\n')).toEqual([
    'f.yaml:2:1: error duplicate-key: twice',
    '   2 | id: b',
    '     | ^^',
    'f.yaml:1:1: note: the first',
    '   1 | id: a',
    '     | ^^',
  ]);
});

it('shows control signs as a sign that does nothing', () => {
  expect(markerUnder('a: \u001b[31mx', 'x')).toBe('   1 | a: \ufffd[31mx\n     |         ^');
});
