import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-thumbnail-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const scene = (name: string) => fileURLToPath(new URL(`../../scenes/${name}`, import.meta.url));

interface Thumbnail {
  readonly status: number;
  readonly err: string;
  /** Undefined where none was drawn. */
  readonly picture: PNG | undefined;
}

/** Draws what the words ask for, to a file of its own. */
async function thumbnail(...call: readonly string[]): Promise<Thumbnail> {
  const out = join(folder, 'out.png');
  rmSync(out, { force: true });
  const { status, err } = await run(...call, '-o', out);
  return { status, err, picture: status === 0 ? PNG.sync.read(readFileSync(out)) : undefined };
}

/** Whether the whole of this part of the picture has the colour of its upper left pixel. */
function isPlain({ width, data }: PNG, left: number, top: number, right: number, bottom: number): boolean {
  const at = (x: number, y: number) => data.readUInt32BE((y * width + x) * 4);
  for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) if (at(x, y) !== at(left, top)) return false;
  return true;
}

describe('a thumbnail', () => {
  const titles: readonly (readonly [why: string, title: string | undefined])[] = [
    ['the step’s own title', undefined],
    ['one letter', 'X'],
    ['a long title', 'What the two towers on one street have to say about the corner that nobody looks at'],
    ['a word wider than its room', 'Dreidimensionalfärbungsverfahren'],
    ['a title from the right to the left', 'שני מגדלים ברחוב אחד'],
  ];
  it.each(titles)('keeps its words off the board, the edge and the corner that sites cover: %s', async (_, title) => {
    const { status, picture } = await thumbnail(
      'still',
      scene('two-towers.yaml'),
      '--thumbnail',
      ...['--step', 'towers', ...(title === undefined ? [] : ['--title', title])],
    );
    expect(status).toBe(0);
    expect([picture!.width, picture!.height]).toEqual([1280, 720]);
    expect(isPlain(picture!, 698, 0, 740, 720)).toBe(true);
    expect(isPlain(picture!, 1242, 0, 1280, 720)).toBe(true);
    expect(isPlain(picture!, 740, 650, 1280, 720)).toBe(true);
    expect(isPlain(picture!, 740, 40, 1240, 650)).toBe(false);
  });

  it('has the title that is given with --title', async () => {
    const towers = ['still', scene('two-towers.yaml'), '--thumbnail', '--step', 'towers'] as const;
    const own = await thumbnail(...towers);
    const other = await thumbnail('still', scene('two-towers.yaml'), '--thumbnail', '--step', 'towers', '--title', 'X');
    expect([own.status, other.status]).toEqual([0, 0]);
    expect(other.picture!.data.equals(own.picture!.data)).toBe(false);
  });

  it('of a step that is not sound is refused, or stamped', async () => {
    expect((await thumbnail('still', scene('mistaken.yaml'), '--thumbnail', '--step', 'kite')).status).toBe(1);
    const { status, picture } = await thumbnail(
      'still',
      scene('mistaken.yaml'),
      '--thumbnail',
      '--step',
      'kite',
      '--stamp',
    );
    expect(status).toBe(0);
    expect(isPlain(picture!, 0, 0, 1280, 10)).toBe(false);
  });

  const still = ['still', scene('two-towers.yaml'), '-o', 'never.png'];
  const refused: readonly (readonly [why: string, call: readonly string[], message: RegExp])[] = [
    ['a version', [...still, '--thumbnail', '--step', 'towers', '--as', 'upright'], /1280x720; leave --as out/],
    ['a title without it', [...still, '--step', 'towers', '--title', 'X'], /large title of a --thumbnail/],
    ['no step', [...still, '--thumbnail'], /one of --step ID and --at TIME/],
  ];
  it.each(refused)('refused: %s', async (_, call, message) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: expect.stringMatching(message) });
  });
});
