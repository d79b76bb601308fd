/**
 * The codes of all faults that a scene or a look can have, each with its meaning. A code never changes its meaning, and
 * one that is not listed here does not compile; `npm run generate` writes all of them into LANGUAGE.md.
 */

/** What can be found while a file is read. */
export const readingCodes = {
  // The file as YAML
  'empty-file': 'the file contains only white space and comments',
  'several-documents': 'a line of three dashes begins a second document; a scene is a single one',
  'yaml-syntax': 'the text is not YAML at this place',
  indentation: 'the line is indented to a depth that no other line has',
  'tab-indent': 'a tab where YAML requires spaces',
  'cut-short': 'a ` #` begins a comment in the middle of a sentence, and YAML drops the rest',
  'colon-in-text': 'a `: ` inside a plain text makes YAML take it for a key',
  'comma-in-text': 'a comma inside a plain text between braces ends it for YAML',
  'duplicate-key': 'a key appears twice in one map',
  'control-sign': 'a character in a text that nothing can show: a control character, half of a pair',
  alias: 'an alias of YAML that names nothing, or stands for more than a text',
  tag: 'a tag of YAML, which the language does not use',
  // Keys and kinds of values
  'unknown-key': 'the language has no such key here',
  'missing-key': 'a required key is missing',
  'no-value': 'a key without a value, or a list without items',
  'wrong-kind': 'a text, a list or a map where another kind is expected',
  'unknown-word': 'a word that is not one of those that the key takes',
  'no-mark': 'a beat, or a place of the board, without the key that says what it is',
  'several-marks': 'one beat with two marks',
  version: 'a version of the language that is not known',
  // Values
  notation: 'cells, candidates, sets, conclusions or a chain that cannot be read',
  'not-a-time': 'no time of section 6 is written like this',
  'time-form': 'a time of a form that this key does not take',
  'drop-frame': 'a drop-frame timecode at a rate that drops no labels',
  'dropped-label': 'a drop-frame label that is skipped in counting',
  'not-a-number': 'a text where a number is expected',
  'out-of-range': 'a number, or a count, outside its range',
  'not-a-rate': 'not a frame rate, or one that is not exact',
  'not-a-size': 'not a frame size, or one that video cannot have',
  'bad-corners': 'four corners that do not form a board seen from the front',
  'bad-name': 'an id, or the name of a group or a typeface, with characters that it cannot have',
  'not-a-colour': 'not a colour of the form #rrggbb',
  // The puzzle
  'boxes-and-regions': '`boxes` and `regions` are both given, though one replaces the other',
  'regions-sign': 'a character in the drawing of regions that is not a letter',
  'regions-count': 'the drawing of regions has a number of cells that no board has',
  'regions-uneven': 'the regions drawn do not all have as many cells as the board has rows',
  'givens-sign': 'a character among the givens that is neither a digit of the grid nor a blank',
  'givens-count': 'too few or too many cells among the givens',
  'givens-clash': 'the same digit twice in a house among the givens',
  'no-solution': 'the givens allow no solution',
  'several-solutions': 'the givens allow more than one solution (a warning)',
  'against-solution': 'what is taken as read at the start disagrees with a solution',
  'wrong-conclusion': 'a removal where placements are expected, or a placement where removals are',
  // Names and references
  'unknown-name': 'no argument of this name is known',
  'duplicate-id': 'two steps with the same id',
  'unknown-step': 'no step has this id',
  'later-step': 'a step that does not come before this one',
  'no-either': 'the step named proves no either/or and no placement to draw from',
  'unknown-group': 'the scene has no such group',
  'same-colour': 'two groups of the same colour (a warning)',
  // What a step claims, and what it shows
  'no-claim': 'a mark, or a key, that needs a claim, in a step that claims nothing',
  'no-conclusion': 'sets are named and nothing is concluded from them (a warning)',
  'no-chain': 'links are to be drawn and the step has no chain',
  'no-such-link': 'the chain has no link of this number',
  'not-concluded': 'what is to be struck or placed is not among the conclusions',
  disagrees: 'what follows => is not what `so` says',
  'so-missing': 'a chain concludes after => and the step has no `so`',
  'said-twice': 'a conclusion that appears twice in `so` (a warning)',
  'so-all': '`so: all` next to other conclusions, or where it is not possible',
} as const;

/** What can be found in the position that a step meets. */
export const positionCodes = {
  'sight-without-digit': 'a sight line from a cell that does not hold the digit by then',
  'circle-on-nothing': 'a circle around a candidate that is no longer possible (a warning)',
  'sides-of-nothing': '`sides` of a candidate that no set of two members of the argument holds',
  'suppose-nothing': '`suppose` of a candidate that is no longer possible, or of something that is not a set',
  'suppose-not-forced': '`suppose` where forcing alone does not reach an end, or where there is no argument',
  'not-locked':
    'a strong link within cells that are not an almost locked set, and that holds for another reason (a warning)',
  'idle-cell': 'a cell of a chain that no longer has the digit (a warning)',
  spent: 'a conclusion that says nothing new (a warning)',
  stale: '`pencil` or `only` lists what is already impossible (a warning)',
  'nothing-proved': '`so: all` where the argument proves no removal (a warning)',
  'says-unproved': 'notation in the words of a step that is not proved by then (a warning)',
  'name-loosely': 'the name given fits the argument only in a wide sense (a warning)',
} as const;

/** What can be wrong with a step as a whole, apart from the verdicts of its conclusions and links. Such a step is stamped. */
export const stepCodes = {
  'weak-after-weak': 'two weak links in a row in a chain',
  'deadly-refused': 'a deadly pattern that cannot be drawn on',
  'no-argument': '`so: all` without an argument, or under a name whose argument removes nothing',
  'either-unproved': 'the step named after `from` has not proved its either/or',
  'says-false': 'notation in the words of a step (title, sentence, note, label) that is false',
  'false-step-holds': 'a false step whose argument does prove a conclusion',
  'false-step-given': 'a false step with a conclusion that already follows from the givens',
  'false-step-redundant': 'a false step with a conclusion that is already known',
  'false-step-bare': 'a false step with a conclusion that no argument is named for and no solution contradicts',
  'false-step-undecided': 'a false step with a conclusion that is too large to decide',
} as const;
export type StepCode = keyof typeof stepCodes;

/** Faults of files that the scene names. */
export const fileCodes = {
  'file-not-found': 'a file named in the scene does not exist',
  'media-not-read': 'sound or footage that cannot be read',
  'broken-cue': 'a cue of the narration that cannot be read (a warning)',
} as const;

/** What can be found when times become frames. Labels that do not exist have the codes of reading. */
export const timeCodes = {
  'time-goes-back': 'a step, a beat, an item, an end or a place of the board is before what it follows',
  'time-past-end': 'a time is after the last frame of the video',
  'time-before-start': 'a timecode is before the label of the first frame',
  'time-past-step': 'a beat or an item is after the end of its step',
  'no-narration': 'a time names a cue or words, and the scene has no narration',
  'cue-not-found': 'the narration has no cue of this name or number',
  'phrase-not-found': 'the words are not spoken where they are searched for',
  'phrase-twice': 'the words are spoken again within the same step; the first place is used (a warning)',
  'say-not-found':
    'what the step says is not spoken in the narration, so it begins after the previous step (a warning)',
  'said-otherwise': 'what the step says is spoken with a few words changed, and the step begins there (a warning)',
  'hold-too-long': 'a question holds the beats after it beyond the end of its step',
  'held-back': 'a beat has a time while a question still holds it, and comes later (a warning)',
  'never-seen': 'a step, a beat or an item begins on the same frame on which its step ends (a warning)',
  'mixed-timecode': 'a drop-frame label where the first frame has a plain one, or the reverse (a warning)',
  flashes: 'the picture flashes more than three times in a second (WCAG 2.2, 2.3.1; a warning)',
  'no-length': 'the video would have no frame',
} as const;

/** What can be found when what is spoken is compared with what is shown. */
export const voiceCodes = {
  'spoken-cell': 'another cell is spoken than its step shows (a warning)',
  'spoken-digit': 'another digit is spoken than its step places or removes (a warning)',
  'spoken-house': 'another row, column or box is spoken than its step is about (a warning)',
  'spoken-name': 'a name is spoken that does not fit the argument of its step (a warning)',
} as const;

export const codes = { ...readingCodes, ...positionCodes, ...stepCodes, ...fileCodes, ...timeCodes, ...voiceCodes };
export type Code = keyof typeof codes;
