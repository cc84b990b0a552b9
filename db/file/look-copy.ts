import { rmSync } from 'node:fs';
import { closeConnection, openConnection } from './connection.ts';
import { mapSqliteError, ShopDamaged, ShopNewer } from './errors.ts';
import { soundCopy } from './restore.ts';
import { runCopy } from './run-copy.ts';

/** What a copy holds, told before it takes the place of anything. */
export interface CopyLook {
  /** The garage's name; '' for a copy of a shop that was not set up. */
  readonly garage: string;
  /** The number of its last invoice; null where it holds none. */
  readonly lastInvoice: number | null;
  /** The last number of its trail; null where nothing was done. */
  readonly trail: number | null;
}

/**
 * Looks into a copy (its file, or a folder that holds a `shop.sqlite`) after checking it whole. Only a scratch copy at
 * `scratch` is opened, and that is removed again. Throws ShopMissing, ShopDamaged, ShopNewer, ShopDiskFull, ShopReadOnly.
 */
export async function lookAtCopy(copy: string, scratch: string, knownVersion: number): Promise<CopyLook> {
  const from = soundCopy(copy);
  const away = () => {
    for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(`${scratch}${ending}`, { force: true });
  };
  away();
  try {
    const { schemaVersion, trail } = await runCopy({ from, to: scratch, depth: 'whole', folders: [] }, {});
    if (schemaVersion > knownVersion) throw new ShopNewer(schemaVersion, knownVersion);
    if (schemaVersion === 0) throw new ShopDamaged('not-a-shop', `${from}: an empty database`);
    const database = openConnection(scratch);
    try {
      const one = <T>(sql: string) => database.prepare<[], T>(sql).get();
      return {
        garage: one<{ name: string | null }>(`select json_extract(settings, '$.name') as name from shop`)?.name ?? '',
        lastInvoice:
          one<{ last: number | null }>(`select max(number) as last from paper where kind = 'invoice'`)?.last ?? null,
        trail: trail?.n ?? null,
      };
    } finally {
      closeConnection(database);
    }
  } catch (error) {
    throw mapSqliteError(error, copy);
  } finally {
    away();
  }
}
