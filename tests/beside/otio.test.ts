import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { printTimeline, type TimelineOptions } from '../../src/beside/otio.ts';
import { framesOfLabel } from '../../src/scene/timecode.ts';
import { timecodeOf } from '../../src/scene/timecode-label.ts';
import { chaptersOf } from '../../src/timeline/chapters.ts';
import { lessonOf } from './lessons.ts';

// The parts of the format in use, written from its specification (OpenTimelineIO, "File format specification"; from
// memory), so that a name that is misspelt, or a time that is none, is found.
const metadata = z.record(z.string(), z.unknown());
const time = z.strictObject({ OTIO_SCHEMA: z.literal('RationalTime.1'), rate: z.number().positive(), value: z.int() });
const range = z.strictObject({ OTIO_SCHEMA: z.literal('TimeRange.1'), start_time: time, duration: time });
const marker = z.strictObject({
  OTIO_SCHEMA: z.literal('Marker.2'),
  metadata,
  name: z.string(),
  color: z.enum(['PINK', 'RED', 'ORANGE', 'YELLOW', 'GREEN', 'CYAN', 'BLUE', 'PURPLE', 'MAGENTA', 'BLACK', 'WHITE']),
  marked_range: range,
  comment: z.string(),
});
const item = {
  metadata,
  name: z.string(),
  effects: z.array(z.never()),
  markers: z.array(marker),
  enabled: z.boolean(),
};
const reference = z.strictObject({
  OTIO_SCHEMA: z.literal('ExternalReference.1'),
  metadata,
  name: z.string(),
  available_range: range.nullable(),
  available_image_bounds: z.null(),
  target_url: z.string().min(1),
});
const clip = z.strictObject({
  OTIO_SCHEMA: z.literal('Clip.2'),
  ...item,
  source_range: range,
  media_references: z.strictObject({ DEFAULT_MEDIA: reference }),
  active_media_reference_key: z.literal('DEFAULT_MEDIA'),
});
const track = z.strictObject({
  OTIO_SCHEMA: z.literal('Track.1'),
  ...item,
  source_range: z.null(),
  children: z.array(clip),
  kind: z.enum(['Video', 'Audio']),
});
const stack = z.strictObject({
  OTIO_SCHEMA: z.literal('Stack.1'),
  ...item,
  source_range: z.null(),
  children: z.array(track),
});
const timeline = z.strictObject({
  OTIO_SCHEMA: z.literal('Timeline.1'),
  metadata,
  name: z.string(),
  global_start_time: time,
  tracks: stack,
});

function printed(name: string, options: Partial<TimelineOptions> = {}): string {
  const { checked, schedule, scene } = lessonOf(name);
  return printTimeline(checked, schedule, {
    name: 'A lesson',
    firstFrame: 0,
    chapters: chaptersOf(scene, schedule),
    media: { video: 'marks.mov', footage: { url: 'take.mp4', from: 12 }, audio: 'a.flac' },
    ...options,
  });
}

describe('the lesson as a timeline', () => {
  it.each(['lamp-room.yaml', 'mistaken.yaml', 'two-towers.yaml'])('%s has the shape of the format', (name) => {
    const read = timeline.parse(JSON.parse(printed(name)));
    const { schedule } = lessonOf(name);
    const rate = Number(schedule.rate.numerator) / Number(schedule.rate.denominator);
    for (const { source_range: source } of read.tracks.children.flatMap(({ children }) => children)) {
      expect(source.duration).toEqual({ OTIO_SCHEMA: 'RationalTime.1', rate, value: schedule.frameCount });
    }
    expect(read.tracks.children.map(({ kind, name: own }) => `${kind} ${own}`)).toEqual([
      'Video Footage',
      'Video Marks',
      'Audio Sound',
    ]);
  });

  it('a marker a step, exactly on its frames, with name, verdict and argument; a chapter each on the whole', () => {
    const { schedule, checked } = lessonOf('lamp-room.yaml');
    const read = timeline.parse(JSON.parse(printed('lamp-room.yaml')));
    const { markers } = read.tracks.children[1]!.children[0]!;
    expect(
      markers.map(({ marked_range: each }) => [each.start_time.value, each.start_time.value + each.duration.value]),
    ).toEqual(schedule.steps.map(({ from, until }) => [from, until]));
    expect(markers.map(({ metadata: own }) => own.proofreel)).toMatchObject(
      checked.steps.map(({ step, verdict, name }) => ({ step: step.id, verdict, argument: name?.given ?? null })),
    );
    expect(markers[1]).toMatchObject({ name: 'Sixes in the middle box', color: 'GREEN' });
    expect(markers[3]!.metadata.proofreel).toMatchObject({ argument: 'two-string kite', conclusions: ['r4c4<>5'] });
    expect(read.tracks.markers.map(({ name }) => name)).toEqual([
      'The easy part',
      'Sixes and fives',
      'Four cells, four digits',
      'Chains',
      'The light comes on',
    ]);
  });

  it('a step that is not sound is red, and says why', () => {
    const read = timeline.parse(JSON.parse(printed('mistaken.yaml')));
    const { markers } = read.tracks.children[1]!.children[0]!;
    const red = markers.filter(({ color }) => color === 'RED');
    expect(red.map(({ metadata: own }) => own.proofreel)).toMatchObject([
      { step: 'kite', sound: false, message: expect.stringMatching(/not a strong link/) },
      { step: 'corner', sound: false },
    ]);
  });

  it('counts from what the first frame is called', () => {
    const hour = framesOfLabel(timecodeOf('01:00:00;00')!, lessonOf('lamp-room.yaml').schedule.rate);
    const firstFrame = hour.ok ? hour.frames : 0;
    const read = timeline.parse(JSON.parse(printed('lamp-room.yaml', { firstFrame })));
    expect(read.global_start_time.value).toBe(107_892); // SMPTE ST 12-1: an hour of drop-frame labels
    expect(read.tracks.children[1]!.children[0]!.markers[0]!.marked_range.start_time.value).toBe(107_892 + 30);
  });

  it('times are written with a point, and words that look like one are left alone', () => {
    const text = printed('two-towers.yaml', { name: 'a "value": 12\n' });
    expect(text).toMatch(/"value": 0\.0\n/);
    expect(text).not.toMatch(/"(value|rate)": \d+[,\n]/);
    expect(JSON.parse(text)).toMatchObject({ name: 'a "value": 12\n' });
  });
});
