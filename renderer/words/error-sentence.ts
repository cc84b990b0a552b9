import type { HeldReason } from '../../core/contract/held.ts';
import type { CallError } from '../state/transport.ts';
import { amountText, PLAIN_WRITING, type Writing } from './figures.ts';
import { type Figures, t, tMaybe } from './t.ts';

/** Figures of a reason that are sums in minor units. */
const SUMS: ReadonlySet<string> = new Set([
  ...['excess', 'sum', 'amount', 'balance', 'ceiling', 'gross'],
  ...['maximum', 'fits', 'upTo', 'open', 'held', 'over'],
]);

/** The figures that come with a key, with its sums written as the shop writes them. */
export function figureWords(figures: Figures, writing: Writing): Figures {
  return Object.fromEntries(
    Object.entries(figures).map(([name, value]) => [
      name,
      SUMS.has(name) && typeof value === 'number' ? amountText(value, writing) : value,
    ]),
  );
}

/** Why something is held, as one sentence. */
export function heldSentence(reason: HeldReason, writing: Writing = PLAIN_WRITING): string {
  const figures = figureWords(reason.with, writing);
  return tMaybe(`held.${reason.what}`, figures) ?? t('held.other', { what: reason.what });
}

/** What does not fit with one field, as the end of a sentence. */
export function problemSentence(problem: string, figures: Figures = {}): string {
  return tMaybe(`errors.problem-${problem}`, figures) ?? t('errors.problem');
}

/** One sentence for an error: what is wrong and what now. */
export function errorSentence(error: CallError, writing: Writing = PLAIN_WRITING): string {
  switch (error.code) {
    case 'bad-input': {
      const [only, another] = error.fields;
      const problem = only && another === undefined ? tMaybe(`errors.problem-${only.problem}`, only.with) : null;
      return problem === null ? t('errors.bad-input') : t('errors.bad-input-one', { problem });
    }
    case 'held':
      return t('errors.held', { reasons: error.reasons.map((reason) => heldSentence(reason, writing)).join(' ') });
    case 'not-allowed': {
      if (error.why !== 'role')
        return tMaybe(`errors.not-allowed-${error.why}`) ?? t('errors.not-allowed', { who: '' });
      const needs = String(error.with?.needs ?? '');
      return t('errors.not-allowed', { who: tMaybe(`errors.not-allowed-${needs}`) ?? '' });
    }
    case 'period-locked':
      return t('errors.period-locked', { day: error.lockedTo });
    case 'damaged':
      return t('errors.damaged', { detail: error.detail });
    case 'unknown-fault':
      return t('errors.unknown-fault', { id: error.id });
    default:
      return t(`errors.${error.code}`);
  }
}
