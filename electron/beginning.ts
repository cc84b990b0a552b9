import { existsSync, renameSync, rmSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import type { Answer } from '../core/contract/errors.ts';
import { holdShop } from '../db/file/lock.ts';
import type { BeginBody } from './bodies.ts';
import { copiesOf, lookInto, restoreHeld } from './copies.ts';
import { type OpenShop, openAgain, openLocked } from './open.ts';
import type { StandingShop } from './standing.ts';
import { sayBroughtBack, sayCopy, sayFault } from './words.ts';

type Demo =
  | { readonly stage: 'none' | 'stopped' }
  | { readonly stage: 'playing'; readonly step: 'scenes' | 'orders'; readonly done: number; readonly of: number }
  | { readonly stage: 'made'; readonly people: readonly { name: string; role: string; code: string }[] }
  | { readonly stage: 'failed'; readonly why: string };

class Stopped extends Error {}

/** Lets whoever else is waiting have a turn: the shop's own work never gives one up. */
const turn = () => new Promise<void>((later) => setImmediate(later));

/**
 * The two other ways in, beside setting up: the demo garage, in a folder of its own, and bringing back a copy. Both only
 * while the shop behind the doors is not set up, so nothing that anybody did can be replaced by them.
 */
export class Beginning {
  readonly #standing: StandingShop;
  readonly #demoFolder: string;
  readonly #opened: (open: OpenShop) => void;
  #demo: Demo = { stage: 'none' };
  #playing: Promise<void> | null = null;
  #stop = false;

  /** `opened` hears of each shop that is put behind the doors. */
  constructor(standing: StandingShop, demoFolder: string, opened: (open: OpenShop) => void) {
    this.#standing = standing;
    this.#demoFolder = demoFolder;
    this.#opened = opened;
  }

  /** Answers one question; a fault of a file is answered as its sentence, `wrong`. */
  async answer(body: BeginBody): Promise<Answer> {
    if (await this.#isSetUp()) return { ok: false, error: { code: 'already-set-up' } };
    try {
      return { ok: true, output: await this.#do(body) };
    } catch (fault) {
      const about = 'copy' in body ? body.copy : this.#demoFolder;
      return { ok: true, output: { wrong: sayFault(fault, about) } };
    }
  }

  /** Stops what is being played and waits until it is cleared away. */
  async close(): Promise<void> {
    this.#stop = true;
    await this.#playing;
  }

  async #isSetUp(): Promise<boolean> {
    const answer = await this.#standing.call('shop.get', {}, { personId: null, device: 'first start' });
    return !answer.ok || (answer.output as { isSetUp: boolean }).isSetUp;
  }

  async #do(body: BeginBody): Promise<unknown> {
    switch (body.what) {
      case 'demo':
        return this.#demo;
      case 'play':
        return this.#play();
      case 'stop':
        this.#stop = true;
        await this.#playing;
        return this.#demo;
      case 'open-demo':
        return this.#openDemo();
      case 'copies':
        return {
          copies: copiesOf(this.#standing.folder).map((copy) => ({ path: copy.path, words: sayCopy(copy) })),
        };
      case 'look':
        return lookInto(this.#standing.folder, whole(body.copy));
      case 'bring-back':
        return this.#bringBack(whole(body.copy), body.lastInvoice);
    }
  }

  async #play(): Promise<Demo> {
    if (this.#playing === null) {
      this.#stop = false;
      this.#demo = { stage: 'playing', step: 'scenes', done: 0, of: 0 };
      this.#playing = this.#made()
        .catch((fault: unknown) => {
          this.#demo =
            fault instanceof Stopped
              ? { stage: 'stopped' }
              : { stage: 'failed', why: sayFault(fault, this.#demoFolder) };
        })
        .finally(() => {
          this.#playing = null;
        });
    }
    return this.#demo;
  }

  /** Plays the demo garage under another name, which it loses only once all of it is there and agrees. */
  async #made(): Promise<void> {
    const { PEOPLE } = await import('../demo-shop/garage.ts');
    const people = PEOPLE.map(({ name, role, code }) => ({ name, role, code }));
    if (!existsSync(join(this.#demoFolder, 'shop.sqlite'))) {
      const { playDemo } = await import('../demo-shop/play.ts');
      const folder = `${this.#demoFolder}.unfinished`;
      // Nobody else may be playing there; what an end in the middle has left goes.
      if (existsSync(folder)) holdShop(folder, { at: Date.now() }).release();
      rmSync(folder, { recursive: true, force: true });
      const open = await openLocked({ folder, practice: true });
      try {
        const { verified } = await playDemo(
          open.shop,
          Date.now(),
          () => {},
          async (step, done, of) => {
            this.#demo = { stage: 'playing', step, done, of };
            await turn();
            if (this.#stop) throw new Stopped();
          },
        );
        if (!verified.sound) throw new Error('The demo garage does not agree with itself.');
      } catch (fault) {
        await open.shop.close();
        open.lock.release();
        rmSync(folder, { recursive: true, force: true });
        throw fault;
      }
      await open.shop.close();
      open.lock.release();
      renameSync(folder, this.#demoFolder);
    }
    this.#demo = { stage: 'made', people };
  }

  async #openDemo(): Promise<Demo> {
    if (this.#demo.stage !== 'made') return this.#demo;
    await this.#standing.change(async (standing) => {
      const demo = await openLocked({ folder: this.#demoFolder });
      await standing.close();
      this.#opened(demo);
      return demo;
    });
    return this.#demo;
  }

  /** The empty shop gives way to the copy, and is kept beside it. Where the copy does not do, the empty shop stands again. */
  async #bringBack(copy: string, lastInvoice: number | null): Promise<{ readonly said: string }> {
    let said = '';
    let fault: unknown;
    await this.#standing.change(async ({ shop, lock }) => {
      const { folder } = shop;
      await shop.close();
      try {
        said = sayBroughtBack(await restoreHeld(lock, copy, lastInvoice), folder);
      } catch (error) {
        fault = error;
      }
      return openAgain(lock, { folder, practice: shop.practice && fault !== undefined });
    });
    if (fault !== undefined) throw fault;
    return { said };
  }
}

/** A path that says where it begins. Throws with a sentence for one that does not. */
function whole(path: string): string {
  const bare = path.trim();
  if (!isAbsolute(bare)) throw new Error('Write its whole path, from the root of the disk on.');
  return bare;
}
