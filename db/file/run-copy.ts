import { existsSync, rmSync, statSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { CopyResult, CopyTask, CopyWord } from './copy-thread.ts';
import { mapSqliteError, ShopDamaged, ShopDiskFull, ShopMissing, ShopReadOnly } from './errors.ts';

/** How far a copy is. `done` of `total` counts bytes while copying, files while copying files, else 0 of 1. */
export interface CopyProgress {
  readonly phase: 'copy' | 'check' | 'hash' | 'files';
  readonly done: number;
  readonly total: number;
}

/** Watching and stopping a copy. */
export interface CopyHooks {
  readonly onProgress?: (progress: CopyProgress) => void;
  /** Aborting it stops the copy, leaves nothing behind and rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

const LOOK_MS = 100;

// Beside this file, as source or as bundled for the desktop.
const THREAD = new URL(import.meta.url.endsWith('.ts') ? 'copy-thread.ts' : 'copy-thread.js', import.meta.url);

/**
 * Copies a database and checks the copy, in a thread with a connection of its own, so that no window waits. A copy that
 * fails, does not check or is stopped is removed. Throws ShopDamaged, ShopDiskFull, ShopReadOnly, ShopMissing.
 */
export async function runCopy(task: CopyTask, hooks: CopyHooks): Promise<CopyResult> {
  hooks.signal?.throwIfAborted();
  if (!existsSync(task.from)) throw new ShopMissing(task.from);
  // The copy is one step, so the thread itself cannot tell how far it is: the size of what it writes does.
  const total = statSync(task.from).size;
  const look = setInterval(() => {
    if (existsSync(task.to))
      hooks.onProgress?.({ phase: 'copy', done: Math.min(statSync(task.to).size, total), total });
  }, LOOK_MS);
  const worker = new Worker(THREAD, { workerData: task });
  const stop = () => void worker.terminate();
  hooks.signal?.addEventListener('abort', stop);
  try {
    return await listen(worker, task, hooks, () => clearInterval(look));
  } catch (error) {
    for (const left of [task.to, `${task.to}-journal`, `${task.to}-wal`, `${task.to}-shm`])
      rmSync(left, { force: true });
    throw error;
  } finally {
    clearInterval(look);
    hooks.signal?.removeEventListener('abort', stop);
  }
}

/** Settles only once the thread has ended, so that nobody writes any more. */
function listen(worker: Worker, task: CopyTask, hooks: CopyHooks, copied: () => void): Promise<CopyResult> {
  return new Promise((resolve, reject) => {
    let last: CopyWord | undefined;
    let fault: unknown;
    worker.on('message', (text: string) => {
      const word = JSON.parse(text) as CopyWord;
      last = word;
      copied();
      if (word.say === 'phase') hooks.onProgress?.({ phase: word.phase, done: word.done, total: word.total });
    });
    worker.on('error', (error) => {
      fault = error;
    });
    worker.on('exit', (code) => {
      if (hooks.signal?.aborted) reject(hooks.signal.reason);
      else if (last?.say === 'done') resolve(last.result);
      else if (last?.say === 'damaged') reject(new ShopDamaged(last.found, last.detail));
      else if (last?.say === 'failed') reject(asError(last.code, last.message, task));
      else reject(fault ?? new Error(`the copying thread ended with ${code}`));
    });
  });
}

/** An error that crossed the border of threads as its code and message. */
function asError(code: string, message: string, task: CopyTask): unknown {
  if (code === 'missing') return new ShopMissing(task.from);
  if (code === 'read-only') return new ShopReadOnly(task.to);
  if (code === 'disk-full') return new ShopDiskFull();
  return mapSqliteError(Object.assign(new Error(message), { code }), task.to);
}
