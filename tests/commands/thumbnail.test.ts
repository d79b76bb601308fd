import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pc from 'picocolors';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { BadCall } from '../../src/commands/bad-call.ts';
import { type StillCall, still } from '../../src/commands/still.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-thumbnail-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const scene = (name: string) => fileURLToPath(new URL(`../../scenes/${name}`, import.meta.url));
const paint = pc.createColors(false);

async function thumbnail(
  name: string,
  call: StillCall,
): Promise<{ status: number | string; picture: PNG | undefined }> {
  const out = join(folder, 'out.png');
  rmSync(out, { force: true });
  const unheard = () => undefined;
  const terminal = {
    out: unheard,
    err: unheard,
    outPaint: paint,
    errPaint: paint,
    isWatched: false,
    columns: undefined,
  };
  try {
    const status = await still(scene(name), { thumbnail: true, out, ...call }, terminal);
    return { status, picture: status === 0 ? PNG.sync.read(readFileSync(out)) : undefined };
  } catch (failure) {
    if (failure instanceof BadCall) return { status: failure.message, picture: undefined };
    throw failure;
  }
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
    const { status, picture } = await thumbnail('two-towers.yaml', {
      step: 'towers',
      ...(title === undefined ? {} : { title }),
    });
    expect(status).toBe(0);
    expect([picture!.width, picture!.height]).toEqual([1280, 720]);
    expect(isPlain(picture!, 698, 0, 740, 720)).toBe(true);
    expect(isPlain(picture!, 1242, 0, 1280, 720)).toBe(true);
    expect(isPlain(picture!, 740, 650, 1280, 720)).toBe(true);
    expect(isPlain(picture!, 740, 40, 1240, 650)).toBe(false);
  });

  it('of a step that is not sound is refused, or stamped', async () => {
    expect((await thumbnail('mistaken.yaml', { step: 'kite' })).status).toBe(1);
    const { status, picture } = await thumbnail('mistaken.yaml', { step: 'kite', stamp: true });
    expect(status).toBe(0);
    expect(isPlain(picture!, 0, 0, 1280, 10)).toBe(false);
  });

  const refused: readonly (readonly [why: string, call: StillCall, message: RegExp])[] = [
    ['a version', { step: 'towers', as: 'upright' }, /1280x720; leave --as out/],
    ['a title without it', { step: 'towers', thumbnail: false, title: 'X' }, /large title of a --thumbnail/],
    ['no step', {}, /one of --step ID and --at TIME/],
  ];
  it.each(refused)('refused: %s', async (_, call, message) => {
    expect((await thumbnail('two-towers.yaml', call)).status).toMatch(message);
  });
});
