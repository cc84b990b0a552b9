import { create } from 'zustand';

/** When this window last saved anything, epoch milliseconds; null before the first. */
export const useSaved = create<{ readonly at: number | null }>(() => ({ at: null }));

export function markSaved(): void {
  useSaved.setState({ at: Date.now() });
}
