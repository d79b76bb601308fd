/**
 * The second core: while the main thread searches for the path of least cost and its proof, a second thread searches at
 * random for paths that cost less. They share the cost to beat; paths go through a channel that the main thread reads
 * without waiting.
 */
import {
  MessageChannel,
  type MessagePort,
  receiveMessageOnPort,
  Worker,
  type WorkerOptions,
} from 'node:worker_threads';
import type { Candidate } from '../grid/candidates.ts';
import type { Move } from '../plan/move.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';

/** What the thread is given. */
export interface HelperTask {
  /** The puzzle as given: the thread reads it again. */
  readonly given: string;
  readonly costs: TeachingCosts;
  /** What is to be placed; if undefined, the whole board. */
  readonly until: readonly Candidate[] | undefined;
  /** One 64-bit float: the cost to beat; 0 tells the thread to end. */
  readonly shared: SharedArrayBuffer;
  readonly port: MessagePort;
}

export interface Helper {
  /** Starts the thread if it is not running yet, and sets the cost to beat. */
  readonly beat: (cost: number) => void;
  /** A path that was found but not fetched yet. */
  readonly found: () => readonly Move[] | undefined;
  readonly end: () => void;
}

/** Nothing runs before there is a cost to beat. If the thread cannot be started, the search continues without it. */
export function planHelper({ given, costs, until }: Pick<HelperTask, 'given' | 'costs' | 'until'>): Helper {
  const shared = new SharedArrayBuffer(Float64Array.BYTES_PER_ELEMENT);
  const bound = new Float64Array(shared);
  const { port1, port2 } = new MessageChannel();
  port1.unref();
  let worker: Worker | undefined;
  return {
    beat: (cost) => {
      bound[0] = cost;
      if (worker !== undefined || cost <= 0) return;
      const task: HelperTask = { given, costs, until, shared, port: port2 };
      worker = startThread({ workerData: task, transferList: [port2], stdout: true, stderr: true });
      worker.unref();
      worker.on('error', () => undefined); // the search goes on alone
    },
    found: () => receiveMessageOnPort(port1)?.message as readonly Move[] | undefined,
    end: () => {
      bound[0] = 0;
      port1.close();
      if (worker !== undefined) void worker.terminate();
      else port2.close();
    },
  };
}

/** From the build, or from source, where a thread does not inherit the TypeScript loader. */
function startThread(options: WorkerOptions): Worker {
  if (!import.meta.url.endsWith('.ts')) return new Worker(new URL('./plan-thread.js', import.meta.url), options);
  const file = JSON.stringify(new URL('./plan-thread.ts', import.meta.url).href);
  const code = `import('tsx/esm/api').then(({ tsImport }) => tsImport(${file}, ${file}))`;
  return new Worker(code, { ...options, eval: true });
}
