/** Decks of small scenes in one call. */
import { defaultLook } from '../../src/picture/default-look.ts';
import { type Deck, type DeckOptions, deckOf, type Slide } from '../../src/slides/deck.ts';
import { tell } from '../staging/stage.ts';

export function deck(text: string, options: Partial<DeckOptions> = {}, narration?: string): Deck {
  const { checked, schedule } = tell(text, narration);
  return deckOf(checked, schedule, defaultLook, { builds: false, exercise: false, ...options });
}

/** A slide as a line: `id | heading | argument | conclusions | ?question | notes`, what it has not left out. */
export function lineOf({ id, heading, argument, conclusions, question, notes }: Slide): string {
  return [
    id,
    heading,
    ...(argument === undefined ? [] : [argument]),
    ...(conclusions.length === 0 ? [] : [conclusions.join(' ')]),
    ...(question === undefined ? [] : [`?${question}`]),
    ...notes.map(({ text }) => `"${text}"`),
  ].join(' | ');
}
