/** `plan` and `alternatives` as they are called: what they print, what they refuse, and with which status they end. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { SaxesParser } from 'saxes';
import { afterAll, describe, expect, it } from 'vitest';
import { planSchema, waysSchema } from '../../src/report/plan-report.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-plan-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const towers = new URL('../../scenes/two-towers.yaml', import.meta.url).pathname;
/** 4x4: singles carry it. */
const easy = '....1....4.3...4';

const written = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('plan', () => {
  it('prints the steps, what each rests on and opens', async () => {
    const { status, out } = await run('plan', towers);
    expect(status).toBe(0);
    expect(out).toMatch(/^least {2}1 argument, cost 7; proved/);
    expect(out).toMatch(/ 5 {2}skyscraper {2}\(3\).* so r5c1≠3 {2}\(cost 7\)\n +rests on .*; opens /);
  });

  it('prints a report that its schema allows', async () => {
    const { out } = await run('plan', towers, '--json');
    const validate = new Ajv2020({ allowUnionTypes: true }).compile(planSchema());
    const report: unknown = JSON.parse(out);
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    expect(report).toMatchObject({ outcome: 'least', cost: 7, atLeast: 7, hard: 1 });
  });

  it('says what its proof takes for granted, and where there is none, why', async () => {
    const { out } = await run('plan', towers);
    expect(out).toMatch(/least[^\n]*\n +No path of the arguments .* assuming that/);
    const priced = written('priced.yaml', 'step: 1\nfree: [full house]\nnames:\n  hidden single: 1\n  x-chain: 0.5\n');
    expect((await run('plan', easy, '--costs', priced)).out).toMatch(
      /^found [^\n]*\n +Nothing is proved, since .* singles/,
    );
  });

  it('plans no further than is asked', async () => {
    const { status, out } = await run('plan', easy, '--until', 'r1c1');
    expect(status).toBe(0);
    expect(out).toMatch(/^least {2}singles lead to r1c1=\d\n/);
    const { out: json } = await run('plan', towers, '--until', 'r5c1', '--json');
    expect(JSON.parse(json)).toMatchObject({ outcome: 'least', until: [expect.stringMatching(/^r5c1=\d$/)] });
    expect((await run('plan', towers, '--until', 'r5c1', '--tree')).out).toMatch(/^r5c1=\d\n/);
  });

  it('draws which argument rests on which, as text and as a picture that is XML', async () => {
    const file = join(folder, 'tree.svg');
    const { out } = await run('plan', towers, '--tree', '-o', file);
    expect(out).toMatch(/^the solution\n└─ 5 skyscraper .*\n {3}the givens and singles\n$/);
    const words: string[] = [];
    const parser = new SaxesParser({ xmlns: true });
    parser.on('text', (text) => void words.push(text));
    parser.on('error', (error) => {
      throw error;
    });
    parser.write(readFileSync(file, 'utf8')).close();
    expect(words).toContain('5  skyscraper');
    expect(words.join()).toContain('r5c1≠3');
  });

  it('says what singles carry', async () => {
    expect(await run('plan', easy)).toMatchObject({
      status: 0,
      out: expect.stringMatching(/singles solve the puzzle/),
    });
  });

  it('shows where it ends what the audience knows, and exits with 1', async () => {
    const { status, out } = await run('plan', towers, '--know', 'x-wing');
    expect(status).toBe(1);
    expect(out).toMatch(/^stuck /);
    expect(out).toMatch(/Here it ends:\n {2}1346 /);
  });

  it('keeps to a table of the user’s own', async () => {
    const table = written(
      'costs.yaml',
      'step: 2\nfree: [full house, hidden single, naked single]\nnames:\n  turbot fish: 3\n',
    );
    expect((await run('plan', towers, '--costs', table)).out).toMatch(/1 argument, cost 5[\s\S]*turbot fish/);
  });

  const broken = written('broken.yaml', 'step: 2\nfree: [naked singel]\nnames:\n  turbot fsh: 3\n  x-wing: many\n');
  it.each<[string, readonly string[], RegExp]>([
    ['too few symbols', ['plan', '123'], /givens-count: 3 cells are among the givens/],
    ['a sign that is none', ['plan', `x${'.'.repeat(80)}`], /no file|neither a digit/],
    ['no solution', ['plan', `11${'.'.repeat(79)}`], /1 stands in r1c1 and in r1c2/],
    ['several solutions', ['plan', '.'.repeat(16)], /several solutions[\s\S]*they differ in \d+ cells/],
    ['a solved puzzle', ['plan', '1234341221434321'], /already solved/],
    ['no such file', ['plan', 'nowhere.txt'], /no file nowhere\.txt/],
    ['a name that is none', ['plan', easy, '--know', 'upto:xy-chian'], /called "xy-chian"; did you mean XY-chain\?/],
    ['a family that is none', ['plan', easy, '--without', 'uniquness'], /called "uniquness"/],
    [
      'a misspelt name that is known',
      ['plan', easy, '--know', 'naked pear'],
      /"naked pear"; did you mean naked pair\?/,
    ],
    ['a misspelt name that is left out', ['plan', easy, '--without', 'x-wnig'], /"x-wnig"; did you mean X-wing\?/],
    [
      'a name whose arguments are taught under others',
      ['plan', easy, '--without', 'box-line reduction'],
      /no line for it; name its kinds: claiming/,
    ],
    ['nothing that is left', ['plan', easy, '--know', 'singles', '--without', 'singles'], /leave no argument/],
    [
      'a goal that is wrong',
      ['plan', easy, '--until', 'r1c1=4 r1c2=4'],
      /--until r1c[12]=4 disagrees with the solution/,
    ],
    ['a goal that is none', ['plan', easy, '--until', 'r1'], /--until "r1": .*name cells, or digits in them/],
    ['a goal that is given', ['plan', easy, '--until', 'r2c1'], /is on the board from the start/],
    ['no number', ['plan', easy, '--seconds', 'ten'], /--seconds ten: write a number/],
    ['a picture of another kind', ['plan', easy, '-o', 'tree.png'], /ends in \.svg/],
    ['two forms', ['plan', easy, '--json', '--tree'], /ask for one/],
    ['no table', ['plan', easy, '--costs', 'nowhere.yaml'], /no table of costs nowhere\.yaml/],
    [
      'a table with faults',
      ['plan', easy, '--costs', broken],
      /broken\.yaml:2:.*naked singel.*naked single[\s\S]*turbot fish[\s\S]*"many" is not a number/,
    ],
  ])('refuses %s', async (_what, call, said) => {
    const { status, out, err } = await run(...call);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(said);
  });
});

describe('alternatives', () => {
  const step = 'towers';

  it('lists other arguments for a step, the simplest first, its own left out', async () => {
    const { status, out } = await run('alternatives', towers, '--step', step, '--json');
    expect(status).toBe(0);
    const validate = new Ajv2020({ allowUnionTypes: true }).compile(waysSchema());
    const report = JSON.parse(out) as { found: { name: string; cost: number; sets: string[]; proves: string[] }[] };
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    expect(report.found.length).toBeGreaterThan(0);
    const whole = report.found.filter(({ proves }) => proves.length === report.found[0]!.proves.length);
    expect(whole.map(({ cost }) => cost)).toEqual(whole.map(({ cost }) => cost).toSorted((a, b) => a - b));
  });

  it('lists whatever a position offers where nothing is asked', async () => {
    const { out } = await run('alternatives', towers, '--at', 'singles');
    expect(out).toMatch(/alternatives in this position[\s\S]*skyscraper/);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['a step that is not there', ['alternatives', towers, '--step', 'nowhere'], /has no step nowhere/],
    ['a step of a puzzle', ['alternatives', easy, '--step', 'x'], /--step goes with a scene/],
    ['a step and a position', ['alternatives', towers, '--step', step, '--at', 'singles'], /both --step and --at/],
    ['what is false', ['alternatives', easy, '--so', 'r1c1<>4'], /disagrees with the solution/],
    ['what is known', ['alternatives', easy, '--so', 'r1c2<>1'], /is already known/],
    ['what cannot be read', ['alternatives', easy, '--so', 'r1'], /--so "r1"/],
    ['a position that is wrong', ['alternatives', easy, '--at', 'r1c2=1'], /--at r1c2=1 disagrees/],
  ])('refuses %s', async (_what, call, said) => {
    const { status, err } = await run(...call);
    expect(status).toBe(2);
    expect(err).toMatch(said);
  });
});
