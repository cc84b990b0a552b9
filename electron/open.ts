import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';
import type { Answer } from '../core/contract/errors.ts';
import { createShopFolder } from '../db/file/folder.ts';
import { holdShop, type ShopLock } from '../db/file/lock.ts';
import { openShop, type Shop } from '../db/shop.ts';
import { Beginning } from './beginning.ts';
import type { BeginBody } from './bodies.ts';
import { dataFolder } from './folder.ts';
import { Hands } from './hands.ts';
import { type Host, startHost } from './host.ts';
import { StandingShop } from './standing.ts';
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
  /** Where the demo garage stands or is played into; absent: its usual place. */
  readonly demo?: string;
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
  /** The shop that stands behind the door now. */
  readonly shop: Shop;
  /** Whichever shop that is: what a window calls. */
  readonly standing: StandingShop;
  /** Answers what a window asks before there is a garage. */
  begin(body: BeginBody): Promise<Answer>;
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
    const open = await openAgain(lock, settings);
    if (settings.practice && !open.shop.practice)
      process.stderr.write('This shop was not made for practice and stays a real one: all that is done here counts.\n');
    return open;
  } catch (fault) {
    lock.release();
    throw fault;
  }
}

/** Opens the shop of a folder that this process holds. Throws what opening throws; the folder stays held. */
export async function openAgain(lock: ShopLock, settings: FolderSettings): Promise<OpenShop> {
  const { folder, practice = false, clock = Date.now } = settings;
  const shop = await openShop({ folder, practice, clock });
  const close = async (notWithin?: number) => {
    await copyOrSay(shop, notWithin);
    await shop.close();
    lock.release();
  };
  return { shop, lock, close };
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
  const first = await openLocked(settings);
  const standing = new StandingShop(first);
  const announce = ({ lock }: OpenShop) => lock.announce(host.address, host.key);
  const demo = resolve(settings.demo ?? join(dataFolder(), 'demo-garage'));
  const beginning = new Beginning(standing, demo, announce);
  const hands = new Hands();
  let host: Host;
  try {
    host = await startHost({
      shop: standing,
      hands,
      begin: (body) => beginning.answer(body),
      root: settings.root ?? WINDOW_FOLDER,
      port: settings.port ?? usualPort(settings.folder),
      insist: settings.port !== undefined,
      onFault: (id, fault) => process.stderr.write(`${id} ${fault instanceof Error ? fault.stack : String(fault)}\n`),
    });
    announce(first);
    const hourly = setInterval(() => void copyOrSay(standing.shop), HOUR).unref();
    const close = async () => {
      clearInterval(hourly);
      await host.close();
      await beginning.close();
      await standing.close();
    };
    return {
      standing,
      begin: (body) => beginning.answer(body),
      host,
      hands,
      close,
      get shop() {
        return standing.shop;
      },
    };
  } catch (fault) {
    await first.close();
    throw fault;
  }
}
