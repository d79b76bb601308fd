import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describeFilm } from '../../src/beside/describe.ts';
import { printCandidate } from '../../src/grid/notation/print.ts';
import { lessonNames, lessonOf, type Told } from './lessons.ts';

/** Candidates that a text names, read back from the words by this test's own rules: `the 5s in rows 4 and 9 column 3`. */
function candidatesIn(text: string): string[] {
  const number = '\\d(?:(?:, \\d)*,? and \\d)?';
  const digits = '\\ds?(?:(?:, \\ds?)*,? and \\ds?)?';
  const pattern = new RegExp(`\\b(?:the|an?) (${digits}) in rows? (${number})(?: of)? columns? (${number})`, 'gi');
  return [...text.matchAll(pattern)].flatMap(([, ds = '', rs = '', cs = '']) =>
    [...ds.matchAll(/\d/g)].flatMap(([d]) =>
      [...rs.matchAll(/\d/g)].flatMap(([r]) => [...cs.matchAll(/\d/g)].map(([c]) => `${d}r${r}c${c}`)),
    ),
  );
}

function described({ film, checked, schedule }: Told): { readonly step: string; readonly text: string }[] {
  return describeFilm(film, checked, schedule).map(({ name, lines }) => ({
    step: name?.replace(/-shown(-\d+)?$/, '') ?? '',
    text: lines.join(' '),
  }));
}

/** All claims of the description that the proof does not have. */
function unprovedClaims(told: Told): string[] {
  const { grid } = told.film;
  const found: string[] = [];
  for (const { text } of described(told)) {
    for (const clause of text.replace(/\.$/, '').split(/; |\. /)) {
      const named = candidatesIn(clause);
      const proved = (kind: 'impossible' | 'one-of', candidate: string) =>
        told.checked.steps.some(({ conclusions }) =>
          conclusions.some(
            ({ conclusion, verdict, text: own }) =>
              verdict === 'proved' &&
              conclusion.kind === kind &&
              (conclusion.kind === 'impossible'
                ? printCandidate(grid, conclusion.candidate) === candidate
                : own === candidate.replace(/^(\d)(.*)$/, '$2=$1')),
          ),
        );
      if (/crossed out$/i.test(clause))
        found.push(...named.filter((each) => !proved('impossible', each)).map((each) => `${clause}: ${each}`));
      if (/ (written|marked as placed)$/.test(clause)) {
        if (named.length === 0) found.push(`${clause}: nothing named`);
        found.push(...named.filter((each) => !proved('one-of', each)).map((each) => `${clause}: ${each}`));
      }
      const arrow = /^an arrow runs from (.*) to (.*): not both (true|false)$/i.exec(clause);
      if (arrow !== null) {
        const [from, to] = [candidatesIn(arrow[1]!).sort().join(), candidatesIn(arrow[2]!).sort().join()];
        const print = (list: readonly Parameters<typeof printCandidate>[1][]) =>
          list
            .map((each) => printCandidate(grid, each))
            .sort()
            .join();
        const holds = told.checked.steps.some(({ links }) =>
          links.some(
            (link) =>
              link.holds &&
              link.kind === (arrow[3] === 'false' ? 'strong' : 'weak') &&
              print(link.fromCandidates) === from &&
              print(link.toCandidates) === to,
          ),
        );
        if (!holds) found.push(clause);
      }
    }
  }
  return found;
}

const checks = new URL('../scenes/checks/', import.meta.url);
const spoilt = existsSync(checks)
  ? readdirSync(checks).filter((name) =>
      /^(spoilt-(digit|links|misnamed|weak-weak|list-true|missing|fails)|fails|size6-spoilt)-01\.yaml$/.test(name),
    )
  : [];

describe('a description claims nothing that is not proved', () => {
  it.each(lessonNames)('%s', (name) => {
    expect(unprovedClaims(lessonOf(name))).toEqual([]);
  });
  it('the scenes that are not sound are there', () => {
    expect(spoilt.length).toBeGreaterThan(7);
  });
  it.each(spoilt)('%s, which may be unsound', (name) => {
    const told = lessonOf(name, readFileSync(new URL(name, checks), 'utf8'));
    expect(unprovedClaims(told)).toEqual([]);
    const texts = described(told);
    for (const { step, sound } of told.checked.steps) {
      const own = texts.filter((each) => each.step === step.id).map(({ text }) => text);
      if (!sound && own.length > 0) expect(own.join(' ')).toMatch(/This step is not (proved|sound)/);
    }
  });
  it('a claim that is not proved would be seen by this test', () => {
    const told = lessonOf('two-towers.yaml');
    const none = {
      ...told,
      checked: { ...told.checked, steps: told.checked.steps.map((step) => ({ ...step, conclusions: [], links: [] })) },
    };
    expect(unprovedClaims({ ...none, film: told.film }).length).toBeGreaterThan(0);
  });
});

describe('the words', () => {
  it('a chain, its conclusions, and a digit', () => {
    const scene = `proofreel: 1
puzzle: {boxes: 2x3, givens: ...... ..2.6. .3.... ...41. ..6..1 5...2.}
video: {draw: board, candidates: all, length: 40}
steps:
  - id: towers
    title: Two towers
    because: skyscraper
    chain: (3)r6c3=r1c3-r1c5=r5c5
    so: r5c1<>3 r6c46<>3
    show:
      - {link: 1, at: 5}
      - {link: 2, at: 10}
      - {strike: all, at: 15}
  - {id: corner, at: 20, so: r6c3=3, show: [{place: all, at: 30}]}
`;
    expect(described(lessonOf('none.yaml', scene)).map(({ step, text }) => `${step}: ${text}`)).toEqual([
      'towers: Step 1 of 2: Two towers (skyscraper).',
      'towers: An arrow runs from the 3 in row 6 column 3 to the 3 in row 1 column 3: not both false.',
      'towers: An arrow runs from the 3 in row 1 column 3 to the 3 in row 1 column 5: not both true.',
      'towers: The 3 in row 5 column 1, and the 3s in row 6 columns 4 and 6 are crossed out.',
      'corner: Step 2 of 2.',
      'corner: A 3 in row 6 column 3 is written.',
    ]);
  });
  it('cues do not overlap, lie within the video, and tell nothing before it stands', () => {
    for (const name of lessonNames) {
      const { film, checked, schedule } = lessonOf(name);
      const cues = describeFilm(film, checked, schedule);
      for (const [index, cue] of cues.entries()) {
        expect(cue.from).toBeLessThan(cue.to);
        expect(cue.from).toBeGreaterThanOrEqual(cues[index - 1]?.to ?? 0);
      }
      const rate = Number(film.rate.numerator) / Number(film.rate.denominator);
      const lastStrike = Math.max(
        0,
        ...film.marks.filter(({ shape }) => shape.kind === 'strike').map(({ from }) => from),
      );
      const told = cues.findLast(({ lines }) => lines.some((line) => line.includes('crossed out')));
      if (told !== undefined && lastStrike > 0)
        expect(told.from).toBeGreaterThanOrEqual(Math.floor((lastStrike * 1000) / rate));
    }
  });
  it('whole houses are called by their names', () => {
    const scene = `proofreel: 1
puzzle: {boxes: 2x3, givens: ...... ..2.6. .3.... ...41. ..6..1 5...2.}
groups: {ends: blue}
steps:
  - id: look
    show:
      - {fill: c35, group: ends}
      - {outline: b2, at: +9}
`;
    expect(described(lessonOf('none.yaml', scene)).map(({ text }) => text)).toEqual([
      'Step 1 of 1. Column 3 and column 5 are tinted blue.',
      'A line is drawn round box 2.',
    ]);
  });
});
