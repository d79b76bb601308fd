/** A film that went through text is painted by the same calls. */
import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { runsOf } from '../../src/frames/runs.ts';
import type { Look } from '../../src/scene/look.ts';
import { filmAsText, filmFromText } from '../../src/slides/film-text.ts';
import { playOf } from '../../src/slides/play.ts';
import { SvgContext } from '../../src/slides/svg-context.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { skyscraper, towers } from '../staging/stage.ts';
import { deck } from './make-deck.ts';

const { film, look, slides } = deck(
  towers(`- {id: a, ${skyscraper}}
- {id: b, so: r6c3=3}
- {id: c, title: Far, show: [{sight: 3r6c3}]}`),
);

const painted = (shown: Film, of: Look, frame: number): string => {
  const context = new SvgContext({ font: '', measureText: (text: string) => ({ width: text.length * 10 }) });
  paint(context, shown, of, drawingAt(shown, of, frameAt(frame)));
  return context.content();
};

describe('a film as text', () => {
  const back = filmFromText(filmAsText(film));

  it('is painted as it was', () => {
    for (let frame = 0; frame < film.frameCount; frame += 17)
      expect(painted(back, look, frame)).toBe(painted(film, look, frame));
  });

  it('has the same runs and the same rate', () => {
    expect(runsOf(back, look)).toEqual(runsOf(film, look));
    expect(back.rate).toEqual(film.rate);
  });
});

describe('the motion of a slide', () => {
  const runs = runsOf(film, look);
  const [{ from, frame }] = slides as [(typeof slides)[number]];
  const play = playOf(film, runs, { from, until: frame });
  const perSecond = Number(film.rate.numerator) / Number(film.rate.denominator);

  it('shows every frame on which something moves, in order', () => {
    const seen = new Set<number>();
    let last = -1;
    for (let at = 0; at < play.seconds; at += 1 / perSecond / 4) {
      const shown = play.frameAt(at);
      expect(shown).toBeGreaterThanOrEqual(last);
      last = shown;
      seen.add(shown);
    }
    const moving = runs
      .filter(({ kind }) => kind === 'moving')
      .flatMap((run) => Array.from({ length: run.until - run.from }, (_, index) => run.from + index))
      .filter((each) => each >= from && each <= frame);
    expect(moving.length).toBeGreaterThan(20);
    expect(moving.filter((each) => !seen.has(each))).toEqual([]);
  });

  it('waits no longer than six tenths of a second', () => {
    let waited = 0;
    for (let at = 0; at < play.seconds; at += 0.02) {
      waited = play.frameAt(at) === play.frameAt(at + 0.02) ? waited + 0.02 : 0;
      expect(waited).toBeLessThan(0.7);
    }
    expect(play.seconds).toBeLessThanOrEqual((frame - from + 1) / perSecond + 1e-9);
  });

  it('ends on the picture', () => {
    expect(play.frameAt(play.seconds)).toBe(frame);
    expect(play.frameAt(1e6)).toBe(frame);
  });

  it('of one frame is that frame', () => {
    const one = playOf(film, runs, { from: frame, until: frame });
    expect(one.frameAt(0)).toBe(frame);
    expect(one.seconds).toBeLessThanOrEqual(1 / perSecond + 1e-9);
  });
});
