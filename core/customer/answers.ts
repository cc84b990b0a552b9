/** One time that somebody tried to reach a customer, or was reached by them. */
export interface Try {
  /** Minutes since midnight on the shop's wall clock. */
  readonly minute: number;
  readonly way: 'message' | 'phone';
  readonly answered: boolean;
}

/** Two hours of the day at which a customer answers more often than otherwise. */
export interface BestHours {
  /** Minutes since midnight. */
  readonly from: number;
  readonly to: number;
  readonly answered: number;
  readonly tries: number;
}

/** Fewer tries, or fewer answers among the best hours, are not judged: common practice, no source. */
export const FEWEST_TRIES = 6;
export const FEWEST_ANSWERS = 3;
const SPAN = 120;
const STEP = 30;
const DAY = 24 * 60;

/**
 * The two hours of the day, beginning on a half hour, at which a customer is best asked: those with the best share of
 * answers, counted with one answer and one silence more than there were, so that few tries do not look like certainty.
 * Where several are alike the one with more answers, then the earlier. null where there are too few tries, too few
 * answers, or where no hours are better than the day as a whole.
 */
export function bestHours(tries: readonly Try[]): BestHours | null {
  if (tries.length < FEWEST_TRIES) return null;
  const share = (answered: number, all: number) => (answered + 1) / (all + 2);
  const count = (some: readonly Try[]) => some.filter((one) => one.answered).length;
  const whole = share(count(tries), tries.length);
  let best: BestHours | null = null;
  for (let from = 0; from + SPAN <= DAY; from += STEP) {
    const inside = tries.filter((one) => one.minute >= from && one.minute < from + SPAN);
    const answered = count(inside);
    if (answered < FEWEST_ANSWERS || share(answered, inside.length) <= whole) continue;
    const before = best === null ? 0 : share(best.answered, best.tries);
    const here = share(answered, inside.length);
    if (best !== null && (here < before || (here === before && answered <= best.answered))) continue;
    best = { from, to: from + SPAN, answered, tries: inside.length };
  }
  return best;
}

/** A word that went to a customer and asks for an answer, or one that came from them. */
export interface Word {
  readonly at: number;
  readonly from: 'us' | 'them';
}

/** So long after a message an answer still belongs to it. Common practice, no source. */
const ANSWER_MS = 12 * 60 * 60_000;

/**
 * Messages that asked something, as tries by the instant at which they count: an answer when it came, a message that
 * nobody answered within twelve hours when it went out. What was answered is counted once, by its answer; one that is
 * younger than that and still without an answer is not counted yet. Instants in epoch milliseconds.
 */
export function answeredWords(words: readonly Word[], now: number): { at: number; answered: boolean }[] {
  const came = words.filter((word) => word.from === 'them').map((word) => word.at);
  const silent = words.filter(
    (word) =>
      word.from === 'us' &&
      now - word.at > ANSWER_MS &&
      !came.some((answer) => answer >= word.at && answer - word.at <= ANSWER_MS),
  );
  return [...came.map((at) => ({ at, answered: true })), ...silent.map(({ at }) => ({ at, answered: false }))].sort(
    (a, b) => a.at - b.at,
  );
}
