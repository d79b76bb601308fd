/** Pictures as SVG: what each call of a canvas writes, and that the whole is well-formed XML. */
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { paint } from '../../src/frames/paint.ts';
import { drawingOf } from '../../src/slides/deck.ts';
import { escaped, SvgContext } from '../../src/slides/svg-context.ts';
import { skyscraper, towers } from '../staging/stage.ts';
import { deck } from './make-deck.ts';

/** Half the font size a letter. */
const measure = {
  font: '10px x',
  measureText(text: string) {
    return { width: (text.length * Number(/([\d.]+)px/.exec(this.font)?.[1])) / 2 };
  },
};

const rows: readonly (readonly [name: string, draw: (context: SvgContext) => void, written: string])[] = [
  ['a rectangle', (c) => c.fillRect(1, 2, 3, 4), '<g fill="#000000"><path d="M1 2 4 2 4 6 1 6Z"/></g>'],
  [
    'two fills of one style',
    (c) => {
      c.fillStyle = '#ff0000';
      c.fillRect(0, 0, 1, 1);
      c.fillRect(2, 0, 1, 1);
    },
    '<g fill="#ff0000"><path d="M0 0 1 0 1 1 0 1Z"/><path d="M2 0 3 0 3 1 2 1Z"/></g>',
  ],
  [
    'a line under a scale',
    (c) => {
      c.transform(2, 0, 0, 2, 10, 0);
      c.lineWidth = 3;
      c.lineCap = 'round';
      c.beginPath();
      c.moveTo(1, 1);
      c.lineTo(2, 1);
      c.stroke();
    },
    '<g fill="none" stroke="#000000" stroke-width="6" stroke-linecap="round"><path d="M12 2 14 2"/></g>',
  ],
  [
    'an area with a hole, half opaque',
    (c) => {
      c.globalAlpha = 0.5;
      c.beginPath();
      c.moveTo(0, 0);
      c.lineTo(4, 0);
      c.lineTo(4, 4);
      c.closePath();
      c.moveTo(1, 1);
      c.lineTo(2, 1);
      c.fill('evenodd');
    },
    '<g fill="#000000" fill-rule="evenodd" fill-opacity="0.5"><path d="M0 0 4 0 4 4ZM1 1 2 1"/></g>',
  ],
  [
    'text with signs of XML',
    (c) => {
      c.font = "600 20.00px 'IBM Plex Sans'";
      c.textAlign = 'center';
      c.fillText('r1c1<>7 & "5"', 5, 6);
    },
    '<g fill="#000000" font-family="IBM Plex Sans" font-weight="600" font-size="20" text-anchor="middle"><text x="5" y="6">r1c1&#60;&#62;7 &#38; &#34;5&#34;</text></g>',
  ],
  [
    'text aslant',
    (c) => {
      c.transform(1, 0.5, 0, 1, 3, 4);
      c.fillText('7', 1, 2);
    },
    '<g fill="#000000" font-family="sans-serif" font-weight="400" font-size="10"><text x="1" y="2" transform="matrix(1 0.5 0 1 3 4)">7</text></g>',
  ],
  [
    'what was restored',
    (c) => {
      c.save();
      c.fillStyle = '#111111';
      c.transform(1, 0, 0, 1, 100, 100);
      c.restore();
      c.fillRect(0, 0, 1, 1);
    },
    '<g fill="#000000"><path d="M0 0 1 0 1 1 0 1Z"/></g>',
  ],
  [
    'an empty path',
    (c) => {
      c.beginPath();
      c.fill();
      c.stroke();
    },
    '',
  ],
];

it.each(rows)('%s', (_, draw, written) => {
  const context = new SvgContext(measure);
  draw(context);
  expect(context.content()).toBe(written);
});

it('measures in the font that was set', () => {
  const context = new SvgContext(measure);
  context.font = "400 30.00px 'IBM Plex Sans'";
  expect(context.measureText('abc').width).toBe(45);
});

it('escapes every sign that XML keeps for itself', () => {
  expect(escaped(`<a href='x'>&"`)).toBe('&#60;a href=&#39;x&#39;&#62;&#38;&#34;');
});

describe('a slide', () => {
  const made = deck(
    towers(`- {id: a, ${skyscraper}, show: [{label: 3r1c3 "<top> & 'more'"}, {link: all}, {strike: all}]}`),
  );
  const context = new SvgContext(measure);
  paint(context, made.film, made.look, drawingOf(made, made.slides[0]!));
  const content = context.content();

  it('is well-formed', () => {
    const seen: string[] = [];
    const parser = new SaxesParser({ xmlns: true });
    parser.on('error', (error) => {
      throw error;
    });
    parser.on('text', (text) => seen.push(text));
    parser.write(`<svg xmlns="http://www.w3.org/2000/svg">${content}</svg>`).close();
    expect(seen).toContain("<top> & 'more'");
  });

  it('draws every digit that stands as text', () => {
    const digits = [...content.matchAll(/>(\d)<\/text>/g)].map((match) => match[1]);
    expect(digits.length).toBeGreaterThanOrEqual(made.film.standing.length + made.film.candidates.length);
  });

  it('asks for no number that is none', () => {
    expect(content).not.toMatch(/NaN|Infinity|undefined/);
  });
});
