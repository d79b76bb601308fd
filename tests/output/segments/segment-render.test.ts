/**
 * Segments that go through one run of the encoder come out, to the byte, as each alone: what was kept from one render
 * may stand beside what the next one makes.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { codecOf } from '../../../src/output/codecs/codecs.ts';
import { filmSegments } from '../../../src/output/segments/film-segments.ts';
import { segmentRenderer } from '../../../src/output/segments/segment-render.ts';
import { folderStore } from '../../../src/output/segments/segment-store.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { scratchFolder } from '../outside.ts';
import { type Timeline, timelinePainter } from '../timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Seven segments of odd and even lengths; one in motion for longer than there is between two keyframes. */
const runs: Timeline = [60, 3, 1, 4, 2, 33, 7].flatMap((moving, at): Timeline => {
  const first = 100 * at;
  return [
    ...Array.from({ length: moving }, (_, picture) => [first + picture, 1] as const),
    [first + moving, 8 + 30 * (at % 3)],
  ];
});

describe.each([
  { name: 'h264', opaque: true, compatible: false },
  { name: 'h264', opaque: true, compatible: true },
  { name: 'prores', opaque: false, compatible: false },
  { name: 'qtrle', opaque: false, compatible: false },
  { name: 'png', opaque: false, compatible: false },
] as const)('$name, compatible: $compatible', ({ name, opaque, compatible }) => {
  const painter = timelinePainter(runs, { rate: fraction(25n), opaque });
  const codec = codecOf(name, painter, { opaque, compatible });
  const { segments } = filmSegments(painter, { codec: name, key: undefined, compatible });

  it('alone or together', async () => {
    // The compatible way has no need of it, and promises nothing for an encoder that writes otherwise than usual.
    expect(codec.takesSeveral).toBe(!compatible);
    expect(segments).toHaveLength(7);
    const made = async (label: string, batches: (typeof segments)[]): Promise<Buffer[]> => {
      const folder = scratch.at(`${name}-${compatible}-${label}`);
      mkdirSync(folder);
      const store = folderStore(folder);
      const setting = { codec: name, opaque, compatible, key: undefined, folder };
      const renderer = segmentRenderer(painter, codec, setting, store);
      // Two at once, as in a render.
      await Promise.all(batches.map((batch) => renderer.render(batch, () => undefined, undefined)));
      return segments.map((segment) => readFileSync(store.fileOf(segment)));
    };
    const alone = await made(
      'alone',
      segments.map((segment) => [segment]),
    );
    const together = await made('together', [segments.slice(0, 2), segments.slice(2)]);
    expect(together.map((bytes, at) => bytes.equals(alone[at]!))).toEqual(segments.map(() => true));
  });
});
