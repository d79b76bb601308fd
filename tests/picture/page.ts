/**
 * `npm run pictures`: one page with every reference picture - old, difference, new - over a chequer and over a board,
 * with a switch that blinks between old and new, and a zoom. Those that differ come first.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { frameAt } from '../../src/timeline/film.ts';
import { type Comparison, compare, outFolder } from './compare.ts';
import { drawn } from './drawn.ts';
import { film, sparseGivens } from './films.ts';
import { type Golden, goldens } from './goldens.ts';

const compared = goldens.map((golden) => ({ golden, result: compare(golden) }));
const changed = compared.filter(({ result }) => result.kind !== 'same');
const board = dataUrl(
  drawn(
    film({
      width: 640,
      height: 640,
      givens: sparseGivens,
      candidates: true,
      board: [{ from: frameAt(0), shape: { kind: 'square', left: 20, top: 20, side: 600 } }],
    }),
    0,
  ).png,
);

const page = `<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Pictures</title>
<style>
  body { font: 15px/1.5 system-ui, sans-serif; margin: 24px; background: #f4f3ef; color: #17202a }
  section { margin: 0 0 32px } h2 { font-size: 17px; margin: 0 0 6px }
  .row { display: flex; gap: 12px; flex-wrap: wrap }
  figure { margin: 0 } figcaption { font-size: 13px; color: #5d6469 }
  .ground { display: inline-block; line-height: 0 }
  .chequer { background: repeating-conic-gradient(#ccc 0 25%, #fff 0 50%) 0 0 / 16px 16px }
  .board { background: url(${board}) 0 0 / cover }
  img { zoom: var(--zoom, 1); image-rendering: pixelated }
  .blink .new { animation: blink 1.2s steps(1) infinite } @keyframes blink { 50% { opacity: 0 } }
  .pair { position: relative; display: inline-block; line-height: 0 } .pair .new { position: absolute; left: 0; top: 0 }
  nav { position: sticky; top: 0; background: #f4f3ef; padding: 8px 0; z-index: 1 }
</style>
<nav>${changed.length === 0 ? 'All as accepted.' : `${changed.length} of ${goldens.length} changed.`}
  <label><input type="checkbox" onchange="document.body.classList.toggle('blink', this.checked)"> blink old and new</label>
  <label>zoom <input type="range" min="1" max="6" value="1" oninput="document.body.style.setProperty('--zoom', this.value)"></label></nav>
${[...changed, ...compared.filter(({ result }) => result.kind === 'same')].map(({ golden, result }) => section(golden, result)).join('\n')}
</html>`;

mkdirSync(outFolder, { recursive: true });
const file = join(outFolder, 'index.html');
writeFileSync(file, page);
process.stdout.write(`${file}\n`);
process.stderr.write(
  changed.length === 0
    ? `${goldens.length} pictures, all as accepted.\n`
    : `${changed.length} of ${goldens.length} changed: ${changed.map(({ golden }) => golden.name).join(', ')}\nTo take one: npm run pictures:accept NAME\n`,
);

function section(golden: Golden, result: Comparison): string {
  const now = dataUrl(result.kind === 'same' ? drawn(golden.film, golden.frame, golden.look).png : result.now);
  const was = result.kind === 'different' || result.kind === 'resized' ? dataUrl(result.was) : undefined;
  const difference = result.kind === 'different' ? dataUrl(result.difference) : undefined;
  const figures = [
    ...(was === undefined ? [] : [figure('old', 'chequer', `<img src="${was}">`)]),
    ...(difference === undefined ? [] : [figure('difference', 'chequer', `<img src="${difference}">`)]),
    ...['chequer', 'board'].map((ground) =>
      figure(
        was === undefined ? (result.kind === 'missing' ? 'new, no reference yet' : 'as accepted') : 'new over old',
        ground,
        `<span class="pair">${was === undefined ? '' : `<img src="${was}">`}<img class="${was === undefined ? '' : 'new'}" src="${now}"></span>`,
      ),
    ),
  ];
  return `<section><h2>${golden.name} - ${result.kind}</h2><div class="row">${figures.join('')}</div></section>`;
}

function figure(caption: string, ground: string, content: string): string {
  return `<figure><span class="ground ${ground}">${content}</span><figcaption>${caption}</figcaption></figure>`;
}

function dataUrl(png: Buffer): string {
  return `data:image/png;base64,${png.toString('base64')}`;
}
