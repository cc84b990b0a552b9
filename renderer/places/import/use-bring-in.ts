import { useRef, useState } from 'react';
import { guessMapping, type Mapping, sumsOf } from '../../../core/bring-in/fields.ts';
import { guessDecimal } from '../../../core/bring-in/sum.ts';
import { readTable, type Table, type TableProblem } from '../../../core/bring-in/table.ts';
import {
  type Brought,
  bringIn,
  type Desk,
  type Tried,
  takeBackAll,
  tryFile,
} from '../../../core/bring-in/whole-file.ts';
import { currencyDigits } from '../../../core/money/currency.ts';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallAnswer, CallError } from '../../state/transport.ts';

/** A file larger than this is not read, in bytes. */
const MOST = 50_000_000;

interface OpenFile {
  readonly name: string;
  readonly hash: string;
  readonly table: Table;
}

/** Long work: how far it is, and since when. */
export interface Work {
  readonly what: 'trying' | 'bringing' | 'takingBack';
  readonly done: number;
  /** 0 where nobody knows yet. */
  readonly total: number;
  readonly since: number;
}

/** The shop said no to a piece. */
class Refused extends Error {
  readonly error: CallError;
  constructor(error: CallError) {
    super(error.code);
    this.error = error;
  }
}

async function taken<O>(answer: Promise<CallAnswer<O>>): Promise<O> {
  const given = await answer;
  if (!given.ok) throw new Refused(given.error);
  return given.output;
}

const desk: Desk = {
  tryPiece: (input) => taken(ask('import.try', input)),
  begin: (input) => taken(act('import.begin', input)),
  put: (input) => taken(act('import.put', input)),
  undo: (input) => taken(act('import.undo', input)),
};

/** SHA-256 in hex; empty where the page is no secure context and cannot reckon it. */
async function hashOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  if (globalThis.crypto.subtle === undefined) return '';
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A file on its way in: chosen, tried, brought in, taken back; one of them at a time, each can be stopped. */
export function useBringIn() {
  const digits = currencyDigits(useWriting().currency) ?? 2;
  const [file, setFile] = useState<OpenFile | null>(null);
  const [unreadable, setUnreadable] = useState<TableProblem | { readonly problem: 'tooLarge' } | null>(null);
  const [mapping, setMapping] = useState<Mapping>({ columns: [], dates: 'ymd', decimal: null });
  const [tried, setTried] = useState<Tried | null>(null);
  const [brought, setBrought] = useState<Brought | null>(null);
  const [back, setBack] = useState<{ readonly gone: number; readonly kept: number } | null>(null);
  const [work, setWork] = useState<Work | null>(null);
  const [error, setError] = useState<CallError | null>(null);
  const stopping = useRef(false);

  const forget = () => {
    setTried(null);
    setBrought(null);
    setBack(null);
    setError(null);
  };
  const long = async (
    what: Work['what'],
    run: (watch: { onProgress: (done: number, total: number) => void }) => Promise<void>,
  ) => {
    stopping.current = false;
    setError(null);
    const since = Date.now();
    setWork({ what, done: 0, total: 0, since });
    try {
      await run({ onProgress: (done, total) => setWork({ what, done, total, since }) });
    } catch (fault) {
      if (!(fault instanceof Refused)) throw fault;
      setError(fault.error);
    } finally {
      setWork(null);
    }
  };
  const stopped = () => stopping.current;

  const { sums, unclear } = file === null ? { sums: [], unclear: null } : sumsOf(mapping, file.table.rows, digits);
  return {
    sums,
    /** A sum that has two readings as long as nobody says how sums are written. */
    unclear,
    digits,
    file,
    unreadable,
    mapping,
    tried,
    brought,
    back,
    work,
    error,
    choose: async (chosen: File) => {
      forget();
      setFile(null);
      setUnreadable(null);
      if (chosen.size > MOST) return setUnreadable({ problem: 'tooLarge' });
      const bytes = new Uint8Array(await chosen.arrayBuffer());
      const table = readTable(bytes);
      if ('problem' in table) return setUnreadable(table);
      setMapping(guessMapping(table.names, table.rows, digits));
      setFile({ name: chosen.name, hash: await hashOf(bytes), table });
    },
    map: (changed: Mapping) => {
      const moved = changed.columns.indexOf('visit-amount') !== mapping.columns.indexOf('visit-amount');
      const { sums: there } = sumsOf(changed, file?.table.rows ?? [], digits);
      setMapping(moved ? { ...changed, decimal: guessDecimal(there, digits) } : changed);
      forget();
    },
    stop: () => {
      stopping.current = true;
    },
    tryIt: () =>
      long('trying', async (watch) => {
        if (file === null) return;
        const found = await tryFile(file.table.rows, mapping, desk, { ...watch, stopped });
        setTried(found);
        setBrought(null);
      }),
    bring: () =>
      long('bringing', async (watch) => {
        if (file === null || tried === null) return;
        const rows = file.table.rows.filter((row) => tried.fresh.has(row.line));
        let sofar = brought;
        const onSoFar = (now: Brought) => {
          sofar = now;
        };
        try {
          const whole = { name: file.name, hash: file.hash, rows };
          sofar = await bringIn(whole, mapping, desk, { ...watch, stopped, onSoFar }, brought);
        } finally {
          // What was refused half way stands there like what was stopped: it goes on from its last row.
          setBrought(sofar);
        }
      }),
    takeBack: (id: string) =>
      long('takingBack', async (watch) => {
        setBack(await takeBackAll(id, desk, (gone) => watch.onProgress(gone, 0)));
        setTried(null);
        setBrought(null);
      }),
  };
}
