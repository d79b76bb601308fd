/**
 * The pages of scenes/names/: each judged name has one, with a scene that bears the name and a picture of it.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { describe, expect, it, test } from 'vitest';
import { type ArgumentName, namesBySpeciality } from '../../src/techniques/all-techniques.ts';
import { allMoreSpecial, asNames, mayStandBefore, moreGeneral, slugOf } from './name-pages.ts';
import { refreshedIndex, refreshedPage } from './page-parts.ts';
import { reportOn } from './run.ts';

const folder = new URL('../../scenes/names/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, folder), 'utf8');

/** What the report of the name's scene says of its one step; the scene is checked when first asked for. */
const known = new Map<string, ReturnType<typeof checked>>();
function reported(name: ArgumentName): ReturnType<typeof checked> {
  const report = known.get(name) ?? checked(name);
  known.set(name, report);
  return report;
}

function checked(name: ArgumentName) {
  const { report, exit } = reportOn(`${slugOf(name)}.yaml`, read(`${slugOf(name)}.yaml`));
  return { exit, report, fits: asNames(report.steps[0]?.name?.fits ?? []) };
}

describe.each(namesBySpeciality)('%s', (name) => {
  it('has a page, a scene and a picture', () => {
    for (const ending of ['md', 'yaml', 'png'])
      expect(existsSync(new URL(`${slugOf(name)}.${ending}`, folder))).toBe(true);
    const { width, height } = PNG.sync.read(readFileSync(new URL(`${slugOf(name)}.png`, folder)));
    expect([width, height]).toEqual([640, 640]);
  });

  it('has a scene of one step that is sound, without a warning, and bears the name', () => {
    const { exit, report } = reported(name);
    expect([report.errors, report.warnings, report.summary.toMend, exit]).toEqual([[], [], [], 0]);
    expect(report.steps.map((step) => [step.verdict, step.name?.given, step.name?.judged])).toEqual([
      ['proved', name, 'fits'],
    ]);
    expect(report.steps[0]?.unneeded).toEqual([]);
    expect(report.steps[0]?.argument.found).toBe(false);
  });

  it('stands first among the names of its family that fit its scene, its own kinds apart', () => {
    const { fits } = reported(name);
    expect(fits).toContain(name);
    expect(fits.slice(0, fits.indexOf(name)).filter((other) => !mayStandBefore(name, other))).toEqual([]);
  });

  it('bears the names of what it is said to be a kind of', () => {
    const { fits } = reported(name);
    expect(moreGeneral(name).filter((other) => !fits.includes(other))).toEqual([]);
    const places = [name, ...moreGeneral(name)].map((each) => namesBySpeciality.indexOf(each));
    expect(places.slice(1).every((place) => place > places[0]!)).toBe(true);
  });

  it('has the step of its scene, and its relations, on its page', () => {
    const page = read(`${slugOf(name)}.md`);
    expect(refreshedPage(name, page, read(`${slugOf(name)}.yaml`), reported(name).fits)).toBe(page);
    const definition = page.split('\n')[2] ?? '';
    const sentences = definition.split(/(?<=[.)])\s+(?=[A-Z(])/);
    expect([page.split('\n')[0]?.slice(2).toLowerCase(), sentences.length > 1 && sentences.length < 6]).toEqual([
      name.toLowerCase(),
      true,
    ]);
  });
});

describe('the pages of the names', () => {
  test('no name is a kind of itself', () => {
    expect(namesBySpeciality.filter((name) => allMoreSpecial(name).includes(name))).toEqual([]);
  });

  test('the index lists them as they are', () => {
    const index = read('README.md');
    expect(refreshedIndex(index)).toBe(index);
  });

  test('nothing else lies beside them', () => {
    const due = namesBySpeciality.flatMap((name) => ['md', 'png', 'yaml'].map((ending) => `${slugOf(name)}.${ending}`));
    expect(readdirSync(folder).sort()).toEqual(['README.md', ...due].sort());
  });
});
