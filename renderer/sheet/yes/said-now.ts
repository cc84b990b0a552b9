import { create } from 'zustand';

/** The yes or no recorded last at this window: said once beside the sheet. A yes has no undo, only a next one. */
export interface SaidNow {
  readonly orderId: string;
  readonly decisionId: string;
  /** Minor units; null where nothing was said yes to. */
  readonly ceiling: number | null;
}

export const useSaidNow = create<{ readonly last: SaidNow | null }>(() => ({ last: null }));

export function rememberSaid(last: SaidNow | null): void {
  useSaidNow.setState({ last });
}
