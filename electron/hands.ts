/** A cell that somebody has in hand: who, and the window's name for the cell. */
export interface Hand {
  readonly name: string;
  readonly cell: string;
}

/**
 * Which cell each open window has in hand, so that the others can say so at its edge. In memory only: it is worth nothing
 * a minute later, and it holds nobody up. What keeps two people from writing over each other is the row's revision.
 */
export class Hands {
  readonly #held = new Map<object, Hand>();
  readonly #listeners = new Set<() => void>();

  /** This window has the cell in hand now; null: none. */
  take(window: object, hand: Hand | null): void {
    const before = this.#held.get(window);
    if (before?.cell === hand?.cell && before?.name === hand?.name) return;
    if (hand === null) this.#held.delete(window);
    else this.#held.set(window, hand);
    for (const listener of this.#listeners) listener();
  }

  /** What every other window has in hand. */
  others(window: object): readonly Hand[] {
    return [...this.#held].flatMap(([one, hand]) => (one === window ? [] : [hand]));
  }

  /** Told whenever a hand moved; returns how to stop listening. */
  onMove(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }
}
