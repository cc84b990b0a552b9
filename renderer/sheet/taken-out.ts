import { create } from 'zustand';

/** What was taken off a sheet last at this window: it can be put back until something else is. */
export interface TakenOut {
  readonly orderId: string;
  readonly kind: 'line' | 'job';
  readonly id: string;
  readonly revision: number;
  readonly words: string;
}

export const useTakenOut = create<{ readonly last: TakenOut | null }>(() => ({ last: null }));

export function rememberTakenOut(last: TakenOut | null): void {
  useTakenOut.setState({ last });
}
