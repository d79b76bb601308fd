/**
 * `npm run bench`, or `npm run bench -- counting`, `-- proving`, `-- plan`, `-- stages`, `-- engine`, `-- engine-long`,
 * `-- footage`, `-- locate`, `-- one-step-changed`, `-- fixes`: the benchmarks, one after the other.
 * Each prints the machine and a checksum of its result beside its times.
 */
import { run as counting } from './counting.ts';
import { run as engine } from './engine.ts';
import { run as engineLong } from './engine-long.ts';
import { run as fixes } from './fixes.ts';
import { run as footage } from './footage.ts';
import { run as locate } from './locate.ts';
import { run as oneStepChanged } from './one-step-changed.ts';
import { run as plan } from './plan.ts';
import { run as proving } from './proving.ts';
import { run as stages } from './stages.ts';

const benchmarks: Readonly<Record<string, () => Promise<void>>> = {
  counting,
  proving,
  plan,
  stages,
  engine,
  'engine-long': engineLong,
  footage,
  locate,
  'one-step-changed': oneStepChanged,
  fixes,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in benchmarks));
if (unknown.length > 0) {
  console.error(`There is no benchmark ${unknown.join(', ')}; there are ${Object.keys(benchmarks).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const [name, run] of Object.entries(benchmarks)) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    await run();
    console.log();
  }
}
