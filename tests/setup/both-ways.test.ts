/** No two folders of src import each other; and the count sees those that do. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { pairsBothWays } from './both-ways.ts';

const tree = mkdtempSync(join(tmpdir(), 'proofreel-both-ways-'));
afterAll(() => rmSync(tree, { recursive: true, force: true }));

it('no two folders of src import each other', () => {
  expect(pairsBothWays('src')).toEqual([]);
});

it('types count too, and a folder within another', () => {
  const files = {
    'src/a/one.ts': "import type { Two } from '../b/two.ts';\nexport type One = Two;",
    'src/b/two.ts': 'export type Two = 1;',
    'src/b/three.ts': "import {\n  type One,\n} from '../a/one.ts';\nexport const three: One = 1;",
    'src/b/within/four.ts': "export { three } from '../three.ts';",
    'src/b/five.ts': "const four = () => import('./within/four.ts');\nexport const five = four;",
    'src/c/six.ts': "import '../a/one.ts';",
  };
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(dirname(join(tree, file)), { recursive: true });
    writeFileSync(join(tree, file), text);
  }
  expect(pairsBothWays('src', tree)).toEqual(['src/a <-> src/b', 'src/b <-> src/b/within']);
});
