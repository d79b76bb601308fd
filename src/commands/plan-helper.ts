/**
 * The second core: while one thread looks for the least path and its proof, a thread of its own looks for ones that cost less, by
 * chance. They share the cost that is to be beaten; paths go over a channel that the first one reads without waiting.
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

/** What the thread is handed. */
export interface HelperTask {
  /** The puzzle as it was given: the thread reads it anew. */
  readonly given: string;
  readonly costs: TeachingCosts;
  /** What is to be placed; without it the whole board. */
  readonly until: readonly Candidate[] | undefined;
  /** One 64-bit float: the cost to beat; 0 tells the thread to end. */
  readonly shared: SharedArrayBuffer;
  readonly port: MessagePort;
}

export interface Helper {
  /** Starts the thread where it does not run yet, and tells it what to beat. */
  readonly beat: (cost: number) => void;
  /** A path that was found and not yet fetched. */
  readonly found: () => readonly Move[] | undefined;
  readonly end: () => void;
}

/** Nothing runs before there is something to beat. A thread that cannot be started is done without. */
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

/** As built, or from source, where a thread does not take over by itself what reads TypeScript. */
function startThread(options: WorkerOptions): Worker {
  if (!import.meta.url.endsWith('.ts')) return new Worker(new URL('./plan-thread.js', import.meta.url), options);
  const file = JSON.stringify(new URL('./plan-thread.ts', import.meta.url).href);
  const code = `import('tsx/esm/api').then(({ tsImport }) => tsImport(${file}, ${file}))`;
  return new Worker(code, { ...options, eval: true });
}
