import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { createShopFolder } from '../db/file/folder.ts';
import { holdShop, type ShopLock } from '../db/file/lock.ts';
import { openShop, type Shop } from '../db/shop.ts';

import { Hands } from './hands.ts';
import { type Host, startHost } from './host.ts';
import { sayFault } from './words.ts';

/** The folder of the built window, seen from the sources. */
const WINDOW_FOLDER = resolve(import.meta.dirname, '../dist/renderer');

export interface FolderSettings {
  readonly folder: string;
  /** When the shop is set up in this opening: a practice shop. */
  readonly practice?: boolean;
  /** Milliseconds since 1970; absent: the machine's own clock. */
  readonly clock?: () => number;
}

export interface DoorSettings extends FolderSettings {
  /** This port or none; absent: the shop's usual one, or any other where that is taken. */
  readonly port?: number;
  readonly root?: string;
}

export interface OpenShop {
  readonly shop: Shop;
  readonly lock: ShopLock;
  /**
   * Makes a checked copy of what was done since the last one (unless that is younger than `notWithin` milliseconds), closes
   * the shop, then lets go of the folder. A copy that fails is said on standard error and does not keep the shop open.
   */
  close(notWithin?: number): Promise<void>;
}

export interface OpenDoor {
  readonly shop: Shop;
  readonly host: Host;
  readonly hands: Hands;
  /** Closes the door, then the shop as above. */
  close(): Promise<void>;
}

/** While a window has the shop, a copy is made this often, in milliseconds, if something was done. */
const HOUR = 3_600_000;

/**
 * Takes the shop's folder for this process and opens the shop.
 * Throws ShopHeld where another process has the folder, and what opening throws.
 */
export async function openLocked(settings: FolderSettings): Promise<OpenShop> {
  createShopFolder(settings.folder);
  const lock = holdShop(settings.folder, { at: Date.now() });
  try {
    const { folder, practice = false, clock = Date.now } = settings;
    const shop = await openShop({ folder, practice, clock });
    if (practice && !shop.practice)
      process.stderr.write('This shop was not made for practice and stays a real one: all that is done here counts.\n');
    const close = async (notWithin?: number) => {
      await copyOrSay(shop, notWithin);
      await shop.close();
      lock.release();
    };
    return { shop, lock, close };
  } catch (fault) {
    lock.release();
    throw fault;
  }
}

async function copyOrSay(shop: Shop, notWithin?: number): Promise<void> {
  try {
    await shop.keepCopy(notWithin);
  } catch (fault) {
    process.stderr.write(`No copy of the shop was made. ${sayFault(fault, shop.folder)}\n`);
  }
}

/** The same port for the same folder: what a window keeps for itself (its light, its text size) is kept by address. */
function usualPort(folder: string): number {
  return 20_000 + (createHash('sha256').update(resolve(folder)).digest().readUInt16BE() % 10_000);
}

/** Opens the shop, and its door on the loopback address, which is written down for whoever comes second. */
export async function openWithDoor(settings: DoorSettings): Promise<OpenDoor> {
  const { shop, lock, close } = await openLocked(settings);
  try {
    const hands = new Hands();
    const host = await startHost({
      shop,
      hands,
      root: settings.root ?? WINDOW_FOLDER,
      port: settings.port ?? usualPort(settings.folder),
      insist: settings.port !== undefined,
      onFault: (id, fault) => process.stderr.write(`${id} ${fault instanceof Error ? fault.stack : String(fault)}\n`),
    });
    lock.announce(host.address, host.key);
    const hourly = setInterval(() => void copyOrSay(shop), HOUR).unref();
    const closeAll = async () => {
      clearInterval(hourly);
      await host.close();
      await close();
    };
    return { shop, host, hands, close: closeAll };
  } catch (fault) {
    await close();
    throw fault;
  }
}
