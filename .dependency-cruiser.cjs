/**
 * Which folder may import what. Imports run one way: text, proof, frames, picture, file.
 * `values`: everything; `types`: with `import type` only, `besides`: but for these files; `packages`: of the registry;
 * `node`: Node's own modules.
 */
const folders = {
  grid: { values: [], types: [], packages: ['fastest-levenshtein'], node: false },
  proof: { values: ['grid'], types: [], packages: [], node: false },
  techniques: { values: ['grid', 'proof'], types: [], packages: [], node: false },
  scene: {
    values: ['grid'],
    types: ['techniques'],
    // The names of arguments, their families and costs are in the techniques' records.
    besides: ['techniques/all-techniques.ts', 'techniques/teaching.ts', 'techniques/technique.ts'],
    packages: ['yaml', 'zod', 'fastest-levenshtein'],
    node: false,
  },
  puzzles: { values: ['grid', 'proof', 'techniques'], types: [], packages: [], node: false },
  plan: { values: ['grid', 'proof', 'techniques'], types: [], packages: [], node: false },
  check: { values: ['grid', 'proof', 'techniques', 'scene'], types: [], packages: [], node: false },
  timeline: { values: ['grid', 'scene'], types: [], packages: ['fastest-levenshtein'], node: false },
  staging: { values: ['grid', 'proof', 'scene', 'check', 'timeline'], types: [], packages: [], node: false },
  picture: { values: ['grid', 'timeline'], types: ['scene'], packages: [], node: false },
  // A mark is one record: how it is read, judged, timed, drawn, painted and put in words; so it lies above these stages.
  marks: { values: ['grid', 'scene', 'check', 'timeline', 'staging', 'picture'], types: [], packages: [], node: false },
  lesson: { values: ['grid', 'scene', 'check', 'timeline', 'marks'], types: [], packages: [], node: false },
  film: { values: ['grid', 'scene', 'timeline', 'staging', 'marks'], types: ['check'], packages: [], node: false },
  voice: {
    values: ['grid', 'scene', 'timeline', 'marks'],
    types: ['check', 'techniques'],
    packages: [],
    node: false,
  },
  frames: { values: ['grid', 'timeline', 'picture', 'marks'], types: ['scene'], packages: [], node: false },
  slides: {
    values: ['grid', 'scene', 'timeline', 'staging', 'picture', 'marks', 'film', 'frames', 'beside'],
    types: ['check'],
    packages: [],
    node: false,
  },
  player: { values: ['picture', 'frames', 'slides', 'timeline'], types: ['scene'], packages: [], node: false },
  // What a recording shows, from its pixels alone: the caller passes the pictures in.
  recording: { values: ['grid'], types: ['scene'], packages: [], node: false },
  output: {
    values: ['picture', 'marks', 'frames', 'slides', 'timeline', 'grid'],
    types: ['scene', 'recording'],
    // Exact times are needed where a recording is cut.
    besides: ['scene/fraction.ts'],
    packages: ['canvas', 'esbuild', 'fluent-ffmpeg', 'pptxgenjs', 'zod'],
    node: true,
  },
  draft: {
    values: ['grid', 'proof', 'techniques', 'plan', 'scene', 'check', 'timeline'],
    types: [],
    packages: ['zod'],
    node: false,
  },
  retime: { values: ['grid', 'scene', 'timeline', 'check'], types: [], packages: [], node: false },
  beside: { values: ['grid', 'scene', 'timeline', 'marks'], types: ['check'], packages: [], node: false },
  verbs: {
    values: ['grid', 'scene', 'slides', 'puzzles'],
    types: ['output'],
    // What `--codec` can name, without loading a codec.
    besides: ['output/codecs/named-codecs.ts'],
    packages: [],
    node: false,
  },
  report: {
    values: ['grid', 'scene'],
    types: ['proof', 'check', 'plan'],
    packages: ['picocolors', 'zod'],
    node: false,
  },
};

/**
 * Which folder of src/output may import what of the others; each imports only what stands above it. The files at the top
 * are for those outside, and no folder imports them.
 */
const outputFolders = {
  machine: [],
  painters: [],
  containers: [],
  ffmpeg: ['machine'],
  pixels: ['painters'],
  codecs: ['machine', 'containers', 'ffmpeg', 'pixels'],
  tracks: ['machine', 'containers', 'ffmpeg', 'codecs'],
  segments: ['machine', 'painters', 'containers', 'ffmpeg', 'pixels', 'codecs', 'tracks'],
  frames: ['machine', 'painters', 'segments'],
  parts: ['machine', 'painters', 'containers', 'ffmpeg', 'codecs', 'tracks', 'segments', 'frames'],
  footage: ['machine', 'painters', 'containers', 'ffmpeg', 'pixels', 'codecs', 'tracks'],
  flashes: ['painters', 'pixels'],
  recordings: ['machine', 'ffmpeg'],
  slides: ['machine', 'pixels'],
};

const all = Object.keys(folders);
const oneOf = (names) => `(${names.join('|')})`;

const forbidden = [
  {
    name: 'no-circle',
    comment: 'No import cycles, except through types.',
    severity: 'error',
    from: {},
    to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
  },
  {
    name: 'cli-is-the-end',
    comment: 'cli.ts runs when it is imported.',
    severity: 'error',
    from: {},
    to: { path: '^src/cli\\.ts$' },
  },
  {
    name: 'commands-for-the-command-line',
    comment: 'The verbs combine the stages; no stage knows them.',
    severity: 'error',
    from: { path: '^src/', pathNot: '^src/(commands/|cli\\.ts$|demo\\.ts$)' },
    to: { path: '^src/commands/' },
  },
  { name: 'found', comment: 'What is imported exists.', severity: 'error', from: {}, to: { couldNotResolve: true } },
  {
    name: 'ffmpeg-in-one-file',
    comment: 'fluent-ffmpeg is no longer developed, so only one file uses it.',
    severity: 'error',
    from: { pathNot: '^src/output/ffmpeg/ffmpeg\\.ts$' },
    to: { path: 'node_modules/(@types/)?fluent-ffmpeg/' },
  },
  {
    name: 'no-tests-in-the-program',
    comment: 'The program does not need its tests.',
    severity: 'error',
    from: { path: '^src/' },
    to: { path: '^tests/' },
  },
  {
    name: 'no-tools-in-the-program',
    comment: 'A package that runs with the program is listed in `dependencies`.',
    severity: 'error',
    from: { path: '^src/', pathNot: '^src/setup/' },
    to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], pathNot: 'node_modules/@types/' },
  },
  ...all.flatMap(rulesFor),
  ...Object.entries(outputFolders).map(([folder, below]) => ({
    name: `output-${folder}-imports`,
    comment: `src/output/${folder} imports ${below.length === 0 ? 'no other folder' : `only ${below.join(', ')}`} of src/output.`,
    severity: 'error',
    from: { path: `^src/output/${folder}/` },
    to: { path: '^src/output/', pathNot: `^src/output/${oneOf([folder, ...below])}/` },
  })),
  {
    name: 'output-folders',
    comment: 'Each folder of src/output has its line in the table.',
    severity: 'error',
    from: { path: '^src/output/[^/]+/', pathNot: `^src/output/${oneOf(Object.keys(outputFolders))}/` },
    to: {},
  },
];

function rulesFor(folder) {
  const { values, types, besides = [], packages, node } = folders[folder];
  const from = { path: `^src/${folder}/` };
  const rules = [
    {
      name: `${folder}-imports`,
      comment: `src/${folder} imports ${values.length === 0 ? 'nothing of ours' : values.join(', ')}${types.length === 0 ? '' : ` (and types of ${types.join(', ')})`}.`,
      severity: 'error',
      from,
      to: { path: '^src/', pathNot: `^src/${oneOf([folder, ...values, ...types])}/` },
    },
    {
      name: `${folder}-packages`,
      comment: `src/${folder} uses ${packages.length === 0 ? 'no package' : packages.join(', ')}.`,
      severity: 'error',
      from,
      to: {
        path: 'node_modules/',
        pathNot: packages.length === 0 ? [] : [`node_modules/(@types/)?${oneOf(packages)}/`],
        dependencyTypesNot: ['core'],
      },
    },
  ];
  if (types.length > 0) {
    rules.push({
      name: `${folder}-types-only`,
      comment: `src/${folder} uses only the types of ${types.join(', ')}.`,
      severity: 'error',
      from,
      to: {
        path: `^src/${oneOf(types)}/`,
        pathNot: besides.map((file) => `^src/${file}$`),
        dependencyTypesNot: ['type-only'],
      },
    });
  }
  if (!node) {
    rules.push({
      name: `${folder}-without-node`,
      comment: `src/${folder} knows neither files nor processes nor the terminal.`,
      severity: 'error',
      from,
      to: { dependencyTypes: ['core'] },
    });
  }
  return rules;
}

module.exports = {
  forbidden,
  options: {
    doNotFollow: { path: 'node_modules' },
    // `specify` distinguishes type-only imports from the others.
    tsPreCompilationDeps: 'specify',
    tsConfig: { fileName: 'tsconfig.json' },
    moduleSystems: ['es6', 'cjs'],
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
