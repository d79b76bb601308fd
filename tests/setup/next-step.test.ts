/** What is done, or asked for, on each kind of machine. */
import { describe, expect, it } from 'vitest';
import { type Action, canvasPackages, type Facts, nextStep, type SetupStep } from '../../src/setup/next-step.mjs';

const readyMachine: Facts = {
  nodeVersion: '20.20.2',
  family: 'debian',
  root: true,
  missingPrograms: [],
  modules: 'in step',
  canvasLoads: true,
  tried: [],
};
const bare: Partial<Facts> = { missingPrograms: ['ffmpeg', 'ffprobe'], modules: 'missing', canvasLoads: false };

/** The step in few words: its kind and its packages, or all that it tells the reader. */
function brief(step: SetupStep): string {
  switch (step.kind) {
    case 'ready':
    case 'modules':
    case 'canvas':
      return step.kind;
    case 'system':
      return `system: ${step.packages.join(' ')}`;
    case 'stop':
      return `stop: ${step.says.join('\n')}`;
  }
}

const compilesWith = canvasPackages.join(' ');

describe('the next step', () => {
  const rows: readonly (readonly [name: string, facts: Partial<Facts>, expected: string])[] = [
    ['nothing is missing', {}, 'ready'],
    ['nothing is missing, on Node 24', { nodeVersion: '24.1.0' }, 'ready'],
    ['packages were never installed', { modules: 'missing', canvasLoads: false }, 'modules'],
    ['package-lock.json has changed since', { modules: 'out of step', canvasLoads: false }, 'modules'],
    ['packages first, whatever else is missing', bare, 'modules'],
    ['packages of another machine: installed anew', { canvasLoads: false }, 'modules'],
    ['packages are there, canvas is not built', { canvasLoads: false, tried: ['modules'] }, 'canvas'],
    ['canvas came prebuilt, no ffmpeg', { missingPrograms: ['ffmpeg', 'ffprobe'] }, 'system: ffmpeg'],
    ['canvas did not compile', { canvasLoads: false, tried: ['modules', 'canvas'] }, `system: ${compilesWith}`],
    [
      'canvas did not compile and no ffmpeg: one installation for both',
      { canvasLoads: false, missingPrograms: ['ffprobe'], tried: ['modules', 'canvas'] },
      `system: ffmpeg ${compilesWith}`,
    ],
    ['canvas again, now with what it needs', { canvasLoads: false, tried: ['modules', 'canvas', 'system'] }, 'canvas'],
  ];
  it.each(rows)('%s', (_name, facts, expected) => {
    expect(brief(nextStep({ ...readyMachine, ...facts }))).toBe(expected);
  });
});

describe('what a person is asked to do', () => {
  const noRights = { root: false, tried: ['modules', 'canvas'] as const };
  const noVideo = { ...noRights, missingPrograms: ['ffmpeg', 'ffprobe'] };
  const noPictures = { ...noRights, canvasLoads: false };
  const again = 'Then run the same command again.';
  const rows: readonly (readonly [name: string, facts: Partial<Facts>, expected: readonly string[]])[] = [
    [
      'Debian, not root: no ffmpeg',
      noVideo,
      [
        'This machine lacks ffmpeg and ffprobe (video). Please install it:',
        '  sudo apt-get update && sudo apt-get install -y ffmpeg',
        again,
      ],
    ],
    [
      'Debian, not root: both at once',
      { ...noVideo, ...noPictures },
      [
        'This machine lacks ffmpeg and ffprobe (video) and what canvas is compiled with (pictures). Please install it:',
        `  sudo apt-get update && sudo apt-get install -y ffmpeg ${compilesWith}`,
        again,
      ],
    ],
    [
      'Fedora, even as root',
      { ...noVideo, family: 'fedora', root: true },
      [
        'This machine lacks ffmpeg and ffprobe (video). Please install it:',
        '  sudo dnf install -y ffmpeg   (from RPM Fusion; the ffmpeg-free of Fedora writes no H.264)',
        again,
      ],
    ],
    [
      'macOS: canvas did not come prebuilt',
      { ...noPictures, family: 'macos' },
      [
        'This machine lacks what canvas is compiled with (pictures). Please install it:',
        '  xcode-select --install',
        '  brew install pkg-config cairo pango jpeg giflib librsvg python-setuptools',
        again,
      ],
    ],
    [
      'macOS: no ffmpeg',
      { ...noVideo, family: 'macos' },
      ['This machine lacks ffmpeg and ffprobe (video). Please install it:', '  brew install ffmpeg', again],
    ],
    [
      'somewhere else: in words',
      { ...noVideo, family: 'other' },
      [
        'This machine lacks ffmpeg and ffprobe (video). Please install it:',
        '  ffmpeg with ffprobe, both on the PATH',
        again,
      ],
    ],
    [
      'Node is too old, and nothing else is looked at',
      { ...bare, nodeVersion: '18.19.0' },
      [
        'proofreel needs Node 20 or newer; this is Node 18.19.0.',
        'Install a newer one from https://nodejs.org (or with your version manager), then run the same command again.',
      ],
    ],
    [
      'npm succeeded but changed nothing',
      { modules: 'out of step', tried: ['modules'] },
      ['`npm ci` succeeded, but node_modules still differs from package-lock.json.'],
    ],
    [
      'apt-get succeeded but installed no program',
      { missingPrograms: ['ffprobe'], tried: ['system'] },
      ['apt-get installed ffmpeg, and ffprobe is still not on the PATH.'],
    ],
    [
      'canvas compiled and does not load',
      { canvasLoads: false, tried: ['modules', 'canvas', 'system', 'canvas'] },
      ["canvas was compiled, but still does not load. See npm's output above."],
    ],
  ];
  it.each(rows)('%s', (_name, facts, expected) => {
    expect(nextStep({ ...readyMachine, ...facts })).toEqual({ kind: 'stop', says: expected });
  });
});

describe('the way to ready', () => {
  /** Lets each step succeed at what it is for, and lists the steps until nothing is left to do. */
  function walk(start: Partial<Facts>, canvasNeedsPackages: boolean): string[] {
    const taken: string[] = [];
    let facts: Facts = { ...readyMachine, ...start };
    for (let count = 0; count < 10; count += 1) {
      const step = nextStep(facts);
      taken.push(brief(step));
      if (step.kind === 'ready' || step.kind === 'stop') return taken;
      facts = after(facts, step.kind, canvasNeedsPackages);
    }
    return taken;
  }
  function after(facts: Facts, action: Action, canvasNeedsPackages: boolean): Facts {
    const tried = [...facts.tried, action];
    if (action === 'modules') return { ...facts, tried, modules: 'in step' };
    if (action === 'system') return { ...facts, tried, missingPrograms: [] };
    return { ...facts, tried, canvasLoads: !canvasNeedsPackages || facts.tried.includes('system') };
  }

  it('a bare Debian where canvas must be compiled', () => {
    expect(walk(bare, true)).toEqual(['modules', 'canvas', `system: ffmpeg ${compilesWith}`, 'canvas', 'ready']);
  });
  it('a bare Debian that can fetch a prebuilt canvas', () => {
    expect(walk(bare, false)).toEqual(['modules', 'canvas', 'system: ffmpeg', 'ready']);
  });
  it('a laptop with ffmpeg', () => {
    expect(walk({ ...bare, missingPrograms: [], family: 'macos', root: false }, false)).toEqual([
      'modules',
      'canvas',
      'ready',
    ]);
  });
});
