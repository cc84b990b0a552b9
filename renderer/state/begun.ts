import { create } from 'zustand';
import { forgetAll } from './asks.ts';
import { readSession } from './session.ts';

export interface DemoPerson {
  readonly name: string;
  readonly role: string;
  readonly code: string;
}

/** How this window came to its shop, told until somebody has entered: what was brought back, or the demo's codes. */
export const useBegun = create<{ readonly said: string; readonly people: readonly DemoPerson[] }>(() => ({
  said: '',
  people: [],
}));

/** Another shop stands behind the door now. */
export async function begun(how: { readonly said?: string; readonly people?: readonly DemoPerson[] }): Promise<void> {
  useBegun.setState({ said: '', people: [], ...how });
  await readSession();
  forgetAll();
}
