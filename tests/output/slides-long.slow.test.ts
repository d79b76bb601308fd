/** A lesson of two hundred steps in little more memory than one of twenty; and office slides as an office program opens them. */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { describeWith } from '../programs.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const root = fileURLToPath(new URL('../..', import.meta.url));

function scene(count: number): string {
  const steps = Array.from(
    { length: count },
    (_, index) =>
      `  - {id: s${index}, title: Step of words ${index}, say: "Where can a ${(index % 9) + 1} go?", show: [{circle: ${(index % 9) + 1}}, {outline: b${(index % 9) + 1}}]}`,
  );
  const file = scratch.at(`${count}.yaml`);
  writeFileSync(
    file,
    `proofreel: 1\ntitle: Long\npuzzle: {givens: 2..1.8...35.94.......7.....1....7....79..3....6..8.2....1.9436......1.5.......9.8}\nvideo: {draw: board}\nsteps:\n${steps.join('\n')}\n`,
  );
  return file;
}

/** The largest resident set of the process, in MiB. */
function peakOf(count: number, out: string): number {
  const script = `process.on('exit', () => process.stdout.write(String(process.resourceUsage().maxRSS)));
process.argv.splice(1, 0, 'proofreel'); await import(${JSON.stringify(`${root}src/cli.ts`)});`;
  const result = spawnSync(
    process.execPath,
    [
      '--import',
      'tsx',
      '--input-type=module',
      '-e',
      script,
      '--',
      'slides',
      scene(count),
      '-o',
      scratch.at(out),
      '--quiet',
    ],
    { cwd: root, encoding: 'utf8' },
  );
  expect(result.stderr).toMatch(new RegExp(`${count} (pages|slides)`));
  return Number(result.stdout) / 1024;
}

describe('two hundred steps', () => {
  it.each(['long.pdf', 'long.pptx', 'long.html'])('in bounded memory: %s', (out) => {
    const [few, many] = [peakOf(20, `few-${out}`), peakOf(200, out)];
    console.log(`${out}: ${few.toFixed(0)} MiB for 20 slides, ${many.toFixed(0)} MiB for 200`);
    expect(many).toBeLessThan(few + 150);
  });
});

describeWith(['soffice', 'pdfinfo', 'pdftotext'], 'an office program', () => {
  it('opens the slides, and has a page for each', () => {
    const profile = `-env:UserInstallation=file://${scratch.at('profile')}`;
    const out = scratch.at('lamp-room.pptx');
    const call = [
      '--import',
      'tsx',
      'src/cli.ts',
      'slides',
      'scenes/lamp-room.yaml',
      '-o',
      out,
      '--exercise',
      '--quiet',
    ];
    expect(spawnSync(process.execPath, call, { cwd: root }).status).toBe(0);
    execFileSync('soffice', [profile, '--headless', '--convert-to', 'pdf', '--outdir', scratch.folder, out], {
      stdio: 'ignore',
    });
    const pdf = scratch.at('lamp-room.pdf');
    expect(readFileSync(pdf, 'latin1').slice(0, 5)).toBe('%PDF-');
    expect(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })).toMatch(/^Pages: +14$/m);
    const text = execFileSync('pdftotext', ['-f', '4', '-l', '4', pdf, '-'], { encoding: 'utf8' });
    for (const words of ['Two strings, one box', 'two-string kite', 'Which candidate goes?', '4 / 12'])
      expect(text).toContain(words);
  });
});
