/**
 * The table of verbs and their options: the one place from which the command line, its help and the README's table come.
 */

export interface VerbOption {
  /** As commander writes it: `-o, --out <file>`. */
  readonly flags: string;
  readonly does: string;
}

export interface Verb {
  readonly name:
    | 'check'
    | 'render'
    | 'join'
    | 'still'
    | 'captions'
    | 'chapters'
    | 'retime'
    | 'slides'
    | 'plan'
    | 'ways'
    | 'puzzle'
    | 'draft'
    | 'schema';
  /** How it is called, without the program's name. */
  readonly call: string;
  /** One sentence, without a full stop. */
  readonly does: string;
  readonly options: readonly VerbOption[];
  readonly examples: readonly string[];
}

const out = (does: string): VerbOption => ({ flags: '-o, --out <file>', does });
const look: VerbOption = { flags: '--look <file>', does: "use this look instead of the scene's own" };

const version: VerbOption = { flags: '--as <version>', does: "draw on the frame of one of the scene's `versions`" };

/** What an audience knows, and what it costs to teach the rest. */
const audience: readonly VerbOption[] = [
  {
    flags: '--know <names>',
    does: 'use what the audience knows and nothing else: names or families, or upto:NAME in the order of the table of costs',
  },
  { flags: '--without <names>', does: 'leave out these names or families, such as uniqueness' },
  { flags: '--costs <file>', does: 'a table of teaching costs in place of assets/teaching-costs.yaml' },
  { flags: '--seconds <number>', does: 'how long to look at most; 10 by default' },
];

export const verbs: readonly Verb[] = [
  {
    name: 'check',
    call: 'check SCENE [--json]',
    does: 'proves every step, or says exactly why it fails',
    options: [
      { flags: '--json', does: 'print the report as JSON (its schema: `proofreel schema --report`)' },
      { flags: '--mend <file>', does: 'write the scene with its unsound steps mended, each mend marked by a comment' },
      { flags: '--spell-out <file>', does: 'write the scene with the list that each `so: all` stands for' },
      { flags: '--cnf <folder>', does: 'write a DIMACS CNF file for each conclusion, for any SAT solver to check' },
    ],
    examples: ['proofreel check scenes/lamp-room.yaml', 'proofreel check scenes/lamp-room.yaml --json > report.json'],
  },
  {
    name: 'render',
    call: 'render SCENE... -o OUT',
    does: 'draws the video: OUT.mp4, OUT.mov, OUT.webm, or a folder of PNG frames; refuses an unsound scene',
    options: [
      out('the video (.mp4, .mov, .webm) or a folder for PNG frames; of several videos the folder'),
      {
        flags: '--steps <ids>',
        does: 'only these steps: one (corner), from one to another (towers..corner), or from one on (towers..)',
      },
      { flags: '--scale <part>', does: 'on a smaller frame, for a quick look: 1/4, 1/2' },
      { flags: '--by <what>', does: 'with `step`: one video for each step, named by its id, in the folder OUT' },
      {
        flags: '--handles <time>',
        does: 'with --by step: so much more of the film before and after each step, such as 1s',
      },
      {
        flags: '--format <name>',
        does: 'of several videos: mp4, mov, webm or png; without it mp4, or mov for what stays transparent',
      },
      look,
      version,
      {
        flags: '--stamp',
        does: 'draw an unsound scene all the same, with a stamp on every frame of a step that is not proved',
      },
      {
        flags: '--key <colour>',
        does: "for an .mp4 of `draw: overlay` without footage: the colour behind the marks, such as '#00b140'",
      },
      {
        flags: '--matte',
        does: 'two opaque videos, OUT-fill and OUT-matte: the colours, and the transparency as grey',
      },
      { flags: '--lossless', does: 'for .mov: Animation (qtrle) instead of ProRes 4444' },
      { flags: '--png', does: 'for .mov: PNG pictures instead of ProRes 4444, without loss too' },
      {
        flags: '--compatible',
        does: "for .mp4: what stands still in the encoder's own pictures, for a player that shows it wrong; slower, larger",
      },
      {
        flags: '--holds',
        does: 'for a folder of PNG frames: each picture once, and a list of when it is seen (holds.json)',
      },
      {
        flags: '--part <k/n>',
        does: 'this share alone of the video or the PNG frames, OUT-k-of-n.part, for `join`: one machine makes 1/8, another 2/8',
      },
      { flags: '--no-cache', does: 'draw all anew: neither use nor keep what is the same from one render to the next' },
      { flags: '--quiet', does: 'no progress' },
    ],
    examples: [
      'proofreel render scenes/lamp-room.yaml -o lamp-room.mp4',
      'proofreel render lesson.yaml -o look.mp4 --steps towers..corner --scale 1/4',
      'proofreel render lesson.yaml -o clips/ --by step --handles 1s --format mov',
      'proofreel render one.yaml two.yaml -o videos/',
      'proofreel render marks.yaml -o marks.mov',
      'proofreel render lesson.yaml --as upright -o upright.mp4',
    ],
  },
  {
    name: 'join',
    call: 'join PART... -o OUT',
    does: 'makes the video or the PNG frames of parts that `render --part` has made on several machines, without encoding anything again',
    options: [out('the video, or the folder, of the kind that the parts were rendered for')],
    examples: ['proofreel join lesson-*-of-8.part -o lesson.mp4'],
  },
  {
    name: 'still',
    call: 'still SCENE --step ID -o OUT.png',
    does: 'draws one frame: the last of a step on which all its marks stand, or the one at a time',
    options: [
      out('the picture, a .png'),
      { flags: '--step <id>', does: 'the step to show' },
      { flags: '--at <time>', does: 'the time to show: 12.5, 1:02.5, 01:00:02:12' },
      { flags: '--stamp', does: 'draw a step that is not proved all the same, stamped' },
      { flags: '--thumbnail', does: "compose a thumbnail, 1280x720: the step's picture beside a large title" },
      { flags: '--title <text>', does: "the thumbnail's title in place of the step's own" },
      look,
      version,
    ],
    examples: [
      'proofreel still scenes/lamp-room.yaml --step kite -o kite.png',
      'proofreel still scenes/lamp-room.yaml --at 1:02 -o frame.png',
      'proofreel still scenes/lamp-room.yaml --step tail --thumbnail -o thumbnail.png',
    ],
  },
  {
    name: 'captions',
    call: 'captions SCENE [-o OUT.vtt|.srt]',
    does: 'writes what is said as captions, from the narration or from what the steps say',
    options: [
      out('the captions, a .vtt (WebVTT) or .srt; without it WebVTT on standard output'),
      {
        flags: '--describe',
        does: 'write what is shown too, for viewers who cannot see: OUT.descriptions.vtt beside the captions',
      },
    ],
    examples: [
      'proofreel captions scenes/lamp-room.yaml -o lamp-room.captions.vtt',
      'proofreel captions lesson.yaml --describe -o lesson.srt',
    ],
  },
  {
    name: 'slides',
    call: 'slides SCENE -o OUT',
    does: 'writes the steps as slides or handouts: OUT.pdf, OUT.pptx, OUT.html, or a folder of PNG pictures',
    options: [
      out('the slides (.pdf, .pptx, .html) or a folder for PNG pictures'),
      { flags: '--builds', does: 'one slide a beat instead of one a step' },
      { flags: '--size <name>', does: '16:9 (the default), 4:3, A4 or Letter' },
      { flags: '--handout <number>', does: 'sheets of paper with 2, 4 or 6 steps each, and ruled room to write' },
      { flags: '--exercise', does: 'hide what follows, ask for it, and put it on answer pages at the end' },
      { flags: '--stamp', does: 'draw an unsound scene all the same, each step that is not proved stamped' },
      look,
      {
        flags: '--lang <tag>',
        does: "the language of the scene's words, for screen readers: en (the default), de, ...",
      },
      { flags: '--quiet', does: 'no progress' },
    ],
    examples: [
      'proofreel slides scenes/lamp-room.yaml -o lamp-room.html',
      'proofreel slides lesson.yaml -o sheets.pdf --handout 4 --exercise --size Letter',
    ],
  },
  {
    name: 'chapters',
    call: 'chapters SCENE [-o OUT.otio]',
    does: 'prints the list of chapters that video sites read, or writes the lesson as a timeline with a marker a step',
    options: [
      out('the list (.txt), or an OpenTimelineIO timeline (.otio); without it the list on standard output'),
      { flags: '--video <file>', does: 'for .otio: the rendered video that is its clip, without it OUT.mov' },
    ],
    examples: [
      'proofreel chapters scenes/lamp-room.yaml',
      'proofreel chapters lesson.yaml -o lesson.otio --video marks.mov',
    ],
  },
  {
    name: 'retime',
    call: 'retime SCENE --before OLD.vtt --after NEW.vtt -o NEW.yaml',
    does: 'moves the times of a scene after its narration was spoken again, and leaves the rest of its text as it is',
    options: [
      out('the new scene; without it on standard output'),
      { flags: '--before <file>', does: 'the narration by which the scene was timed (.vtt, .srt or .json)' },
      { flags: '--after <file>', does: 'the narration as it was spoken again' },
      { flags: '--offset <time>', does: 'without narrations: move every time by so much, 1.5 or -0:02' },
      {
        flags: '--stretch <factor>',
        does: 'without narrations: multiply every time, before any offset, by 25/24 or 1.04',
      },
    ],
    examples: [
      'proofreel retime lesson.yaml --before take-1.vtt --after take-2.vtt -o lesson-2.yaml',
      'proofreel retime lesson.yaml --offset 1.5 -o later.yaml',
    ],
  },
  {
    name: 'plan',
    call: 'plan PUZZLE',
    does: 'finds the path of least teaching cost from a puzzle to its solution: the fewest and simplest arguments that carry it',
    options: [
      out('draw which argument rests on which as a picture, an .svg'),
      { flags: '--tree', does: 'print the same as text, in place of the steps' },
      { flags: '--json', does: 'print the plan as JSON (its schema: `proofreel schema --plan`)' },
      { flags: '--until <cells>', does: "plan no further than these cells or digits: 'r5c5', 'r5c5=3 r2c7=1'" },
      ...audience,
    ],
    examples: [
      'proofreel plan scenes/lamp-room.yaml',
      'proofreel plan puzzle.txt --know upto:xy-chain --without uniqueness',
      'proofreel plan puzzle.txt --tree -o tree.svg',
    ],
  },
  {
    name: 'ways',
    call: 'ways SCENE --step ID',
    does: 'lists all other named arguments for the conclusions of a step, the simplest first, with what else each proves',
    options: [
      { flags: '--step <id>', does: 'the step of the scene' },
      {
        flags: '--at <position>',
        does: "for a puzzle in place of a scene: what has been done, such as 'r1c1=4 r4c5<>39'; `free` for all that is free",
      },
      { flags: '--so <conclusions>', does: 'what is to be proved; without it all of the step, or whatever can be' },
      { flags: '--json', does: 'print the ways as JSON (its schema: `proofreel schema --ways`)' },
      ...audience,
    ],
    examples: [
      'proofreel ways scenes/lamp-room.yaml --step kite',
      "proofreel ways puzzle.txt --at free --so 'r1c7<>7'",
    ],
  },
  {
    name: 'puzzle',
    call: 'puzzle [--needs NAMES]',
    does: 'makes a new puzzle whose least plan needs just these arguments, the same for the same seed',
    options: [
      out('write a scene to start from (.yaml) instead of the symbols'),
      { flags: '--needs <names>', does: 'the hard arguments, with commas between: skyscraper,xy-chain' },
      {
        flags: '--rest <kind>',
        does: 'what else may be needed: singles (the default), or locked candidates too (locked)',
      },
      { flags: '--symmetry <kind>', does: 'how the givens lie: rotational, diagonal, mirror, none (the default)' },
      { flags: '--size <cells>', does: 'cells across: 4, 6, 8 or 9 (the default)' },
      { flags: '--minimal', does: 'only puzzles of which no given can be left out' },
      { flags: '--seed <number>', does: 'which puzzles come; without it the clock chooses, and says what it chose' },
      { flags: '--count <number>', does: 'how many puzzles, a line each; 1 by default' },
      ...audience.filter(({ flags }) => !flags.startsWith('--seconds')),
      { flags: '--seconds <number>', does: 'give up after this long; 60 by default' },
    ],
    examples: [
      'proofreel puzzle --needs skyscraper --symmetry rotational --seed 7',
      'proofreel puzzle --needs naked-pair,x-wing --rest locked -o lesson.yaml',
      'proofreel puzzle --size 6 --count 10',
    ],
  },
  {
    name: 'draft',
    call: 'draft PUZZLE -o SCENE',
    does: 'writes the least plan of a puzzle as a scene that is ready to edit: arguments, lists, words to say',
    options: [
      out('the scene, a .yaml'),
      { flags: '--language <language>', does: 'the words to say: en (the default), de, or a file of phrases' },
      { flags: '--title <text>', does: "the scene's title" },
      {
        flags: '--narration <file>',
        does: 'what was said already, without a script (.vtt, .srt, .json): steps take their times and words from it',
      },
      { flags: '--until <cells>', does: "draft no further than these cells or digits: 'r5c5', 'r5c5=3 r2c7=1'" },
      ...audience,
    ],
    examples: [
      'proofreel draft puzzle.txt -o lesson.yaml',
      'proofreel draft puzzle.txt --language de -o lektion.yaml',
      'proofreel draft puzzle.txt --narration take.vtt -o lesson.yaml',
      'proofreel draft puzzle.txt --until r5c5 -o clip.yaml',
    ],
  },
  {
    name: 'schema',
    call: 'schema [--report | --look | --costs | --plan | --ways | --phrases]',
    does: 'prints the JSON Schema of the scene language, by which an editor completes and checks a scene',
    options: [
      { flags: '--report', does: 'the schema of the report of `check --json`' },
      { flags: '--look', does: 'the schema of a look' },
      { flags: '--costs', does: 'the schema of a table of teaching costs' },
      { flags: '--plan', does: 'the schema of `plan --json`' },
      { flags: '--ways', does: 'the schema of `ways --json`' },
      { flags: '--phrases', does: 'the schema of a file of phrases, for `draft --language`' },
    ],
    examples: ['proofreel schema > proofreel.schema.json'],
  },
];

/** What the exit status says. */
export const exitStatus = {
  sound: 0,
  unsound: 1,
  unusable: 2,
  machineFailed: 3,
  interrupted: 130,
} as const;
