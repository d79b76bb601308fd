/**
 * The marks of a film while it is being built: later beats end, extend or remove what earlier ones drew.
 */
import { type Frame, frameAt, type Mark, type MarkGroup, type MarkShape } from '../timeline/film.ts';

/** A mark whose end may still change. Frames are whole; `until` may be at or before `from`: then it is not drawn. */
export interface DraftMark {
  readonly from: Frame;
  until: Frame;
  readonly step: string;
  readonly group: MarkGroup | undefined;
  readonly shape: MarkShape;
}

export interface MarkList {
  /** Adds a mark or, if the same one in the same colour is already shown, extends that one to the same end. */
  add(mark: DraftMark): void;
  /**
   * Whether the same thing, drawn by the same step in the same colour, is shown at the frame on which this would begin.
   */
  stands(mark: Omit<DraftMark, 'until'>): boolean;
  /** Ends at this frame every mark that `which` names; what would have begun then or later is not drawn. */
  end(at: Frame, which: (mark: Readonly<DraftMark>) => boolean): void;
  /**
   * The marks that are drawn at all, within `frameCount`, in order of their first frames; equal ones in the order in
   * which they were added.
   */
  finished(frameCount: number): Mark[];
}

export function markList(): MarkList {
  const drafts: DraftMark[] = [];
  const standingLike = (mark: Omit<DraftMark, 'until'>) =>
    drafts.find((other) => isSame(other, mark) && other.from <= mark.from && mark.from < other.until);
  return {
    stands: (mark) => standingLike(mark) !== undefined,
    add(mark) {
      const standing = standingLike(mark);
      if (standing === undefined) drafts.push({ ...mark });
      else standing.until = frameAt(Math.max(standing.until, mark.until));
    },
    end(at, which) {
      for (const draft of drafts) if (draft.until > at && which(draft)) draft.until = at;
    },
    finished(frameCount) {
      return drafts
        .map((draft): Mark => ({ ...draft, until: frameAt(Math.min(draft.until, frameCount)) }))
        .filter(({ from, until }) => from < until)
        .sort((a, b) => a.from - b.from);
    },
  };
}

/** The same thing drawn by the same step in the same colour: drawing it again would show nothing new. */
function isSame(a: Omit<DraftMark, 'until'>, b: Omit<DraftMark, 'until'>): boolean {
  return (
    a.step === b.step &&
    a.group?.index === b.group?.index &&
    a.shape.kind === b.shape.kind &&
    contentOf(a.shape) === contentOf(b.shape)
  );
}

function contentOf(shape: MarkShape): string {
  return JSON.stringify(shape, (key, value: unknown) => (key === 'house' ? undefined : value));
}
