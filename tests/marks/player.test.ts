/** A page of slides carries the painting of marks, and nothing of how they are read, judged, told or put in words. */
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

it('the program of a page holds no package, and of the stages below marks their numbers alone', async () => {
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: ['src/player/slides.ts'],
    bundle: true,
    write: false,
    metafile: true,
    minify: true,
    logLevel: 'silent',
    tsconfigRaw: '{}',
  });
  const [output] = Object.values(metafile.outputs);
  const bytes = Object.entries(output!.inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
  const folders = [...new Set(bytes.map(([file]) => file.split('/').slice(0, 2).join('/')))].sort();
  expect(folders).toEqual([
    'src/frames',
    'src/grid',
    'src/marks',
    'src/picture',
    'src/player',
    'src/scene',
    'src/slides',
    'src/timeline',
  ]);
  expect(bytes.map(([file]) => file).filter((file) => file.startsWith('src/scene/'))).toEqual([
    'src/scene/fraction.ts',
  ]);
  expect(output!.bytes).toBeLessThan(80_000);
});
