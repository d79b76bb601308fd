/**
 * The behaviour of a page of slides: one slide at a time, forward and back by keys, buttons and touch, and the motion
 * of each step as it appears. It runs in a browser, bundled into the page.
 */
import { drawingAt } from '../frames/drawing.ts';
import { paint } from '../frames/paint.ts';
import { runsOf } from '../frames/runs.ts';
import type { Look } from '../scene/look.ts';
import { filmFromText } from '../slides/film-text.ts';
import { pictureSide } from '../slides/picture-side.ts';
import { drawWithin } from '../slides/placed-context.ts';
import { type Play, playOf } from '../slides/play.ts';
import { frameAt } from '../timeline/film.ts';

const root = document.documentElement;
const slides = [...document.querySelectorAll<HTMLElement>('.slide')];
const output = document.querySelector('output');
const calm = matchMedia('(prefers-reduced-motion: reduce)');

const { look, film } = readLesson();
const runs = runsOf(film, look);

/** The number of the slide on screen, from 0. */
let current = 0;
/** Stops what plays. */
let stop = (): void => undefined;

root.classList.add('live');
show(Math.max(0, numberOf(location.hash)), { plays: false });
// The typeface is in the page, but is not available before it is requested.
void Promise.all([400, 500, 600, 700].map((weight) => document.fonts.load(`${weight} 20px '${look.type.family}'`)));

function readLesson() {
  const { look, film } = JSON.parse(document.getElementById('lesson')?.textContent ?? '') as {
    look: Look;
    film: unknown;
  };
  return { look, film: filmFromText(JSON.stringify(film)) };
}

function numberOf(hash: string): number {
  return slides.findIndex(({ id }) => id === decodeURIComponent(hash.slice(1)));
}

function show(number: number, { plays }: { readonly plays: boolean }): void {
  const slide = slides[number];
  if (slide === undefined) return;
  stop();
  slides[current]?.classList.remove('shown');
  current = number;
  slide.classList.add('shown');
  slide.focus({ preventScroll: true });
  scrollTo(0, 0);
  history.replaceState(null, '', `#${slide.id}`);
  if (output !== null) output.textContent = `${number + 1} / ${slides.length}`;
  enable('back', number > 0);
  enable('next', number < slides.length - 1);
  enable('play', slide.dataset.from !== undefined);
  // With reduced motion, the final picture is shown, unless the viewer plays it.
  if (plays && !calm.matches) play(slide);
}

function enable(does: string, isPossible: boolean): void {
  const button = document.querySelector<HTMLButtonElement>(`[data-does="${does}"]`);
  if (button !== null) button.disabled = !isPossible;
}

/** Plays the slide's motion over its picture; then the picture itself is shown again. */
function play(slide: HTMLElement): void {
  stop();
  const picture = slide.querySelector<HTMLElement>('.picture');
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d');
  const { from, until } = slide.dataset;
  if (picture === null || context === null || from === undefined || until === undefined) return;
  const motion = playOf(film, runs, { from: frameAt(Number(from)), until: frameAt(Number(until)) });
  const side = Math.round(picture.getBoundingClientRect().width * devicePixelRatio);
  canvas.width = side;
  canvas.height = side;
  picture.append(canvas);
  slide.classList.add('playing');
  let request = 0;
  stop = () => {
    cancelAnimationFrame(request);
    canvas.remove();
    slide.classList.remove('playing');
    stop = () => undefined;
  };
  const drawn = painterOn(context, side);
  const begin = performance.now();
  const next = (): void => {
    const seconds = (performance.now() - begin) / 1000;
    if (seconds >= motion.seconds) {
      stop();
      return;
    }
    drawn(motion, seconds);
    request = requestAnimationFrame(next);
  };
  next();
}

/** Draws a moment of the motion, if its frame differs from the last. */
function painterOn(context: CanvasRenderingContext2D, side: number): (motion: Play, seconds: number) => void {
  // With reduced motion, marks fade in, and nothing moves.
  const shown: Look = calm.matches ? { ...look, motion: { ...look.motion, come: 'faded' } } : look;
  let last: number | undefined;
  return (motion, seconds) => {
    const frame = motion.frameAt(seconds);
    if (frame === last) return;
    last = frame;
    drawWithin(context, { left: 0, top: 0, scale: side / pictureSide }, (inner) =>
      paint(inner, film, shown, drawingAt(film, shown, frame)),
    );
  };
}

const on = (): void => show(Math.min(current + 1, slides.length - 1), { plays: true });
const back = (): void => show(Math.max(current - 1, 0), { plays: false });

addEventListener('keydown', (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  // On a button, space and Enter press it.
  const isOnButton = event.target instanceof HTMLButtonElement;
  if ((event.key === ' ' || event.key === 'Enter') && isOnButton) return;
  const act = keys[event.key === ' ' && event.shiftKey ? 'PageUp' : event.key];
  if (act === undefined) return;
  event.preventDefault();
  act();
});

const keys: Readonly<Record<string, (() => void) | undefined>> = {
  ArrowRight: on,
  PageDown: on,
  ' ': on,
  Enter: on,
  ArrowLeft: back,
  PageUp: back,
  Backspace: back,
  Home: () => show(0, { plays: false }),
  End: () => show(slides.length - 1, { plays: false }),
};

for (const button of document.querySelectorAll<HTMLButtonElement>('[data-does]')) {
  button.addEventListener('click', () => {
    switch (button.dataset.does) {
      case 'back':
        return back();
      case 'next':
        return on();
      case 'play': {
        const slide = slides[current];
        return slide === undefined ? undefined : play(slide);
      }
      default:
        void (document.fullscreenElement === null ? root.requestFullscreen() : document.exitFullscreen());
    }
  });
}
if (!document.fullscreenEnabled) document.querySelector('[data-does="full"]')?.remove();

/** A finger that moves sideways by at least this many pixels, and more sideways than down, turns the page. */
const swipe = 45;
let touched: Touch | undefined;
addEventListener('touchstart', (event) => {
  touched = event.touches.length === 1 ? event.touches[0] : undefined;
});
addEventListener('touchend', (event) => {
  const left = event.changedTouches[0];
  if (touched === undefined || left === undefined) return;
  const [across, down] = [left.clientX - touched.clientX, left.clientY - touched.clientY];
  touched = undefined;
  if (Math.abs(across) < swipe || Math.abs(across) < 2 * Math.abs(down)) return;
  if (across < 0) on();
  else back();
});

addEventListener('hashchange', () => {
  const number = numberOf(location.hash);
  if (number >= 0 && number !== current) show(number, { plays: false });
});
