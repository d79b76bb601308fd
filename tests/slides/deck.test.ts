/** What slides say and show: small scenes, one line a slide. The board is that of `towers` in `tests/staging/stage.ts`. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { printCandidate } from '../../src/grid/notation/print.ts';
import type { DeckOptions } from '../../src/slides/deck.ts';
import { drawingOf, inWordsOf } from '../../src/slides/deck.ts';
import { skyscraper, towers } from '../staging/stage.ts';
import { deck, lineOf } from './make-deck.ts';

const first = `- {id: first, say: Look., ${skyscraper}, because: skyscraper}`;
const told = `- {id: told, title: Two towers, because: skyscraper, ${skyscraper}, show: [{circle: 3r16c3}, {ask: What goes?}, {link: all}, {note: A street}, {strike: all}]}`;

const rows: readonly (readonly [
  name: string,
  steps: string,
  options: Partial<DeckOptions>,
  lines: readonly string[],
])[] = [
  ['a step', first, {}, ['first | Skyscraper | r5c1≠3 r6c46≠3']],
  [
    'a step without a name',
    `${first}\n- {id: corner, so: r6c3=3}`,
    {},
    ['first | Skyscraper | r5c1≠3 r6c46≠3', 'corner | Step 2 | r6c3=3'],
  ],
  [
    'the name that its author gives it',
    `- {id: a, title: T, called: the bridge, because: skyscraper, ${skyscraper}}`,
    {},
    ['a | T | the bridge | r5c1≠3 r6c46≠3'],
  ],
  ['a step that claims nothing', '- {id: a, title: Look, show: [{fill: 3}]}', {}, ['a | Look']],
  [
    'a question on the front',
    told,
    {},
    [
      'told.question | Two towers | skyscraper | ?What goes?',
      'told | Two towers | skyscraper | r5c1≠3 r6c46≠3 | "A street"',
    ],
  ],
  [
    'two questions',
    '- {id: a, title: T, show: [{ask: One?}, {fill: 3}, {ask: Two?}, {circle: 3r1c3}]}',
    {},
    ['a.question | T | ?One?', 'a.question.2 | T | ?Two?', 'a | T'],
  ],
  [
    'beats',
    told,
    { builds: true },
    [
      'told.1 | Two towers | skyscraper',
      'told.question | Two towers | skyscraper | ?What goes?',
      'told.2 | Two towers | skyscraper',
      'told.3 | Two towers | skyscraper | r5c1≠3 r6c46≠3 | "A street"',
    ],
  ],
  [
    'an exercise',
    `${first}\n- {id: corner, so: r6c3=3}`,
    { exercise: true },
    [
      'first.question | Skyscraper | ?Which candidates go?',
      'corner.question | Step 2 | ?Which digit goes in, and where?',
    ],
  ],
  [
    'an exercise with a question of its own',
    told,
    { exercise: true },
    ['told.question | Two towers | skyscraper | ?What goes? | "A street"'],
  ],
  [
    'an exercise on places',
    '- {id: a, only: 3c3 in r16c3}',
    { exercise: true },
    ['a.question | Step 1 | ?Where can the 3 of c3 be?'],
  ],
  [
    'an exercise on lists',
    '- {id: a, pencil: 1346r1c1}',
    { exercise: true },
    ['a.question | Step 1 | ?Which digits are still possible in r1c1?'],
  ],
  [
    'an exercise on an either/or',
    '- {id: a, chain: (3)r6c3=r1c3-r1c5=r5c5, so: either 3r6c3 3r5c5}',
    { exercise: true },
    ['a.question | Step 1 | ?What must be true here?'],
  ],
  ['a false step that holds', `- {id: a, title: No, ${skyscraper}, fails: true}`, {}, ['a | No']],
  [
    'a false step',
    '- {id: a, title: No, from: 3c3, so: r6c4<>3, fails: true}',
    {},
    ['a | No | r6c4≠3 does not follow'],
  ],
  [
    'an exercise on a false step',
    '- {id: a, title: No, from: 3c3, so: r6c4<>3, fails: true}',
    { exercise: true },
    ['a.question | No | ?Does r6c4≠3 follow from this?'],
  ],
  ['a step on no frame', `- {id: a, at: 0}\n- {id: b, at: 0, title: B}`, {}, ['a | Step 1', 'b | B']],
];

describe('slides', () => {
  it.each(rows)('of %s', (_, steps, options, lines) => {
    expect(deck(towers(steps), options).slides.map(lineOf)).toEqual(lines);
  });

  it('have ids of their own, also where a step is called as another one would be', () => {
    const steps = `${told}\n- {id: shown-question, title: T}\n- {id: shown-1, title: T}`;
    for (const builds of [false, true]) {
      const ids = deck(towers(steps), { builds }).slides.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it('count digits that are too many to list', () => {
    const read = (name: string) => readFileSync(new URL(`../../scenes/${name}`, import.meta.url), 'utf8');
    const { slides } = deck(read('lamp-room.yaml'), {}, read('lamp-room.vtt'));
    expect(slides.length).toBe(12);
    expect(lineOf(slides.at(-1)!)).toBe('home | Step 12 | 44 digits');
  });
});

describe('the picture of an exercise', () => {
  const marksOf = (steps: string) => {
    const made = deck(towers(steps), { exercise: true });
    return made.slides.map((slide) =>
      drawingOf(made, slide).marks.map(({ index }) => made.film.marks[index]?.shape.kind),
    );
  };

  it('shows the argument and nothing that follows from it', () => {
    const [kinds] = marksOf(first);
    expect(kinds).toContain('link');
    for (const kind of ['strike', 'place', 'reach', 'opens', 'ghost', 'clash']) expect(kinds).not.toContain(kind);
  });

  it('shows the argument where the conclusion is drawn first', () => {
    const [kinds] = marksOf(`- {id: a, ${skyscraper}, show: [{strike: all}, {link: all}]}`);
    expect(kinds).not.toContain('strike');
  });

  it('does not write the digit', () => {
    const made = deck(towers(`${first}\n- {id: corner, so: r6c3=3}`), { exercise: true });
    expect(drawingOf(made, made.slides[1]!).written).toEqual([]);
    expect(inWordsOf(made, made.slides[1]!).rows.at(-1)).toBe('Row 6: 5, blank, blank, blank, 2, blank.');
  });

  it('does not write the digit that its step writes at once', () => {
    const made = deck(towers(`${first}\n- {id: corner, cascade: r6c3=3}`), { exercise: true });
    expect(drawingOf(made, made.slides[1]!).written).toEqual([]);
  });

  it('does not say in words what it does not show', () => {
    const made = deck(towers(first), { exercise: true });
    expect(inWordsOf(made, made.slides[0]!).marks).not.toMatch(/crossed out/);
    const shown = deck(towers(first));
    expect(inWordsOf(shown, shown.slides[0]!).marks).toMatch(/crossed out/);
  });

  it('keeps what is said for the answers', () => {
    const made = deck(towers(first), { exercise: true });
    expect(made.slides[0]!.says).toBeUndefined();
    expect(made.answers).toEqual([
      { number: 1, heading: 'Skyscraper', argument: undefined, texts: ['r5c1≠3', 'r6c46≠3'], says: 'Look.' },
    ]);
  });

  it('says of a false step why nothing follows', () => {
    const made = deck(towers('- {id: a, from: 3c3, so: r6c4<>3, fails: true}'), { exercise: true });
    expect(made.answers[0]!.texts[0]).toBe('No.');
    expect(made.answers[0]!.texts.length).toBeGreaterThan(1);
  });
});

describe('the picture of a slide', () => {
  it('holds the board whole over a recording too, with the digits of marks', () => {
    const text = towers(first).replace(
      'draw: board',
      'draw: overlay, board: {left: 10, top: 10, side: 600}, small: whole',
    );
    const made = deck(text);
    expect(made.film.draw).toBe('board');
    expect([made.film.width, made.film.height]).toEqual([1000, 1000]);
    const drawn = drawingOf(made, made.slides[0]!).candidates.map(
      ({ index }) => made.film.candidates[index]!.candidate,
    );
    expect(drawn.map((candidate) => printCandidate(made.film.grid, candidate))).toContain('3r6c3');
  });

  it('has no words in it: they stand beside it', () => {
    const { film } = deck(towers(told));
    expect(film.headings).toEqual([]);
    expect(film.marks.filter(({ shape }) => shape.kind === 'note' || shape.kind === 'ask')).toEqual([]);
  });

  it('stands still: all that has come is whole', () => {
    const made = deck(towers(told), { builds: true });
    for (const slide of made.slides) {
      const { marks, written, candidates } = drawingOf(made, slide);
      for (const { progress, alpha } of [...marks, ...written, ...candidates])
        expect([progress, alpha]).toEqual([1, 1]);
    }
  });

  it('of a beat that plays the proof out shows the ghosts', () => {
    const steps = `- {id: a, ${skyscraper}, show: [{suppose: 3r6c4}, {strike: all}]}`;
    const made = deck(towers(steps), { builds: true });
    const kinds = drawingOf(made, made.slides[0]!).marks.map(({ index }) => made.film.marks[index]!.shape.kind);
    expect(kinds).toContain('ghost');
  });
});

describe('a step that is not proved', () => {
  const unsound = towers(`- {id: a, from: 3c3, so: r1c1<>3}`);

  it('is stamped, and nothing of it is said to be proved', () => {
    const made = deck(unsound);
    const [slide] = made.slides;
    expect(slide!.stamp).toBeDefined();
    expect(slide!.conclusions).toEqual([]);
    expect(inWordsOf(made, slide!).marks).toMatch(
      /stamp says that this is not proved.*crossed out, which is not proved/,
    );
  });

  it('is answered as such', () => {
    expect(deck(unsound, { exercise: true }).answers[0]!.texts).toEqual([expect.stringMatching(/^Not proved: /)]);
  });
});

describe('conclusions', () => {
  it('are those that are proved, and no others', () => {
    const made = deck(towers(`- {id: a, chain: (3)r6c3=r1c3-r1c5=r5c5, so: r5c1<>3 r1c1<>3}`));
    expect(made.slides[0]!.conclusions).toEqual(['r5c1≠3']);
  });
});
