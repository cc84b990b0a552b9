import { create } from 'zustand';

/** Settings of this machine alone: they live in the window's own store, not in the shop. */
export interface MachineSettings {
  readonly light: 'day' | 'bay';
  /** Of the text, in percent: 100 to 200. */
  readonly textSize: number;
  /** Single letters work as keys when no field has focus. */
  readonly letters: boolean;
}

const STORE = 'crownwheel-machine';
const USUAL: MachineSettings = { light: 'day', textSize: 100, letters: true };

function read(): MachineSettings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(STORE) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return USUAL;
    const { light, textSize, letters } = kept as Partial<Record<keyof MachineSettings, unknown>>;
    return {
      light: light === 'bay' ? 'bay' : 'day',
      textSize: typeof textSize === 'number' && textSize >= 100 && textSize <= 200 ? textSize : 100,
      letters: letters !== false,
    };
  } catch {
    return USUAL;
  }
}

export const useMachine = create<MachineSettings>(read);

/** Changes and keeps a setting of this machine. */
export function setMachine(change: Partial<MachineSettings>): void {
  useMachine.setState(change);
  try {
    localStorage.setItem(STORE, JSON.stringify(useMachine.getState()));
  } catch {
    // A browser that keeps nothing: the setting holds until the window closes.
  }
}
