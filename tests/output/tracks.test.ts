/**
 * Chapters and timecode in the files, read by ffprobe; a film's parts; fill and matte.
 */
import { execFileSync } from 'node:child_process';
import { afterAll, describe, expect, it } from 'vitest';
import { excerpt } from '../../src/output/painters/excerpt.ts';
import { fillPainter, mattePainter } from '../../src/output/painters/matte.ts';
import { type RenderOptions, renderFilm } from '../../src/output/render.ts';
import { type Fraction, fraction, zero } from '../../src/scene/fraction.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { decodeFrames, decodeSound, ffmpeg, frameTimes, probeVideo, scratchFolder } from './outside.ts';
import { squarePainter, walkingSquare } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const opaque = (rate: Fraction, frameCount: number) =>
  squarePainter({ rate, frameCount, ground: [20, 40, 60], squares: walkingSquare(7, [220, 40, 40, 255]) });

const chapters = [
  { name: 'A = b; #1\\', from: frameAt(0), until: frameAt(7) },
  { name: 'Zwölf, "später"', from: frameAt(7), until: frameAt(31) },
  { name: 'The end', from: frameAt(31), until: frameAt(40) },
];

describe('chapters', () => {
  const rates = [fraction(24n), fraction(30000n, 1001n), fraction(60n)];
  it.each(
    rates.flatMap((rate) =>
      ['film.mp4', 'film.mov', 'film.webm'].map((name) => ({
        name,
        rate,
        at: `${rate.numerator}/${rate.denominator}`,
      })),
    ),
  )('$name at $at begin on their frames', async ({ name, rate }) => {
    await renderFilm(opaque(rate, 40), scratch.at(name), { chapters });
    const found = chaptersOf(scratch.at(name));
    expect(found.map(({ title }) => title?.trim())).toEqual(chapters.map((chapter) => chapter.name));
    const times = frameTimes(scratch.at(name));
    found.forEach(({ start }, index) => {
      const frame = chapters[index]!.from;
      // A player that goes to the chapter's time shows the last frame at or before it: the chapter's own.
      expect(times.filter((time) => time <= start + 1e-6).length - 1, `chapter ${index} at ${start}`).toBe(frame);
      expect(start - times[frame]!).toBeLessThan(0.0011);
    });
    expect(probeVideo(scratch.at(name)).nb_read_frames).toBe('40');
  });

  it.each([
    { name: 'av1.mp4', codec: 'av1', tag: 'av01', kind: 'av1' },
    { name: 'av1.webm', codec: 'av1', tag: '[0][0][0][0]', kind: 'av1' },
    { name: 'hevc.mov', codec: 'hevc', tag: 'hvc1', kind: 'hevc' },
  ] as const)('and sound leave $name what it is', async ({ name, codec, tag, kind }) => {
    ffmpeg(['-f', 'lavfi', '-i', 'sine=d=2', scratch.at('tone.wav')]);
    const pictures: string[] = [];
    for (const options of [{}, { chapters, audio: scratch.at('tone.wav') }]) {
      await renderFilm(opaque(fraction(24n), 40), scratch.at(name), { codec, ...options });
      expect(probeVideo(scratch.at(name))).toMatchObject({
        codec_name: kind,
        codec_tag_string: tag,
        nb_read_frames: '40',
      });
      pictures.push(Buffer.from(decodeFrames(scratch.at(name)).pixels).toString('base64'));
    }
    expect(pictures[1] === pictures[0]).toBe(true);
    expect(chaptersOf(scratch.at(name))).toHaveLength(chapters.length);
  });

  it("are the scene's, with a sound and over footage, and not those of the recording", async () => {
    const words = ['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=2', '-f', 'lavfi', '-i', 'sine=d=2'];
    const own = ';FFMETADATA1\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND=900\ntitle=Take 3\n';
    const data = `data:text/plain;base64,${Buffer.from(own).toString('base64')}`;
    ffmpeg([
      ...words,
      '-f',
      'ffmetadata',
      '-i',
      data,
      '-map',
      '0:v',
      '-map',
      '1:a',
      '-map_chapters',
      '2',
      '-pix_fmt',
      'yuv420p',
      scratch.at('take.mp4'),
    ]);
    expect(chaptersOf(scratch.at('take.mp4'))).toHaveLength(1);
    const overlay = squarePainter({ frameCount: 40, squares: walkingSquare(7, [220, 40, 40, 255]) });
    const footage = { file: scratch.at('take.mp4'), start: zero };
    await renderFilm(overlay, scratch.at('over.mp4'), { footage, chapters });
    expect(chaptersOf(scratch.at('over.mp4')).map(({ title }) => title?.trim())).toEqual(
      chapters.map(({ name }) => name),
    );
    for (const [name, painter] of [
      ['none.mp4', overlay],
      ['board.mp4', opaque(fraction(25n), 40)],
    ] as const) {
      await renderFilm(painter, scratch.at(name), { footage });
      expect(chaptersOf(scratch.at(name)), name).toEqual([]);
    }
  });
});

describe('the timecode', () => {
  it.each([
    { rate: fraction(24n), timecode: '01:00:00:00' },
    { rate: fraction(25n), timecode: '09:59:58:24' },
    { rate: fraction(30000n, 1001n), timecode: '01:00:00;02' },
    { rate: fraction(30000n, 1001n), timecode: '01:00:00:02' },
    { rate: fraction(50n), timecode: '00:00:10:49' },
    { rate: fraction(60000n, 1001n), timecode: '10:00:00;04' },
  ])('of the first frame stands in a .mov: $timecode', async ({ rate, timecode }) => {
    await renderFilm(opaque(rate, 5), scratch.at('coded.mov'), { timecode });
    expect(tracksOf(scratch.at('coded.mov'))).toContainEqual({
      codec_tag_string: 'tmcd',
      tags: expect.objectContaining({ timecode }),
    });
    expect(frameTimes(scratch.at('coded.mov'))[0]).toBe(0);
    expect(probeVideo(scratch.at('coded.mov')).nb_read_frames).toBe('5');
  });

  it('stands beside PNG pictures too, and chapters with it', async () => {
    const options = { timecode: '01:00:00:00', chapters, png: true };
    await renderFilm(opaque(fraction(25n), 40), scratch.at('png.mov'), options);
    expect(tracksOf(scratch.at('png.mov')).map(({ codec_tag_string }) => codec_tag_string)).toContain('tmcd');
    expect(chaptersOf(scratch.at('png.mov'))).toHaveLength(3);
    expect(probeVideo(scratch.at('png.mov'))).toMatchObject({ codec_name: 'png', nb_read_frames: '40' });
  });

  it('is left out at a rate that no timecode counts, and the result says so', async () => {
    const result = await renderFilm(opaque(fraction(12n), 5), scratch.at('slow.mov'), { timecode: '01:00:00:00' });
    expect(result).toMatchObject({
      notices: [
        'the .mov has no timecode track: timecode counts 24, 25, 30, 48, 50 or 60 frames a second, and this film has another rate',
      ],
    });
  });

  it('is in no other kind of file', async () => {
    await renderFilm(opaque(fraction(25n), 5), scratch.at('coded.mp4'), { timecode: '01:00:00:00' });
    expect(tracksOf(scratch.at('coded.mp4')).map(({ codec_tag_string }) => codec_tag_string)).not.toContain('tmcd');
  });
});

describe('a part of a film', () => {
  it('is its frames, with its stretch of the sound', async () => {
    const film = opaque(fraction(25n), 60);
    ffmpeg(['-f', 'lavfi', '-i', "aevalsrc='if(gte(t,1),0.5*sin(2*PI*440*t),0)':s=48000:d=3", scratch.at('late.wav')]);
    const options: RenderOptions = { audio: scratch.at('late.wav'), audioStart: fraction(4n, 5n) };
    await renderFilm(excerpt(film, 20, 50), scratch.at('part.mov'), { lossless: true, ...options });
    await renderFilm(film, scratch.at('whole.mov'), { lossless: true });
    const [part, whole] = [decodeFrames(scratch.at('part.mov')), decodeFrames(scratch.at('whole.mov'))];
    const bytes = 64 * 48 * 4;
    expect(part.count).toBe(30);
    expect(Buffer.compare(part.pixels, whole.pixels.subarray(20 * bytes, 50 * bytes))).toBe(0);
    const loud = decodeSound(scratch.at('part.mov')).findIndex((sample) => Math.abs(sample) > 0.1);
    expect(Math.abs(loud / 48_000 - 0.2)).toBeLessThan(0.01);
  });
});

describe('fill and matte', () => {
  it('laid over a picture give what the transparent film gives', async () => {
    const film = squarePainter({
      frameCount: 2,
      squares: () => [
        { left: 8, top: 8, width: 24, height: 16, colour: [220, 40, 40, 128] },
        { left: 40, top: 20, width: 12, height: 12, colour: [0, 114, 178, 255] },
      ],
    });
    for (const [name, painter] of [
      ['fill.mov', fillPainter(film)],
      ['matte.mov', mattePainter(film)],
    ] as const) {
      expect(await renderFilm(painter, scratch.at(name), { lossless: true })).toMatchObject({ kind: 'written' });
    }
    const [fill, matte] = [decodeFrames(scratch.at('fill.mov')).pixels, decodeFrames(scratch.at('matte.mov')).pixels];
    const at = (x: number, y: number): number => (y * 64 + x) * 4;
    const near = (pixels: Uint8Array, where: number, wanted: readonly number[]): void => {
      const off = wanted.map((value, index) => Math.abs(pixels[where + index]! - value));
      expect(Math.max(...off)).toBeLessThanOrEqual(2);
    };
    near(fill, at(12, 12), [220, 40, 40, 255]);
    near(matte, at(12, 12), [128, 128, 128, 255]);
    near(fill, at(45, 25), [0, 114, 178, 255]);
    near(matte, at(45, 25), [255, 255, 255, 255]);
    near(matte, at(2, 2), [0, 0, 0, 255]);
    // The colour goes on over the edge, where the matte is black.
    near(fill, at(6, 12), [220, 40, 40, 255]);
    near(matte, at(6, 12), [0, 0, 0, 255]);
  });
});

function chaptersOf(file: string): readonly { readonly start: number; readonly title: string | undefined }[] {
  const words = ['-v', 'error', '-show_chapters', '-of', 'json', file];
  const said = JSON.parse(execFileSync('ffprobe', words, { encoding: 'utf8' })) as {
    chapters: { start_time: string; tags?: { title?: string } }[];
  };
  return said.chapters.map(({ start_time, tags }) => ({ start: Number(start_time), title: tags?.title }));
}

function tracksOf(
  file: string,
): readonly { readonly codec_tag_string: string; readonly tags?: Record<string, string> }[] {
  const words = ['-v', 'error', '-show_entries', 'stream=codec_tag_string:stream_tags', '-of', 'json', file];
  return (JSON.parse(execFileSync('ffprobe', words, { encoding: 'utf8' })) as { streams: [] }).streams;
}
