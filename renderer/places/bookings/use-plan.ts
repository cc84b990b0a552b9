import { useState } from 'react';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallError } from '../../state/transport.ts';
import { useDo } from '../../state/use-do.ts';
import { readHours } from '../book-in/draft.ts';
import type { Place, Planned } from './plan.ts';

/** What is moved just now, and where it would go. */
export interface Hand {
  /** null: a bay that is to be kept free, not booked yet. */
  readonly one: Planned | null;
  readonly place: Place;
  /** As typed; what cannot be read leaves the place's hours as they were. */
  readonly hours: string;
  /** Of the shop's own booking. */
  readonly words: string;
}

/** What was done last, and how it is taken back. */
export interface Done {
  readonly what: 'moved' | 'kept' | 'takenOut' | 'noted' | 'notedCame';
  /** The booking. */
  readonly id: string;
  readonly one: { readonly name: string; readonly place: Place };
  readonly undo: (() => Promise<void>) | null;
}

export interface Plan {
  readonly hand: Hand | null;
  readonly done: Done | null;
  readonly error: CallError | null;
  readonly busy: boolean;
  readonly take: (one: Planned | null, place: Place) => void;
  readonly put: (place: Place) => void;
  readonly type: (part: Partial<Pick<Hand, 'hours' | 'words'>>) => void;
  readonly leave: () => void;
  /** Puts down what is in hand; false where something is missing. */
  readonly save: () => Promise<boolean>;
  /** A booking that was let go of somewhere by the mouse. */
  readonly drop: (one: Planned, place: Place) => Promise<void>;
  readonly noShow: (one: Planned) => Promise<void>;
  readonly takeOut: (one: Planned) => Promise<void>;
}

const placeOf = ({ bayId, day, from, hours, personId }: Place): Place => ({ bayId, day, from, hours, personId });
const same = (a: Place, b: Place) => JSON.stringify(placeOf(a)) === JSON.stringify(placeOf(b));

/** The plan in hand: one booking is moved at a time; what was done last can be put back. */
export function usePlan(): Plan {
  const { decimal } = useWriting();
  const [hand, setHand] = useState<Hand | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const change = useDo('booking.change');
  const changeOwn = useDo('booking.changeInternal');
  const add = useDo('booking.addInternal');
  const out = useDo('booking.takeOut');
  const missed = useDo('booking.noShow');
  const doings = [change, changeOwn, add, out, missed];

  /** Writes a place; the new revision, or null where it was refused. */
  const write = async (one: Planned, place: Place, words: string): Promise<number | null> => {
    for (const doing of doings) doing.clear();
    const answer = one.own
      ? await changeOwn.run({ id: one.id, revision: one.revision, booking: { ...place, words } })
      : await change.run({ orderId: one.orderId, revision: one.revision, booking: place });
    if (answer.ok) return answer.output.revision;
    // Somebody moved it meanwhile: that is said; whoever puts it down once more knows it.
    if (answer.error.code === 'changed-meanwhile') {
      const { revision } = answer.error;
      setHand((before) => (before?.one?.id === one.id ? { ...before, one: { ...before.one, revision } } : before));
    }
    return null;
  };
  const move = async (one: Planned, place: Place, words: string): Promise<boolean> => {
    const revision = await write(one, placeOf(place), words);
    if (revision === null) return false;
    const undo = async () => {
      if ((await write({ ...one, revision }, placeOf(one), one.name)) !== null) setDone(null);
    };
    setDone({ what: 'moved', id: one.id, one: { name: one.own ? words : one.name, place }, undo });
    setHand(null);
    return true;
  };
  const removeOwn = async (id: string, revision: number) => {
    for (const doing of doings) doing.clear();
    return (await out.run({ id, revision })).ok;
  };

  const save = async (): Promise<boolean> => {
    if (hand === null || readHours(hand.hours) === null) return false;
    const { one, place } = hand;
    const words = hand.words.trim();
    if (one !== null && !one.own) {
      if (!same(one, place)) return move(one, place, one.name);
      setHand(null);
      return true;
    }
    if (words === '') return false;
    if (one !== null) return move(one, place, words);
    for (const doing of doings) doing.clear();
    const answer = await add.run({ booking: { ...placeOf(place), words } });
    if (!answer.ok) return false;
    const { id, revision } = answer.output;
    const undo = async () => {
      if (await removeOwn(id, revision)) setDone(null);
    };
    setDone({ what: 'kept', id, one: { name: words, place }, undo });
    setHand(null);
    return true;
  };

  return {
    hand,
    done,
    error: doings.find((doing) => doing.error !== null)?.error ?? null,
    busy: doings.some((doing) => doing.busy),
    take: (one, place) => {
      setHand({
        ...{ one, place: placeOf(place), hours: formatQuantity(place.hours, decimal) },
        words: one?.own === true ? one.name : '',
      });
    },
    put: (place) => setHand((before) => (before === null ? null : { ...before, place: placeOf(place) })),
    type: (part) =>
      setHand((before) => {
        if (before === null) return null;
        const hours = part.hours === undefined ? null : readHours(part.hours);
        return { ...before, ...part, place: hours === null ? before.place : { ...before.place, hours } };
      }),
    leave: () => {
      for (const doing of doings) doing.clear();
      setHand(null);
    },
    save,
    drop: async (one, place) => {
      if (!same(one, place)) await move(one, place, one.name);
    },
    noShow: async (one) => {
      for (const doing of doings) doing.clear();
      const came = one.look === 'no-show';
      const { ok } = await missed.run({ orderId: one.orderId, revision: one.revision, came });
      if (!ok) return;
      setDone({ what: came ? 'notedCame' : 'noted', id: one.id, one: { name: one.name, place: one }, undo: null });
      setHand(null);
    },
    takeOut: async (one) => {
      if (!(await removeOwn(one.id, one.revision))) return;
      const undo = async () => {
        if ((await add.run({ booking: { ...placeOf(one), words: one.name } })).ok) setDone(null);
      };
      setDone({ what: 'takenOut', id: one.id, one: { name: one.name, place: one }, undo });
      setHand(null);
    },
  };
}
