/**
 * A deck as a file of any kind.
 */
import { statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import type { Deck } from '../../slides/deck.ts';
import type { HandoutCount } from '../../slides/handout.ts';
import type { PageSize } from '../../slides/page-size.ts';
import { pathFault, type Refusal } from '../machine/output-path.ts';
import { type Progress, progressMeter } from '../machine/progress-meter.ts';
import { slidesFolderFault, writeSlidesFolder } from './slides-folder.ts';
import { writeSlidesHtml } from './slides-html.ts';
import { type SlidesOptions, writeSlidesPdf } from './slides-pdf.ts';
import { writeSlidesPptx } from './slides-pptx.ts';

export const slidesKinds = ['pdf', 'pptx', 'html', 'folder'] as const;
export type SlidesKind = (typeof slidesKinds)[number];

export function isSlidesKind(text: string): text is SlidesKind {
  return slidesKinds.some((kind) => kind === text);
}

export interface WriteSlidesOptions {
  readonly out: string;
  readonly kind: SlidesKind;
  readonly size: PageSize;
  readonly handout: HandoutCount | undefined;
  readonly language: string;
  readonly signal: AbortSignal | undefined;
  readonly onProgress: ((progress: Progress) => void) | undefined;
}

export type SlidesResult =
  | { readonly kind: 'written'; readonly path: string; readonly count: number }
  | { readonly kind: 'interrupted' }
  | Refusal;

/** Writes the deck to `out`; what existed there is replaced. Throws a `MachineFailure`. */
export async function writeSlides(deck: Deck, wishes: WriteSlidesOptions): Promise<SlidesResult> {
  const path = resolve(wishes.out);
  const message = pathFault(path) ?? (wishes.kind === 'folder' ? await slidesFolderFault(path) : fileFault(path));
  if (message !== undefined) return { kind: 'refused', message };
  const options: SlidesOptions = {
    size: wishes.size,
    handout: wishes.handout,
    language: wishes.language,
    meter: (total) => progressMeter(total, wishes.onProgress),
    signal: wishes.signal,
  };
  try {
    return { kind: 'written', path, count: await writeKind(deck, path, wishes.kind, options) };
  } catch (error) {
    if (wishes.signal?.aborted === true) return { kind: 'interrupted' };
    throw error;
  }
}

async function writeKind(deck: Deck, path: string, kind: SlidesKind, options: SlidesOptions): Promise<number> {
  switch (kind) {
    case 'pdf':
      return writeSlidesPdf(deck, path, options);
    case 'folder':
      return writeSlidesFolder(deck, path, options);
    case 'pptx':
      return writeSlidesPptx(deck, path, options);
    case 'html':
      return writeSlidesHtml(deck, path, options);
    default:
      return kind satisfies never;
  }
}

function fileFault(path: string): string | undefined {
  const there = statSync(path, { throwIfNoEntry: false });
  return there?.isDirectory() === true ? `'${basename(path)}' is a folder; give the name of a file` : undefined;
}
