import { create } from 'zustand';
import { type Hand, sendHand } from './transport.ts';

/** Who else is in which cell, by the cell's name. */
export const useHands = create<{ readonly others: ReadonlyMap<string, string> }>(() => ({ others: new Map() }));

export function hear(hands: readonly Hand[]): void {
  useHands.setState({ others: new Map(hands.map(({ cell, name }) => [cell, name])) });
}

let soon: ReturnType<typeof setTimeout> | undefined;

/** This window's hand is in that cell now, or in none. From one cell to the next is one move. */
export function takeInHand(cell: string | null): void {
  clearTimeout(soon);
  soon = setTimeout(() => void sendHand(cell), 30);
}
