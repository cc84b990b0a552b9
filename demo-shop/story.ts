import type { InputOf, OperationName, OutputOf } from '../core/contract/index.ts';
import type { Shop } from '../electron/dispatch.ts';
import type { PersonName } from './garage.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

const isWeekend = (at: number): boolean => [0, 6].includes(new Date(at).getUTCDay());
const civilDate = (at: number): string => new Date(at).toISOString().slice(0, 10);

/** Told how far the playing is; throwing stops it after what is in hand. */
export type Watch = (what: 'scenes' | 'orders', done: number, of: number) => void | Promise<void>;

interface Scene {
  readonly at: number;
  readonly play: () => Promise<void>;
}

/**
 * The weeks of a garage as scenes, each at its instant. Orders write their own scenes; the story plays all of them in
 * the order of time, so that numbers and the trail run as they would have.
 */
export class Story {
  /** The instant that the story ends at, epoch milliseconds. */
  readonly end: number;
  readonly #shop: Shop;
  readonly #scenes: Scene[] = [];
  readonly #people = new Map<string, string>();
  #now = 0;

  constructor(shop: Shop, end: number) {
    this.#shop = shop;
    this.end = end;
  }

  /** Midnight of the story's last day; the last scenes are within eight hours of its end. */
  get #lastDay(): number {
    return Math.floor((this.end - 480 * MINUTE) / DAY) * DAY;
  }

  /** The instant of a UTC wall time on the n-th working day before the last day. */
  day(n: number, wall: string): number {
    let midnight = this.#lastDay;
    for (let left = n; left > 0; ) {
      midnight -= DAY;
      if (!isWeekend(midnight)) left -= 1;
    }
    const [hours = 0, minutes = 0] = wall.split(':').map(Number);
    return midnight + (hours * 60 + minutes) * MINUTE;
  }

  /** So many minutes before the end, at most 480. */
  ago(minutes: number): number {
    return this.end - minutes * MINUTE;
  }

  /** The civil date of the first working day after the end. */
  get tomorrow(): string {
    let day = this.end + DAY;
    while (isWeekend(day)) day += DAY;
    return civilDate(day);
  }

  /** The civil date of the last working day before the last day. */
  get yesterday(): string {
    return civilDate(this.day(1, '00:00'));
  }

  scene(at: number, play: () => Promise<void>): void {
    this.#scenes.push({ at, play });
  }

  know(people: readonly { readonly name: string; readonly id: string }[]): void {
    for (const { name, id } of people) this.#people.set(name, id);
  }

  /** The id of somebody of the garage. Throws for a stranger. */
  personId(name: PersonName): string {
    const id = this.#people.get(name);
    if (id === undefined) throw new Error(`${name} does not work here`);
    return id;
  }

  /** One operation at the instant of the scene. Throws with the refusal when the shop says no. */
  async did<N extends OperationName>(as: PersonName | null, operation: N, input: InputOf<N>): Promise<OutputOf<N>> {
    const personId = as === null ? null : this.personId(as);
    const answer = await this.#shop.call(operation, input, { personId, device: 'demo' }, { at: this.#now });
    if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
    return answer.output as OutputOf<N>;
  }

  /** Plays every scene in the order of time; `watch` hears before each how many are done. */
  async play(watch: Watch = () => {}): Promise<void> {
    for (const [done, scene] of this.#scenes.toSorted((a, b) => a.at - b.at).entries()) {
      await watch('scenes', done, this.#scenes.length);
      this.#now = scene.at;
      await scene.play();
    }
    this.#now = this.end;
  }
}
