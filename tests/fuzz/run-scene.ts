/**
 * All that is made of a scene without a program of another: read, proved, timed, shown, told, written anew.
 */
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { captionCues } from '../../src/beside/cues.ts';
import { describeFilm } from '../../src/beside/describe.ts';
import { printTimeline } from '../../src/beside/otio.ts';
import { printCues } from '../../src/beside/print-cues.ts';
import { milliseconds, saidInNarration, saidInSteps } from '../../src/beside/spoken.ts';
import type { CheckedScene } from '../../src/check/verdict.ts';
import { filmOf } from '../../src/film/film-of.ts';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint as paintFrame } from '../../src/frames/paint.ts';
import { runsOf } from '../../src/frames/runs.ts';
import { certainErrors, checkScene } from '../../src/lesson/check-scene.ts';
import { fixScene, spellOut } from '../../src/lesson/fixed-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { certainFaults, schedule } from '../../src/lesson/schedule.ts';
import { busySpans } from '../../src/output/flashes/busy-spans.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { certificatesOf } from '../../src/report/cnf.ts';
import { printReport } from '../../src/report/print-report.ts';
import { reportOf, unusableReport } from '../../src/report/report-of.ts';
import { retimedScene } from '../../src/retime/retimed-scene.ts';
import type { Diagnostic } from '../../src/scene/diagnostic.ts';
import { add, fraction } from '../../src/scene/fraction.ts';
import { printDiagnostic } from '../../src/scene/locate.ts';
import type { Look } from '../../src/scene/look.ts';
import type { Scene } from '../../src/scene/scene.ts';
import { sceneAs } from '../../src/scene/versions.ts';
import { deckOf, inWordsOf } from '../../src/slides/deck.ts';
import { htmlHead, htmlSlide } from '../../src/slides/html-page.ts';
import { slideSize } from '../../src/slides/page-size.ts';
import { chapterList, chaptersOf, printChapterList } from '../../src/timeline/chapters.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import type { Schedule } from '../../src/timeline/schedule.ts';
import { timeOfFrame } from '../../src/timeline/seconds.ts';
import { recorder } from '../picture/recording-context.ts';

const narrationText = readFileSync(new URL('../../scenes/lamp-room.vtt', import.meta.url), 'utf8');

const plain = (words: string) => words;
const paint = { bold: plain, dim: plain, red: plain, green: plain, yellow: plain };

/** Fails where a part throws, or says what nobody should read. */
export function runScene(text: string, { narration: spoken = narrationText, look = defaultLook } = {}): void {
  const { scene, rough, diagnostics } = readScene(text);
  expectPlain(text, diagnostics);
  const narration = readNarration(spoken, 'talk.vtt').narration;
  if (scene === undefined) {
    printReport(unusableReport({ path: 'a.yaml', text }, diagnostics), paint);
    if (rough === undefined) return;
    const { parts, puzzle, puzzleSpan, doubts } = rough;
    const talk = parts.video.narration === undefined ? undefined : narration;
    expectPlain(text, certainFaults({ ...parts, puzzle: puzzle ?? { span: puzzleSpan } }, doubts, talk, {}));
    if (puzzle !== undefined) expectPlain(text, certainErrors({ ...parts, puzzle }, doubts));
    return;
  }
  const talk = scene.video.narration === undefined ? undefined : narration;
  const timed = schedule(scene, talk, {});
  expectPlain(text, timed.diagnostics);
  const checked = checkScene(scene);
  expectPlain(text, checked.errors);
  const all = [...diagnostics, ...timed.diagnostics, ...checked.errors];
  if (all.some(({ severity }) => severity === 'error')) return;
  const report = reportOf({ path: 'a.yaml', text }, checked, all);
  expect(printReport(report, paint)).not.toMatch(nonsense);
  JSON.stringify(report);
  show(scene, checked, timed.schedule, look);
  for (const version of scene.versions) {
    const other = sceneAs(scene, version);
    const { schedule: times, diagnostics } = schedule(other, talk, {});
    expectPlain(text, diagnostics);
    if (!diagnostics.some(({ severity }) => severity === 'error'))
      show(other, { ...checked, scene: other }, times, look);
  }
  const said = talk === undefined ? saidInSteps(scene, timed.schedule) : saidInNarration(talk);
  const cues = captionCues(said, milliseconds(timeOfFrame(timed.schedule.rate, timed.schedule.frameCount)));
  printCues(cues, 'vtt');
  printCues(cues, 'srt');
  writeAnew(scene, checked, text);
}

function show(scene: Scene, checked: CheckedScene, timed: Schedule, look: Look): void {
  const film = filmOf(checked, timed, look);
  printCues(describeFilm(film, checked, timed), 'vtt');
  const chapters = chaptersOf(scene, timed);
  printChapterList(chapterList(chapters, timed.rate).chapters, timed.rate);
  const media = { video: 'a.mov', footage: undefined, audio: undefined };
  JSON.parse(printTimeline(checked, timed, { name: 'a', firstFrame: 0, chapters, media }));
  const { context } = recorder();
  const last = film.frameCount - 1;
  for (const frame of new Set([0, Math.floor(last / 3), Math.floor((2 * last) / 3), last])) {
    if (frame >= 0) paintFrame(context, film, look, drawingAt(film, look, frameAt(frame)));
  }
  runsOf(film, look);
  busySpans(film, look, 'areas');
  const parts = { size: slideSize('4:3'), language: 'en', fonts: '', player: '', playerDigest: '' };
  for (const exercise of [false, true]) {
    const deck = deckOf(checked, timed, look, { builds: exercise, exercise });
    for (const slide of deck.slides) inWordsOf(deck, slide);
    htmlHead(deck, parts);
    for (const slide of deck.slides.slice(0, 3)) htmlSlide(deck, slide, parts, context);
  }
}

function writeAnew(scene: Scene, checked: CheckedScene, text: string): void {
  certificatesOf(checked);
  const spelt = readScene(spellOut(text, checked));
  expect(spelt.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  retimedScene(scene, text, (seconds) => ({ seconds: add(seconds, fraction(1)), lost: undefined }));
  // The slowest of all, so only some are fixed.
  if (!checked.sound && text.length % 5 === 0) fixScene(text);
}

/** What stands in a message when the program had nothing to say there. */
const nonsense = /undefined|\bNaN\b|\[object|=> \{/;

/** Faults lie in the file and can be printed with their lines. */
export function expectPlain(text: string, diagnostics: readonly Diagnostic[]): void {
  for (const diagnostic of diagnostics) {
    for (const { start, end } of [diagnostic.span, ...(diagnostic.notes ?? []).map(({ span }) => span)]) {
      expect([start >= 0, end >= start, end <= text.length]).toEqual([true, true, true]);
    }
    expect(diagnostic.message).not.toMatch(nonsense);
    printDiagnostic('a.yaml', text, diagnostic);
  }
}
