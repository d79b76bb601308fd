/**
 * The style of a page of slides. Lengths are in units of the layout (`--u`), so that a slide looks the same in every
 * window size; on an upright screen the words go below the board, in reading sizes.
 */
import type { Look } from '../scene/look.ts';
import { layoutSize, type PageSize } from './page-size.ts';
import { slideLayout } from './slide-page.ts';

/** `fonts`: rules for the typeface. */
export function styleOf(look: Look, size: PageSize, fonts: string): string {
  const { colours, type } = look;
  const { width, height, picture, words } = slideLayout(size);
  const { points } = layoutSize(size);
  const units = (value: number) => `calc(${Math.round(value * 10) / 10} * var(--u))`;
  const px = (value: number) => `calc(${value} * var(--u) * var(--s, 1))`;
  return `${fonts}
@page { size: ${size.width}pt ${size.height}pt; margin: 0; }
:root {
  --frame: ${colours.frame}; --text: ${colours.text}; --quiet: ${colours.quietText}; --line: ${colours.line};
  --rule: ${colours.houseLine}; --accent: ${colours.placement}; --card: ${colours.card};
  --u: calc(min(100vw, 1200px) / ${width.toFixed(1)});
}
* { box-sizing: border-box; }
html { background: var(--frame); color: var(--text); font: 500 18px/1.24 '${type.family}', sans-serif; -webkit-text-size-adjust: 100%; }
body { margin: 0; }
h1, h2, p, ul, figure { margin: 0; padding: 0; }
.slide { position: relative; width: ${units(width)}; height: ${units(height)}; margin: 0 auto; overflow: hidden; outline: none; }
.picture { position: absolute; left: ${units(picture.left)}; top: ${units(picture.top)}; width: ${units(picture.side)}; height: ${units(picture.side)}; }
.picture svg, .picture canvas { position: absolute; inset: 0; width: 100%; height: 100%; display: block; }
.words { position: absolute; left: ${units(words.left)}; top: ${units(words.top)}; width: ${units(words.right - words.left)}; height: ${units(words.bottom - words.top)}; display: flex; flex-direction: column; }
.place { display: flex; justify-content: space-between; gap: 1em; font-size: ${units(27)}; line-height: 1; color: var(--quiet); }
.place span:last-child { white-space: nowrap; }
.way { display: flex; gap: ${units(5)}; margin: ${units(20)} 0 ${units(46)}; }
.way i { flex: 1; height: ${units(4)}; background: var(--rule); opacity: 0.22; }
.way i.gone { opacity: 1; }
h2 { font-size: ${px(60)}; font-weight: 600; line-height: 1.16; }
.argument { margin-top: ${px(10)}; font-size: ${px(36)}; color: var(--quiet); }
.question { margin-top: ${px(44)}; padding-left: ${units(22)}; border-left: ${units(8)} solid var(--accent); font-size: ${px(46)}; }
.follows { margin-top: ${px(32)}; font-size: ${px(44)}; font-weight: 600; list-style: none; }
.follows li { margin-top: ${px(6)}; }
.named { font-weight: 600; padding: 0 0.11em; border-radius: 0.16em; background: color-mix(in srgb, currentColor 10%, transparent); }
.remark { margin-top: ${px(20)}; font-size: ${px(27)}; color: var(--quiet); }
.note { margin-top: ${px(32)}; padding-left: ${units(22)}; border-left: ${units(8)} solid var(--bar); font-size: ${px(32)}; }
.says { margin-top: auto; padding-top: ${units(22)}; border-top: 2px solid var(--line); font-size: ${px(29)}; font-weight: 400; }
.answers { padding: ${units(66)}; }
.answers h2 { font-size: ${units(44)}; padding-bottom: ${units(18)}; border-bottom: ${units(3)} solid var(--rule); margin-bottom: ${units(30)}; }
.answers div { columns: 2; column-gap: ${units(64)}; }
.answers section { break-inside: avoid; margin-bottom: ${units(36)}; }
.answers h3 { margin: 0; font-size: ${units(27)}; font-weight: 500; color: var(--quiet); }
.answers b { display: block; font-size: ${units(32)}; font-weight: 600; }
.answers p { font-size: ${units(24)}; font-weight: 400; }
.unseen, .live .bar h1 { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.bar { display: flex; align-items: center; gap: 0.9rem; padding: 0 1.2rem; height: 3.2rem; color: var(--quiet); }
.bar h1 { flex: 1; font-size: 0.95rem; font-weight: 500; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
.bar .buttons { display: none; }
${live}
${upright}
@media print {
  :root, :root.live { --u: ${points}pt; }
  * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
  .bar, .picture canvas { display: none !important; }
  .live body, .live main { display: block; min-height: 0; }
  .slide, .live .slide { display: block; break-after: page; break-inside: avoid; }
  .slide:last-of-type { break-after: auto; }
  .playing .follows, .playing .note { opacity: 1; }
}
`
    .replace('WIDTH', width.toFixed(1))
    .replace('RATIO', (width / height).toFixed(5));
}

/** With scripts: one slide at a time, as large as fits the window, and a bar to go forward and back. */
const live = `:root.live { --u: calc(min(100vw, (100dvh - 3.2rem) * RATIO) / WIDTH); }
/* A horizontal swipe turns the page, and must not navigate back in the browser. */
:root.live { overscroll-behavior: none; touch-action: pan-y pinch-zoom; }
.live body { min-height: 100dvh; display: flex; flex-direction: column; }
.live main { order: 1; flex: 1; display: flex; align-items: center; justify-content: center; }
.live .bar { order: 2; justify-content: flex-end; }
.live .slide { display: none; margin: 0; }
.live .slide.shown { display: block; }
.live .bar .buttons { display: flex; gap: 0.5rem; }
.bar button { font: inherit; font-size: 0.95rem; color: var(--text); background: var(--card); border: 1px solid var(--quiet); border-radius: 6px; padding: 0.3rem 0.8rem; min-width: 2.6rem; min-height: 2.1rem; cursor: pointer; }
.bar button:disabled { color: var(--quiet); border-color: var(--line); cursor: default; }
.bar button:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.follows, .note { transition: opacity 0.25s; }
.playing .follows, .playing .note { opacity: 0; }
@media (prefers-reduced-motion: reduce) { * { transition: none !important; } }`;

const upright = `@media screen and (max-aspect-ratio: 1/1) {
  :root, :root.live { --u: calc(100vw / 860); }
  .slide, .live .slide.shown { width: 100%; height: auto; min-height: 0; padding-bottom: 1.2rem; }
  .live main { align-items: flex-start; }
  .picture { position: relative; left: 0; top: 0; width: 100vw; height: 100vw; }
  .words { position: static; width: auto; height: auto; margin: 0 4vw; --s: 1 !important; }
  .place { font-size: calc(34 * var(--u)); }
  .says { margin-top: 1.4rem; font-size: calc(38 * var(--u)); }
  .answers { padding: 4vw; }
  .answers div { columns: 1; }
  .answers h3, .answers p { font-size: calc(36 * var(--u)); }
  .answers b { font-size: calc(40 * var(--u)); }
  .bar { position: sticky; bottom: 0; background: var(--frame); padding: 0 4vw; }
  .live .bar { justify-content: center; }
  .bar [data-does='full'] { display: none; }
}`;
