import { useRef, useState } from 'react';
import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { base64Of } from '../../bench/photo-file.ts';
import { refresh } from '../../state/asks.ts';
import { act, type DoName } from '../../state/call.ts';
import { newRequestId } from '../../state/request-id.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import type { CallAnswer, CallError } from '../../state/transport.ts';
import { t } from '../../words/t.ts';
import { arrivalOf } from './coming.ts';
import { bookingOf, type Draft, sumOf } from './draft.ts';
import { photosOf, walkOf } from './mark-draft.ts';

/** What is done one after the other: the order, the walk round the car, its photos, a yes to look with its job, a deposit. */
type Step = 'book' | 'walk' | 'photos' | 'look' | 'yes' | 'deposit';

interface Stopped {
  readonly step: Step;
  readonly error: CallError;
}

interface Booked {
  readonly id: string;
  readonly number: number;
  readonly carId: string;
}

export interface BookingIn {
  /** Runs what is not done yet; the order's id once all of it is. */
  readonly run: (draft: Draft) => Promise<string | null>;
  readonly busy: boolean;
  readonly stopped: Stopped | null;
  /** The order once it is booked or taken in, also where a later step stopped. */
  readonly booked: Booked | null;
  readonly clear: () => void;
}

/**
 * Books a car in, or takes in one that was booked before (`coming`), with what was agreed at the door. Each step is done once: where one stops, the ones before it stand,
 * and running again goes on from there. The same step with the same input is sent under the same request id.
 */
export function useBookIn(coming: OutputOf<'order.get'> | null = null): BookingIn {
  const [busy, setBusy] = useState(false);
  const [stopped, setStopped] = useState<Stopped | null>(null);
  const [booked, setBooked] = useState<Booked | null>(null);
  const done = useRef(new Map<string, unknown>());
  const requests = useRef(new Map<string, string>());
  const writing = useWriting();
  const rates = useShop()?.rates ?? [];

  /** `which` tells apart what one step does several times. */
  async function once<N extends DoName>(
    step: Step,
    operation: N,
    input: InputOf<N>,
    which = '',
  ): Promise<CallAnswer<OutputOf<N>>> {
    const before = done.current.get(step + which);
    if (before !== undefined) return { ok: true, output: before as OutputOf<N> };
    const key = `${step}${which} ${JSON.stringify(input)}`;
    const request = requests.current.get(key) ?? newRequestId();
    requests.current.set(key, request);
    const answer = await act(operation, input, request);
    if (answer.ok) done.current.set(step + which, answer.output);
    else setStopped({ step, error: answer.error });
    return answer;
  }

  async function begin(draft: Draft): Promise<Booked | null> {
    if (coming !== null) {
      const came = await once('book', 'order.arrive', arrivalOf(draft, coming, writing));
      return came.ok ? { id: coming.id, number: coming.number, carId: coming.car.id } : null;
    }
    const book = await once('book', 'order.book', bookingOf(draft, writing));
    return book.ok ? book.output : null;
  }

  async function steps(draft: Draft): Promise<string | null> {
    const order = await begin(draft);
    if (order === null) return null;
    setBooked(order);
    const orderId = order.id;
    const walk = walkOf(draft.walk, orderId);
    const walked = walk === null ? null : await once('walk', 'mark.walkRound', walk);
    if (walked?.ok === false) return null;
    for (const [at, photo] of photosOf(draft.walk, walked?.output.ids ?? [], order.carId).entries()) {
      const { of, words, address } = photo;
      const kept = { orderId, of, words, base64: base64Of(address) };
      if (!(await once('photos', 'photo.keep', kept, ` ${at}`)).ok) return null;
    }
    const look = sumOf(draft.lookUpTo, writing);
    if (look !== null) {
      const job = await once(
        'look',
        'job.add',
        lookJob(orderId, (rates.find((rate) => rate.usual) ?? rates[0])?.price ?? 0),
      );
      if (!job.ok) return null;
      const yes = await once('yes', 'decision.record', yesToLook(draft, orderId, job.output.id, look));
      if (!yes.ok) return null;
    }
    const deposit = sumOf(draft.deposit, writing);
    if (deposit !== null) {
      const paid = { orderId, kind: 'deposit', way: draft.depositWay, amount: deposit } as const;
      if (!(await once('deposit', 'payment.take', paid)).ok) return null;
    }
    return orderId;
  }

  const run = async (draft: Draft) => {
    setBusy(true);
    setStopped(null);
    const id = await steps(draft);
    setBusy(false);
    refresh();
    return id;
  };
  return { run, busy, stopped, booked, clear: () => setStopped(null) };
}

/** Looking is paid by the clock, up to what was said. */
function lookJob(orderId: string, unitPrice: number): InputOf<'job.add'> {
  const line = {
    kind: 'labour',
    words: t('intake.lookLine'),
    quantity: 0,
    unit: 'h',
    unitPrice,
    billing: 'clocked',
  } as const;
  return { orderId, job: { title: t('intake.lookJob') }, lines: [line] };
}

function yesToLook(draft: Draft, orderId: string, jobId: string, total: number): InputOf<'decision.record'> {
  return {
    orderId,
    jobs: [{ jobId, answer: 'yes' }],
    upTo: { total },
    spoken: draft.lookBy === '' ? { name: draft.name, role: 'customer' } : { name: draft.lookBy, role: 'named' },
    way: draft.lookWay,
    reached: draft.lookWay === 'phone' ? draft.phone : '',
    strokes: draft.lookWay === 'signed' ? draft.strokes : null,
  };
}
