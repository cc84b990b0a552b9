import { Worker } from 'node:worker_threads';
import type { RunTask, RunWord } from './statement-thread.ts';

/** How a run of this process stands. */
export interface RunState {
  readonly running: boolean;
  readonly stopping: boolean;
  /** Made since it was begun or gone on with. */
  readonly made: number;
  readonly madeBefore: number;
  /** Milliseconds of this stretch of the work so far, by the shop's clock. */
  readonly spent: number;
  readonly failed: 'disk-full' | 'read-only' | 'damaged' | 'fault' | null;
  readonly leftOut: readonly { readonly customerId: string; readonly customer: string; readonly characters: string }[];
}

interface Running {
  state: Omit<RunState, 'spent'>;
  /** When this stretch began, by the shop's clock. */
  readonly since: number;
  readonly stop: Int32Array;
  readonly ended: Promise<void>;
}

// Beside this file, as source or as bundled for the desktop.
const THREAD = new URL(
  import.meta.url.endsWith('.ts') ? 'statement-thread.ts' : 'statement-thread.js',
  import.meta.url,
);
/** Windows are told this often at most, in milliseconds. */
const TELL_MS = 200;

/** The statement runs of one open shop: each in a thread with a connection of its own, so that no window waits. */
export class StatementRuns {
  readonly #runs = new Map<string, Running>();
  readonly #clock: () => number;
  readonly #announce: () => void;
  readonly #log: (fault: unknown) => void;
  #told = 0;

  /** `clock` is the shop's own: epoch milliseconds. */
  constructor(clock: () => number, announce: () => void, log: (fault: unknown) => void) {
    this.#clock = clock;
    this.#announce = announce;
    this.#log = log;
  }

  /** Begins, or goes on with, a run; one that is being made is left alone. */
  begin(runId: string, task: Omit<RunTask, 'stop'>, madeBefore: number): void {
    if (this.#runs.get(runId)?.state.running) return;
    const stop = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
    const fresh = { running: true, stopping: false, made: 0, madeBefore, failed: null, leftOut: [] };
    const since = this.#clock();
    const worker = new Worker(THREAD, { workerData: { ...task, stop } satisfies RunTask });
    const change = (more: Partial<Running['state']>) => {
      running.state = { ...running.state, ...more };
    };
    const ended = new Promise<void>((resolve) => {
      worker.on('message', (text: string) => {
        this.#heard(JSON.parse(text) as RunWord, running.state, change);
        this.#tell();
      });
      worker.on('error', (fault) => {
        this.#log(fault);
        change({ failed: 'fault' });
      });
      worker.on('exit', () => {
        change({ running: false, stopping: false });
        this.#announce();
        resolve();
      });
    });
    const running: Running = { state: fresh, since, stop: new Int32Array(stop), ended };
    this.#runs.set(runId, running);
  }

  #heard(word: RunWord, state: Running['state'], change: (more: Partial<Running['state']>) => void): void {
    if (word.say === 'made') change({ made: state.made + 1 });
    else if (word.say === 'left-out') change({ leftOut: [...state.leftOut, word] });
    else {
      this.#log(new Error(word.message));
      change({ failed: word.code });
    }
  }

  #tell(): void {
    if (Date.now() - this.#told < TELL_MS) return;
    this.#told = Date.now();
    this.#announce();
  }

  /** Asks a run to end with the one in hand. */
  stop(runId: string): void {
    const running = this.#runs.get(runId);
    if (!running?.state.running) return;
    Atomics.store(running.stop, 0, 1);
    running.state = { ...running.state, stopping: true };
  }

  /** null: nobody began or went on with it since the shop was opened. */
  stateOf(runId: string): RunState | null {
    const run = this.#runs.get(runId);
    return run === undefined ? null : { ...run.state, spent: Math.max(0, this.#clock() - run.since) };
  }

  /** Stops all after the one in hand, and waits for them. */
  async close(): Promise<void> {
    for (const runId of this.#runs.keys()) this.stop(runId);
    await Promise.all([...this.#runs.values()].map(({ ended }) => ended));
  }
}
