/** What may be taken out of the shop when somebody asks for it. */
export const MAY_GO = ['note', 'others', 'told', 'habits', 'reminders', 'contact', 'name'] as const;
export type MayGo = (typeof MAY_GO)[number];

/** What stays whatever is asked, or for so long. */
export const STAYS = ['papers', 'orders', 'cars', 'contact', 'name', 'trail', 'copies'] as const;
export type Stays = (typeof STAYS)[number];

/** Why something stays. */
export const STAY_WHYS = ['years', 'open', 'of-the-car', 'digests', 'made-before'] as const;
export type StayWhy = (typeof STAY_WHYS)[number];

/** What is kept of a person, counted; civil dates 'YYYY-MM-DD'. */
export interface KeptOf {
  readonly today: string;
  /** The shop's own setting. */
  readonly years: number;
  readonly hasName: boolean;
  /** Phones, address and the like that are filled in. */
  readonly contacts: number;
  /** People who may say yes for them. */
  readonly others: number;
  readonly hasNote: boolean;
  /** Calls, messages and answers to reminders with words. */
  readonly words: number;
  /** Tries that show when they answer. */
  readonly tries: number;
  readonly openReminders: number;
  readonly orders: number;
  readonly cars: number;
  /** Days of issue of every paper that was made out to them. */
  readonly papers: readonly string[];
  /** An order that is not settled, or money owed either way. */
  readonly open: boolean;
}

export interface Going {
  readonly what: MayGo;
  readonly n: number;
}
export interface Staying {
  readonly what: Stays;
  readonly why: StayWhy;
  readonly n: number;
  /** The last day of it, where it ends. */
  readonly until: string | null;
}

/** The last day that a paper is kept: so many whole years after the one it was issued in, to its end. */
export const keptUntil = (issuedOn: string, years: number): string => `${Number(issuedOn.slice(0, 4)) + years}-12-31`;

/**
 * What may go and what must stay, each with its reason, before anything goes. Ways to reach somebody stay while an order or
 * a sum is open; the name stays also while a paper that names them must be kept, so that the books can be read.
 */
export function takeOutOf(kept: KeptOf): { readonly goes: readonly Going[]; readonly stays: readonly Staying[] } {
  const last = kept.papers.toSorted().at(-1);
  const until = last === undefined ? null : keptUntil(last, kept.years);
  const papersKept = until !== null && until >= kept.today;
  const goes: Going[] = [];
  const stays: Staying[] = [];
  const go = (what: MayGo, n: number) => {
    if (n > 0) goes.push({ what, n });
  };
  const stay = (what: Stays, why: StayWhy, n: number, end: string | null) => {
    if (n > 0) stays.push({ what, why, n, until: end });
  };
  go('note', kept.hasNote ? 1 : 0);
  go('others', kept.open ? 0 : kept.others);
  go('told', kept.words);
  go('habits', kept.tries);
  go('reminders', kept.openReminders);
  if (kept.open) stay('contact', 'open', kept.contacts + kept.others, null);
  else go('contact', kept.contacts);
  if (kept.open) stay('name', 'open', kept.hasName ? 1 : 0, null);
  else if (papersKept) stay('name', 'years', kept.hasName ? 1 : 0, until);
  else go('name', kept.hasName ? 1 : 0);
  stay('papers', 'years', kept.papers.length, until);
  stay('orders', 'years', kept.orders, until);
  stay('cars', 'of-the-car', kept.cars, null);
  stay('trail', 'digests', 1, null);
  stay('copies', 'made-before', 1, null);
  return { goes, stays };
}
