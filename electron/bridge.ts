import type { IpcRenderer } from 'electron';
import { CHANNELS } from './channels.ts';
import type { Hand } from './hands.ts';

/** What the window finds at `window.crownwheel`: its questions and two ears, no channel of its own choosing. */
export function makeBridge(ipc: Pick<IpcRenderer, 'invoke' | 'on' | 'off'>) {
  return {
    call: (body: unknown) => ipc.invoke(CHANNELS.call, body),
    enter: (person: string, code: string) => ipc.invoke(CHANNELS.enter, { person, code }),
    leave: () => ipc.invoke(CHANNELS.leave),
    who: () => ipc.invoke(CHANNELS.who),
    begin: (body: unknown) => ipc.invoke(CHANNELS.begin, body),
    pickCopy: () => ipc.invoke(CHANNELS.pickCopy),
    openPaper: (id: string) => void ipc.invoke(CHANNELS.paper, id),
    hand: (cell: string | null) => ipc.invoke(CHANNELS.hand, { cell }),
    onHands(listener: (hands: readonly Hand[]) => void) {
      const hear = (_event: unknown, hands: readonly Hand[]) => listener(hands);
      ipc.on(CHANNELS.hands, hear);
      return () => void ipc.off(CHANNELS.hands, hear);
    },
    onChange(listener: (rooms: readonly string[]) => void) {
      // The event itself stays here: it carries the sender.
      const hear = (_event: unknown, rooms: readonly string[]) => listener(rooms);
      ipc.on(CHANNELS.change, hear);
      return () => void ipc.off(CHANNELS.change, hear);
    },
  };
}
