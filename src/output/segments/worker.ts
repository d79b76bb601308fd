/**
 * The program of a process that draws and encodes segments for a render in another one. It ends when the render says
 * so, or has ended, and stops its encoder.
 */
import { codecOf } from '../codecs/codecs.ts';
import { asMachineFailure, MachineFailure } from '../machine/machine-failure.ts';
import { painterOf } from '../painters/painter-of.ts';
import { type SegmentRenderer, segmentRenderer } from './segment-render.ts';
import { folderStore } from './segment-store.ts';
import type { FromWorker, ToWorker } from './worker-messages.ts';

const stopping = new AbortController();
let renderer: Promise<SegmentRenderer> | undefined;

// Control-C reaches every process of a terminal; the render decides when to stop.
for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, () => undefined);
process.on('disconnect', stop);
process.on('message', (message: ToWorker) => {
  switch (message.kind) {
    case 'begin':
      renderer = begin(message);
      renderer.catch((error) => fail(error, undefined));
      break;
    case 'segments':
      renderSome(message).catch((error) => fail(error, message.segments[0]?.digest));
      break;
    case 'stop':
      stop();
      break;
  }
});

async function begin({ painting, setting }: Extract<ToWorker, { kind: 'begin' }>): Promise<SegmentRenderer> {
  const painter = painterOf(painting);
  const codec = codecOf(setting.codec, painter, setting);
  return segmentRenderer(painter, codec, setting, folderStore(setting.folder));
}

async function renderSome({ segments }: Extract<ToWorker, { kind: 'segments' }>): Promise<void> {
  const of = segments[0]?.digest ?? '';
  const onPicture = (frames: number, drawn: number): void => say({ kind: 'picture', frames, drawn, of });
  await (await renderer)?.render(segments, onPicture, stopping.signal);
  say({ kind: 'done', of });
}

function fail(thrown: unknown, of: string | undefined): void {
  const error = asMachineFailure(thrown, 'cannot write the frames');
  const isMachine = error instanceof MachineFailure;
  say({ kind: 'failed', sentence: error instanceof Error ? error.message : String(error), isMachine, of });
}

function stop(): void {
  stopping.abort(new Error('stopped'));
  // Running work stops its encoder first; then nothing keeps the process alive.
  if (process.connected) process.disconnect();
}

function say(message: FromWorker): void {
  if (process.connected) process.send?.(message);
}
