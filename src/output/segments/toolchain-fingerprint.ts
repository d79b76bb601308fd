/**
 * What determines the bytes of a film's pictures: this program, what it draws with, and what it encodes with.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cairoVersion, freetypeVersion, version } from 'canvas';
import { type CodecName, codecs } from '../codecs/codecs.ts';
import { encoderVersion } from '../ffmpeg/ffmpeg.ts';
import { fontFolder } from '../pixels/canvas.ts';

/**
 * Equal only for equal programs: computed from the program's own text, so that a change without a new version number
 * counts. Without ffmpeg's version for what we compress ourselves: PNG frames can be made without ffmpeg.
 */
export async function toolchainFingerprint(codec: CodecName): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of [join(dirname(fileURLToPath(import.meta.url)), '../..'), fontFolder()]) {
    for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
      if (!/\.(ts|js|ttf)$/.test(name)) continue;
      hash.update(JSON.stringify(name)).update(readFileSync(join(folder, name)));
    }
  }
  const versions = [version, cairoVersion, freetypeVersion, process.version, process.platform, process.arch];
  return hash
    .update(JSON.stringify([...versions, codecs[codec].encoder === undefined ? '' : await encoderVersion()]))
    .digest('hex');
}
