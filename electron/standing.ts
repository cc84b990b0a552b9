import type { Answer } from '../core/contract/errors.ts';
import type { Shop as DbShop } from '../db/shop.ts';
import type { Caller, CallOptions, Shop } from './dispatch.ts';
import type { OpenShop } from './open.ts';

/**
 * The shop behind the doors. While it is not set up yet, another one may take its place: a copy that was brought back, or
 * the demo garage. Windows stay open; they are told that everything changed.
 */
export class StandingShop implements Shop {
  #open: OpenShop;
  #gate: Promise<void> = Promise.resolve();
  readonly #inHand = new Set<Promise<unknown>>();
  readonly #listeners = new Set<(rooms: string[]) => void>();

  constructor(open: OpenShop) {
    this.#open = open;
    this.#listen();
  }

  /** The shop that stands there now. */
  get shop(): DbShop {
    return this.#open.shop;
  }
  get practice(): boolean {
    return this.shop.practice;
  }
  get folder(): string {
    return this.shop.folder;
  }

  call(operation: string, input: unknown, caller: Caller, options?: CallOptions): Promise<Answer> {
    return this.#counted(() => this.shop.call(operation, input, caller, options));
  }

  enter(person: string, code: string): Promise<Answer> {
    return this.#counted(() => this.shop.enter(person, code));
  }

  onChange(listener: (rooms: string[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Lets `next` put another shop in this one's place, once what is in hand is answered; who asks meanwhile waits. Where it
   * throws, the shop that it leaves must still be open.
   */
  async change(next: (open: OpenShop) => Promise<OpenShop>): Promise<void> {
    const before = this.#gate;
    let go = () => {};
    this.#gate = new Promise((done) => {
      go = done;
    });
    try {
      await before;
      await Promise.allSettled(this.#inHand);
      const standing = this.#open;
      this.#open = await next(standing);
      if (this.#open !== standing) this.#listen();
    } finally {
      go();
    }
    for (const listener of this.#listeners) listener(['shop']);
  }

  /** As {@link OpenShop.close}. */
  async close(): Promise<void> {
    await this.#gate;
    await this.#open.close();
  }

  #listen(): void {
    this.#open.shop.onChange((rooms) => {
      for (const listener of this.#listeners) listener(rooms);
    });
  }

  async #counted<T>(work: () => Promise<T>): Promise<T> {
    await this.#gate;
    const answer = work();
    this.#inHand.add(answer);
    try {
      return await answer;
    } finally {
      this.#inHand.delete(answer);
    }
  }
}
