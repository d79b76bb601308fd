/**
 * The lesson as a timeline for an editing program: OpenTimelineIO's JSON (Academy Software Foundation, the open format
 * that editing programs exchange), with the drawn video as a clip, a marker on it for each step, and the chapters as
 * markers of the whole. Schemas and fields follow its file format specification; from memory.
 *
 * A time is a whole number of frames at the scene's rate: exact. The rate itself is a floating-point number in this
 * format; the exact fraction is kept next to it as metadata.
 */
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { compactly } from '../grid/notation/compact.ts';
import { toNumber } from '../scene/fraction.ts';
import type { Chapter } from '../timeline/chapters.ts';
import type { Schedule } from '../timeline/schedule.ts';

/** Files that a timeline points to, as URLs relative to its own location. */
export interface TimelineMedia {
  /** The video that was, or will be, rendered from the scene. */
  readonly video: string;
  /** `from`: the frame of the footage that coincides with the video's first. */
  readonly footage: { readonly url: string; readonly from: number } | undefined;
  readonly audio: string | undefined;
}

export interface TimelineOptions {
  readonly name: string;
  /** The label of the video's first frame, in frames from the label 00:00:00:00. */
  readonly firstFrame: number;
  readonly chapters: readonly Chapter[];
  readonly media: TimelineMedia;
}

type Json = { readonly [key: string]: unknown };

/** The file's text. */
export function printTimeline(checked: CheckedScene, schedule: Schedule, options: TimelineOptions): string {
  const timeline = timelineOf(checked, schedule, options);
  // Its reader takes a number without a decimal point for an integer, and these are not integers.
  return `${JSON.stringify(timeline, undefined, 2).replace(/"(value|rate)": (-?\d+)(?=[,\s])/g, '"$1": $2.0')}\n`;
}

function timelineOf(checked: CheckedScene, schedule: Schedule, options: TimelineOptions): Json {
  const { name, firstFrame, chapters, media } = options;
  const time = timesAt(schedule);
  const { frameCount } = schedule;
  const markers = checked.steps.flatMap((step, index) => stepMarkers(step, schedule.steps[index], firstFrame, time));
  const video = {
    ...item('Clip.2', `${name}: marks`),
    source_range: time.range(firstFrame, frameCount),
    markers,
    ...reference(media.video, time.range(firstFrame, frameCount)),
  };
  const footage =
    media.footage === undefined
      ? []
      : [
          track('Video', 'Footage', {
            ...item('Clip.2', 'Footage'),
            source_range: time.range(media.footage.from, frameCount),
            ...reference(media.footage.url, null),
          }),
        ];
  const audio =
    media.audio === undefined
      ? []
      : [
          track('Audio', 'Sound', {
            ...item('Clip.2', 'Sound'),
            source_range: time.range(0, frameCount),
            ...reference(media.audio, null),
          }),
        ];
  const { rate } = schedule;
  return {
    OTIO_SCHEMA: 'Timeline.1',
    metadata: {
      proofreel: {
        rate: `${rate.numerator}/${rate.denominator}`,
        sound: checked.sound,
        toMend: checked.summary.toFix,
      },
    },
    name,
    global_start_time: time.at(firstFrame),
    tracks: {
      ...item('Stack.1', 'tracks'),
      markers: chapters.map(({ name: chapter, from, until }) => ({
        ...marker(chapter, 'BLUE', time.range(from, until - from)),
        metadata: { proofreel: { chapter } },
      })),
      children: [...footage, track('Video', 'Marks', video), ...audio],
    },
  };
}

interface Times {
  at(frame: number): Json;
  range(from: number, count: number): Json;
}

function timesAt({ rate }: Schedule): Times {
  const at = (value: number): Json => ({ OTIO_SCHEMA: 'RationalTime.1', rate: toNumber(rate), value });
  return {
    at,
    range: (from, count) => ({ OTIO_SCHEMA: 'TimeRange.1', duration: at(count), start_time: at(from) }),
  };
}

/** One, or none for a step without a frame; its place is counted as the clip's own frames are. */
function stepMarkers(
  { step, verdict, sound, name, conclusions, assumesOneSolution, message }: CheckedStep,
  times: Schedule['steps'][number] | undefined,
  firstFrame: number,
  time: Times,
): Json[] {
  if (times === undefined || times.until <= times.from) return [];
  const own = {
    step: step.id,
    verdict,
    sound,
    argument: name?.given ?? null,
    called: step.called ?? null,
    conclusions: compactly(conclusions.filter((each) => each.verdict === 'proved').map(({ text }) => text)),
    assumesOneSolution,
    message,
  };
  const title = step.title ?? step.id;
  const range = time.range(firstFrame + times.from, times.until - times.from);
  return [
    {
      ...marker(title.replace(/\s+/g, ' ').trim(), sound ? 'GREEN' : 'RED', range),
      metadata: { proofreel: own },
      comment: (step.say?.value ?? '').replace(/\s+/g, ' ').trim(),
    },
  ];
}

function marker(name: string, color: string, range: Json): Json {
  return { OTIO_SCHEMA: 'Marker.2', metadata: {}, name, color, marked_range: range, comment: '' };
}

function track(kind: 'Video' | 'Audio', name: string, clip: Json): Json {
  return { ...item('Track.1', name), children: [clip], kind };
}

function reference(url: string, range: Json | null): Json {
  return {
    media_references: {
      DEFAULT_MEDIA: {
        OTIO_SCHEMA: 'ExternalReference.1',
        metadata: {},
        name: '',
        available_range: range,
        available_image_bounds: null,
        target_url: url,
      },
    },
    active_media_reference_key: 'DEFAULT_MEDIA',
  };
}

/** What every part of a timeline has. */
function item(schema: string, name: string): Json {
  return { OTIO_SCHEMA: schema, metadata: {}, name, source_range: null, effects: [], markers: [], enabled: true };
}
