/**
 * The codes of all faults that the times of a scene can have, with what each means. A code never changes its meaning.
 * Labels that do not exist have the codes of the scene's reader: `drop-frame`, `dropped-label`, `out-of-range`.
 */
export const timelineCodes = {
  'time-goes-back': 'a step, a beat, an item, an end or a place of the board lies before what it follows',
  'time-past-end': 'a time lies after the last frame of the video',
  'time-before-start': 'a timecode lies before what the first frame is called',
  'time-past-step': 'a beat or an item lies after the end of its step',
  'no-narration': 'a time names a cue or words, and the scene has no narration',
  'cue-not-found': 'the narration has no cue of this name or number',
  'phrase-not-found': 'the words are not spoken where they are looked for',
  'phrase-twice': 'the words are spoken again within the same step; the first place is taken (a warning)',
  'say-not-found': 'what the step says is not spoken in the narration, so it begins after the step before (a warning)',
  'said-otherwise': 'what the step says is spoken with a few words changed, and the step begins there (a warning)',
  'hold-too-long': 'a question holds the beats after it beyond the end of its step',
  'held-back': 'a beat has a time while a question still holds it, and comes later (a warning)',
  'never-seen': 'a step, a beat or an item begins on the very frame on which its step ends (a warning)',
  'mixed-timecode': 'a drop-frame label where the first frame is called by a plain one, or the reverse (a warning)',
  flashes: 'the picture flashes more than three times in a second (WCAG 2.2, 2.3.1; a warning)',
  'no-length': 'the video would have no frame',
} as const;

export type TimelineCode = keyof typeof timelineCodes;
