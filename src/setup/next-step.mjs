/**
 * What a machine still needs before the project runs on it: facts in, the next step out. Nothing here examines or
 * changes the machine, so that every case can be tested as a row of a table.
 *
 * Plain JavaScript without a package, since it runs before any is installed.
 */

/** The least major version of Node; `engines` of package.json says the same. */
export const leastNode = 20;

/** What `canvas` is compiled with and against if no prebuilt binary is available, by Debian's names. */
export const canvasPackages = [
  'g++',
  'make',
  'python3',
  'pkg-config',
  'libcairo2-dev',
  'libpango1.0-dev',
  'libjpeg-dev',
  'libgif-dev',
  'librsvg2-dev',
];

/**
 * The first thing that is missing and not yet tried.
 *
 * @param {import('./next-step.d.mts').Facts} facts
 * @returns {import('./next-step.d.mts').SetupStep}
 */
export function nextStep(facts) {
  if (Number.parseInt(facts.nodeVersion, 10) < leastNode) return stop(nodeTooOld(facts));

  const tried = (kind) => facts.tried.filter((each) => each === kind).length;
  if (facts.modules !== 'in step') {
    if (tried('modules') > 0)
      return stop(['`npm ci` succeeded, but node_modules still differs from package-lock.json.']);
    return { kind: 'modules', says: `Installing the packages of package-lock.json with npm: ${modulesTake}.` };
  }
  if (!facts.canvasLoads && tried('modules') === 0) {
    return {
      kind: 'modules',
      says: `canvas does not load here: reinstalling all packages with npm: ${modulesTake}.`,
    };
  }
  if (!facts.canvasLoads && tried('canvas') === 0) {
    return { kind: 'canvas', says: 'Fetching a prebuilt canvas, or compiling it: a minute or two.' };
  }

  const lacksProgram = facts.missingPrograms.length > 0;
  if (!lacksProgram && facts.canvasLoads) return { kind: 'ready' };
  if (tried('system') === 0) {
    if (!(facts.family === 'debian' && facts.root)) return stop(whatToInstall(facts));
    const packages = [...(lacksProgram ? ['ffmpeg'] : []), ...(facts.canvasLoads ? [] : canvasPackages)];
    return {
      kind: 'system',
      packages,
      says: `Installing ${packages.join(' ')} with apt-get: one to five minutes.`,
    };
  }
  if (lacksProgram) {
    return stop([`apt-get installed ffmpeg, and ${facts.missingPrograms.join(' and ')} is still not on the PATH.`]);
  }
  if (tried('canvas') === 1) {
    return { kind: 'canvas', says: 'Compiling canvas: about a minute.' };
  }
  return stop(["canvas was compiled, but still does not load. See npm's output above."]);
}

const modulesTake = 'about a minute';

function stop(says) {
  return { kind: 'stop', says };
}

function nodeTooOld(facts) {
  return [
    `proofreel needs Node ${leastNode} or newer; this is Node ${facts.nodeVersion}.`,
    'Install a newer one from https://nodejs.org (or with your version manager), then run the same command again.',
  ];
}

/** Both needs in one message, so that nobody has to come back twice. */
function whatToInstall(facts) {
  const lacks = [];
  if (facts.missingPrograms.length > 0) lacks.push(`${facts.missingPrograms.join(' and ')} (video)`);
  if (!facts.canvasLoads) lacks.push('what canvas is compiled with (pictures)');
  const commands = commandsFor(facts.family, facts.missingPrograms.length > 0, !facts.canvasLoads);
  return [
    `This machine lacks ${lacks.join(' and ')}. Please install it:`,
    ...commands.map((command) => `  ${command}`),
    'Then run the same command again.',
  ];
}

/**
 * Commands or, where no command is known, plain words. The names for canvas are those of its own instructions, from
 * memory.
 */
function commandsFor(family, video, pictures) {
  switch (family) {
    case 'debian': {
      const packages = [...(video ? ['ffmpeg'] : []), ...(pictures ? canvasPackages : [])];
      return [`sudo apt-get update && sudo apt-get install -y ${packages.join(' ')}`];
    }
    case 'fedora':
      return [
        ...(video ? ['sudo dnf install -y ffmpeg   (from RPM Fusion; the ffmpeg-free of Fedora writes no H.264)'] : []),
        ...(pictures
          ? [
              'sudo dnf install -y gcc-c++ make python3 pkgconf-pkg-config cairo-devel pango-devel libjpeg-turbo-devel giflib-devel librsvg2-devel',
            ]
          : []),
      ];
    case 'macos':
      return [
        ...(video ? ['brew install ffmpeg'] : []),
        ...(pictures
          ? ['xcode-select --install', 'brew install pkg-config cairo pango jpeg giflib librsvg python-setuptools']
          : []),
      ];
    case 'windows':
      return [
        ...(video ? ['winget install ffmpeg   (then open a new terminal, so that it is on the PATH)'] : []),
        ...(pictures
          ? ['canvas has a prebuilt binary for 64-bit Windows: remove the folder node_modules to fetch it again']
          : []),
      ];
    case 'other':
      return [
        ...(video ? ['ffmpeg with ffprobe, both on the PATH'] : []),
        ...(pictures
          ? [
              'a C++ compiler, make, python3, pkg-config and the development files of cairo, pango, libjpeg, giflib and librsvg',
            ]
          : []),
      ];
  }
}
