/** package.json: what README and DEVELOPERS.md promise exists, and an installation is the same tomorrow. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');

interface Package {
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly bin: Readonly<Record<string, string>>;
}
const project: Package = JSON.parse(read('package.json'));

describe('dependencies', () => {
  it('are pinned to one version each', () => {
    const loose = Object.entries({ ...project.dependencies, ...project.devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/.test(version),
    );
    expect(loose).toEqual([]);
  });

  it('are locked without the name of a registry', () => {
    expect(read('package-lock.json')).not.toMatch(/"resolved"/);
    expect(JSON.parse(read('package-lock.json')).lockfileVersion).toBe(3);
  });

  it.each(Object.keys({ ...project.dependencies, ...project.devDependencies }))(
    '%s has its reason in DEVELOPERS.md',
    (name) => {
      expect(read('DEVELOPERS.md')).toContain(`\`${name}\``);
    },
  );
});

describe('scripts', () => {
  it.each(['README.md', 'DEVELOPERS.md', 'scenes/LANGUAGE.md'])('named in %s exist', (file) => {
    const named = [...read(file).matchAll(/npm (?:run (?:-s |--silent )?)?([a-z:]+)/g)].map((match) => match[1] ?? '');
    const known = new Set([...Object.keys(project.scripts), 'ci', 'link', 'install', 'itself']);
    expect(named.filter((name) => !known.has(name))).toEqual([]);
  });

  it('run files that exist', () => {
    const files = Object.values(project.scripts).flatMap((script) => script.match(/[\w./-]+\.(?:ts|mjs)/g) ?? []);
    expect(files.length).toBeGreaterThan(5);
    expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
  });

  it('make the machine ready before they use a package', () => {
    const uses = /\b(tsx|vitest)\b/;
    const unready = Object.entries(project.scripts).filter(
      ([, script]) => uses.test(script) && !script.startsWith('node src/setup/make-ready.mjs && '),
    );
    // `proofreel` is for whoever has run one of the others: its output must be its own.
    expect(unready.map(([name]) => name)).toEqual(['proofreel']);
  });
});

describe('the command', () => {
  it('is compiled from src/cli.ts, which can be started by itself', () => {
    expect(project.bin).toEqual({ proofreel: 'dist/cli.js' });
    expect(read('src/cli.ts').split('\n')[0]).toBe('#!/usr/bin/env node');
  });
});

describe('files that documents point to', () => {
  it.each(['README.md', 'DEVELOPERS.md', 'scenes/LANGUAGE.md'])('%s', (file) => {
    const folder = dirname(join(root, file));
    const targets = [...read(file).matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)].map((match) => match[1] ?? '');
    const local = targets.filter((target) => !/^https?:/.test(target));
    expect(local.filter((target) => !existsSync(join(folder, target)))).toEqual([]);
  });

  it('.ci/run can be started', () => {
    expect(statSync(join(root, '.ci/run')).mode & 0o111).not.toBe(0);
  });
});

describe('DEVELOPERS.md', () => {
  const page = read('DEVELOPERS.md');
  const codeIn = (text: string): string[] => [...text.matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? '');

  it('names files and folders that exist', () => {
    const paths = codeIn(page).filter((code) => /^(src|tests|scenes|assets)\/[\w./-]*$/.test(code));
    expect(paths.length).toBeGreaterThan(20);
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  const folders = page.split(/^### /m).filter((section) => /^`src\/[a-z]+`\n/.test(section));
  it.each(folders.map((section) => codeIn(section)))('%s holds the files to start from', (folder, ...named) => {
    const files = named.filter((code) => /^[\w/-]+\.(ts|mjs)$/.test(code) && !code.includes('src/'));
    const elsewhere = files.filter(
      (file) => !existsSync(join(root, folder ?? '', file)) && !existsSync(join(root, file)),
    );
    expect(elsewhere).toEqual([]);
  });

  it('describes every folder of src', () => {
    expect(folders.length).toBeGreaterThan(8);
    const named = codeIn(
      page
        .split('\n')
        .filter((line) => line.startsWith('### '))
        .join('\n'),
    );
    const there = readdirSync(join(root, 'src'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(there.map((entry) => `src/${entry.name}`).filter((folder) => !named.includes(folder))).toEqual([]);
  });
});
