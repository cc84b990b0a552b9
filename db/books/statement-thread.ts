import { parentPort, workerData } from 'node:worker_threads';
import { PaperCharacterMissing } from '../../core/paper/pdf/paper-pdf.ts';
import { JoinedStatements, statementPdf } from '../../core/paper/pdf/statement-pdf.ts';
import { openConnection } from '../file/connection.ts';
import { ShopDatabase } from '../file/dialect.ts';
import { mapSqliteError, ShopFileError } from '../file/errors.ts';
import { loadFonts } from '../pdf.ts';
import { readSettings } from '../settings.ts';
import type { Tables } from '../tables.ts';
import { joinedFile, ownFile, writeWhole } from './run-files.ts';
import { statementPaper } from './statement.ts';

/** What the thread is asked to make. */
export interface RunTask {
  readonly database: string;
  readonly practice: boolean;
  readonly folder: string;
  readonly joined: boolean;
  readonly from: string;
  readonly until: string;
  readonly asOf: number;
  /** Those that are still to be made, by their number in the run. */
  readonly rows: readonly { readonly n: number; readonly customerId: string }[];
  /** Not 0: stop after the one in hand. */
  readonly stop: SharedArrayBuffer;
}

/** What the thread says, as JSON text: text crosses the border of threads cheaper than objects. */
export type RunWord =
  | { readonly say: 'made'; readonly n: number }
  | { readonly say: 'left-out'; readonly customerId: string; readonly customer: string; readonly characters: string }
  | {
      readonly say: 'failed';
      readonly code: 'disk-full' | 'read-only' | 'damaged' | 'fault';
      readonly message: string;
    };

type Tell = (word: RunWord) => void;

async function make(task: RunTask, tell: Tell): Promise<void> {
  const database = new ShopDatabase<Tables>(openConnection(task.database, { readonly: true }));
  const stop = new Int32Array(task.stop);
  const fonts = loadFonts();
  try {
    const shop = await database.query.selectFrom('shop').select('settings').executeTakeFirstOrThrow();
    const settings = readSettings(shop.settings);
    const joined = await JoinedStatements.start(fonts);
    let from = 0;
    let last = 0;
    const finish = async () => {
      if (joined.count === 0) return;
      const name = joinedFile(settings.language, task.until, from, last);
      writeWhole(task.folder, name, await joined.pdf());
    };
    for (const { n, customerId } of task.rows) {
      if (Atomics.load(stop, 0) !== 0) break;
      const document = await database.transaction((tx) =>
        statementPaper({ tx, settings, practice: task.practice }, { ...task, customerId }),
      );
      try {
        if (!task.joined)
          writeWhole(task.folder, ownFile(n, document.to[0] ?? ''), await statementPdf(document, fonts));
        else {
          // A file holds what follows each other without a gap, so that its name is true.
          if (joined.count > 0 && n !== last + 1) await finish();
          joined.add(document);
          if (joined.count === 1) from = n;
          last = n;
        }
        tell({ say: 'made', n });
      } catch (error) {
        if (!(error instanceof PaperCharacterMissing)) throw error;
        tell({ say: 'left-out', customerId, customer: document.to[0] ?? '', characters: error.characters.join(' ') });
      }
    }
    await finish();
  } finally {
    await database.close();
  }
}

async function run(port: NonNullable<typeof parentPort>): Promise<void> {
  const tell: Tell = (word) => port.postMessage(JSON.stringify(word));
  const task = workerData as RunTask;
  try {
    await make(task, tell);
  } catch (error) {
    const known = mapSqliteError(error, task.folder);
    const code = known instanceof ShopFileError ? known.code : 'fault';
    const said = code === 'disk-full' || code === 'read-only' || code === 'damaged' ? code : 'fault';
    tell({
      say: 'failed',
      code: said,
      message: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
}

// The body of a worker thread: runs.ts starts it, nothing imports it.
if (parentPort) await run(parentPort);
