/**
 * The look at a segment by a decoder notices what it is there for: a picture too few, two pictures in each other's
 * place, and a held picture that is another.
 */
import { afterAll, describe, expect, it } from 'vitest';
import type { Codec, Encoded } from '../../../src/output/codecs/codec.ts';
import { codecOf } from '../../../src/output/codecs/codecs.ts';
import { MachineFailure } from '../../../src/output/machine/machine-failure.ts';
import { filmSegments } from '../../../src/output/segments/film-segments.ts';
import { segmentRenderer } from '../../../src/output/segments/segment-render.ts';
import { folderStore } from '../../../src/output/segments/segment-store.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { scratchFolder } from '../outside.ts';
import { type Timeline, timelinePainter } from '../timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const runs: Timeline = [...[0, 1, 2, 3].map((picture) => [picture, 1] as const), [4, 20]];

describe.each([
  { name: 'h264', opaque: true },
  { name: 'prores', opaque: false },
  { name: 'qtrle', opaque: false },
  { name: 'vp9', opaque: false },
  { name: 'av1', opaque: true },
  { name: 'hevc', opaque: true },
] as const)('$name', ({ name, opaque }) => {
  const painter = timelinePainter(runs, { rate: fraction(25n), opaque });
  const codec = codecOf(name, painter, { opaque, compatible: false });
  const render = async (spoil: (encoded: Encoded) => Encoded): Promise<unknown> => {
    const spoilt: Codec = { ...codec, encode: async (work) => spoil(await codec.encode(work)) };
    const setting = { codec: name, opaque, compatible: false, key: undefined, folder: scratch.folder };
    const { segments } = filmSegments(painter, { codec: name, key: undefined });
    const store = folderStore(scratch.folder);
    await segmentRenderer(painter, spoilt, setting, store).render(segments, () => undefined, undefined);
    return store.find(segments[0]!);
  };

  it('takes what is right', async () => {
    expect(await render((encoded) => encoded)).toBeDefined();
  });

  it('notices another picture that is held, and a picture too few', async () => {
    const moving = runs.length - 1;
    await expect(
      render(({ config, packets }) => ({
        config,
        packets: packets.map((one, at) => (at < moving ? one : packets[0]!)),
      })),
    ).rejects.toThrow(MachineFailure);
    const count = moving + codec.holdPictures;
    await expect(render(({ config, packets }) => ({ config, packets: packets.slice(1) }))).rejects.toThrow(
      `${count - 1} frames of ${count}`,
    );
  });
});
