/** What is recorded of an order, as far as whose move it is goes. Instants in epoch milliseconds. */
export interface MoveFacts {
  readonly openedAt: number;
  readonly arrivedAt: number | null;
  readonly bookedFor: number | null;
  readonly cancelledAt: number | null;
  readonly handedOverAt: number | null;
  readonly promiseAt: number | null;
  readonly jobs: number;
  readonly findings: number;
  /** Findings made since work began that no job mends yet and that do not just want watching. */
  readonly unpriced: number;
  /** Jobs on the sheet that no yes covers. */
  readonly held: number;
  /** Covered jobs are over the ceiling and the allowance. */
  readonly over: boolean;
  readonly anyYes: boolean;
  /** The last quote, and whether the sheet still says the same. */
  readonly quotedAt: number | null;
  readonly quoteStands: boolean;
  readonly quoteSent: boolean;
  readonly triedAt: number | null;
  /** Since when somebody is on it: the earliest clock that runs. */
  readonly clockOnAt: number | null;
  /** The end of the last work on it. */
  readonly clockedAt: number | null;
  readonly forgottenClocks: number;
  /** Parts and outside work ordered and not here, with the earliest day due. */
  readonly awaited: {
    readonly words: string;
    readonly supplier: string;
    readonly orderedAt: number;
    readonly late: boolean;
  } | null;
  readonly workDone: boolean;
  readonly invoicedAt: number | null;
  readonly balance: number;
}

export type Whose = 'ours' | 'customer' | 'supplier' | 'nobody';
export interface NextMove {
  readonly whose: Whose;
  readonly what: string;
  readonly with: Readonly<Record<string, string | number>>;
  readonly since: number;
  readonly promise: 'none' | 'fine' | 'soon' | 'late';
}

const SOON_MS = 90 * 60_000;

/** Whose move it is once the invoice is out: nothing else that is recorded matters any more. */
export function afterInvoice({
  invoicedAt,
  handedOverAt,
  balance,
}: {
  readonly invoicedAt: number;
  readonly handedOverAt: number | null;
  readonly balance: number;
}): NextMove {
  const move = (whose: Whose, what: string, since: number, figures: NextMove['with'] = {}): NextMove => ({
    ...{ whose, what, with: figures, since },
    promise: 'none',
  });
  if (balance > 0) return move('customer', handedOverAt === null ? 'pay-and-collect' : 'pay', invoicedAt, { balance });
  if (balance < 0) return move('ours', 'give-back', invoicedAt, { balance: -balance });
  return handedOverAt === null ? move('customer', 'collect', invoicedAt) : move('nobody', 'settled', handedOverAt);
}

/**
 * Whose move it is and the next thing to do, from what is recorded alone: nobody sets a status. The first rule that holds
 * answers. `now` in epoch milliseconds.
 */
export function nextMove(facts: MoveFacts, now: number): NextMove {
  const promise = promiseOf(facts, now);
  const move = (whose: Whose, what: string, since: number, figures: NextMove['with'] = {}): NextMove => ({
    whose,
    what,
    with: figures,
    since,
    promise,
  });

  if (facts.invoicedAt !== null) return { ...afterInvoice({ ...facts, invoicedAt: facts.invoicedAt }), promise };
  if (facts.forgottenClocks > 0)
    return move('ours', 'put-clock-right', facts.clockedAt ?? facts.openedAt, { clocks: facts.forgottenClocks });
  if (facts.cancelledAt !== null) {
    if (facts.anyYes && facts.jobs > 0) return move('ours', 'close-out-cancelled', facts.cancelledAt);
    if (facts.balance < 0) return move('ours', 'give-back', facts.cancelledAt, { balance: -facts.balance });
    return facts.arrivedAt !== null && facts.handedOverAt === null
      ? move('customer', 'collect', facts.cancelledAt)
      : move('nobody', 'cancelled', facts.cancelledAt);
  }
  if (facts.handedOverAt !== null) {
    if (facts.jobs > 0) return move('ours', 'close-out', facts.handedOverAt);
    return facts.balance < 0
      ? move('ours', 'give-back', facts.handedOverAt, { balance: -facts.balance })
      : move('nobody', 'left-without-work', facts.handedOverAt);
  }
  if (facts.arrivedAt === null) {
    const due = facts.bookedFor;
    return due !== null && due < now
      ? move('customer', 'was-expected', due)
      : move('customer', 'bring-it-in', facts.openedAt);
  }
  if (facts.unpriced > 0 && facts.jobs > 0)
    return move('ours', 'price-finding', facts.clockOnAt ?? facts.clockedAt ?? facts.arrivedAt, {
      findings: facts.unpriced,
    });
  if (facts.clockOnAt !== null)
    return move('ours', facts.jobs > facts.held ? 'work-goes-on' : 'looking', facts.clockOnAt);
  if (facts.jobs === 0)
    return facts.findings > 0
      ? move('ours', 'write-up-quote', facts.arrivedAt)
      : move('ours', 'find-out', facts.arrivedAt);
  if (facts.held > 0 || facts.over) {
    if (facts.anyYes && facts.over && facts.held === 0)
      return move('ours', 'ring-about-excess', facts.clockedAt ?? facts.arrivedAt);
    if (facts.quotedAt === null || !facts.quoteStands)
      return move('ours', facts.anyYes ? 'ring-about-extra' : 'write-up-quote', facts.triedAt ?? facts.arrivedAt);
    // A try before this quote told nobody of it.
    const told = facts.triedAt !== null && facts.triedAt >= facts.quotedAt ? facts.triedAt : null;
    if (!facts.quoteSent && told === null) return move('ours', 'send-quote', facts.quotedAt);
    return move('customer', 'say-yes', told ?? facts.quotedAt);
  }
  if (facts.awaited)
    return move('supplier', 'deliver', facts.awaited.orderedAt, {
      words: facts.awaited.words,
      supplier: facts.awaited.supplier,
      late: facts.awaited.late ? 1 : 0,
    });
  if (facts.workDone) return move('ours', 'close-out', facts.clockedAt ?? facts.arrivedAt);
  return move('ours', facts.clockedAt === null ? 'start-work' : 'carry-on', facts.clockedAt ?? facts.arrivedAt);
}

function promiseOf(facts: MoveFacts, now: number): NextMove['promise'] {
  if (
    facts.promiseAt === null ||
    facts.handedOverAt !== null ||
    facts.cancelledAt !== null ||
    facts.invoicedAt !== null
  )
    return 'none';
  if (facts.promiseAt < now) return 'late';
  return facts.promiseAt - now <= SOON_MS ? 'soon' : 'fine';
}
