/**
 * A second process that draws and encodes segments: the canvas library does not support threads.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { MachineFailure } from '../machine/machine-failure.ts';
import type { Painting } from '../painters/painting.ts';
import type { PictureDone } from './segment-render.ts';
import type { Segment } from './segments.ts';
import type { FromWorker, Setting, ToWorker } from './worker-messages.ts';

export interface WorkerProcess {
  /** Ends when the segments are in the store. Throws a `MachineFailure`. */
  render(segments: readonly Segment[], onPicture: PictureDone): Promise<void>;
  /** Returns when the process has ended. */
  stop(): Promise<void>;
}

export function workerProcess(painting: Painting, setting: Setting): WorkerProcess {
  const own = import.meta.url;
  // From source, the worker needs the same loader as we do; a test runner has its own, which a child does not inherit.
  const isSource = own.endsWith('.ts');
  const has = process.execArgv.some((word) => word.includes('tsx'));
  const execArgv = isSource && !has ? ['--import', 'tsx'] : process.execArgv.filter((word) => !/^--inspect/.test(word));
  const file = fileURLToPath(new URL(isSource ? 'worker.ts' : 'worker.js', own));
  const child = fork(file, [], { execArgv, serialization: 'advanced', stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
  const ended = once(child, 'exit').catch(() => undefined);
  say(child, { kind: 'begin', painting, setting });
  return {
    render: (segments, onPicture) => renderOn(child, segments, onPicture),
    async stop() {
      say(child, { kind: 'stop' });
      const late = setTimeout(() => child.kill('SIGKILL'), 3000);
      await ended;
      clearTimeout(late);
    },
  };
}

function renderOn(child: ChildProcess, segments: readonly Segment[], onPicture: PictureDone): Promise<void> {
  return new Promise((resolve, reject) => {
    const onMessage = (message: FromWorker): void => {
      if (message.of !== undefined && message.of !== segments[0]?.digest) return;
      if (message.kind === 'picture') {
        onPicture(message.frames, message.drawn);
        return;
      }
      child.off('message', onMessage);
      child.off('exit', onExit);
      child.off('error', onError);
      if (message.kind === 'done') resolve();
      else reject(message.isMachine ? new MachineFailure(message.sentence) : new Error(message.sentence));
    };
    const onExit = (): void => {
      reject(new MachineFailure('a process that drew frames ended before it was done; memory may have run out'));
    };
    const onError = (error: Error): void => reject(error);
    child.on('message', onMessage);
    child.on('exit', onExit);
    child.on('error', onError);
    if (child.exitCode !== null || child.signalCode !== null) onExit();
    else say(child, { kind: 'segments', segments });
  });
}

function say(child: ChildProcess, message: ToWorker): void {
  if (!child.connected) return;
  // A process that has just ended takes no more messages; its end is noticed elsewhere.
  child.send(message, () => undefined);
}
