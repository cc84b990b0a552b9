import type { Transaction } from 'kysely';
import type { z } from 'zod';
import type { OperationName, OutputOf, ParsedInputOf } from '../core/contract/index.ts';
import type { shopSettings } from '../core/contract/shop.ts';
import type { StatementRuns } from './books/runs.ts';
import type { Tables } from './tables.ts';
import type { ShopWarning } from './warnings.ts';
import type { Writer } from './writer.ts';

export type Settings = z.output<typeof shopSettings>;
export type Tx = Transaction<Tables>;

export interface Who {
  readonly id: string;
  readonly name: string;
  readonly role: 'owner' | 'desk' | 'mechanic';
}

/** What every operation is handed: its transaction, the hour, who asks, and the shop's settings. */
export interface Context {
  readonly tx: Tx;
  /** Notes what it writes for the trail; an ask has none to write with. */
  readonly write: Writer;
  readonly now: number;
  /** Today's civil date in the shop's zone. */
  readonly today: string;
  readonly practice: boolean;
  readonly folder: string;
  readonly warnings: readonly ShopWarning[];
  readonly settings: Settings | null;
  readonly who: Who | null;
  readonly seesPrices: boolean;
  readonly seesCost: boolean;
  /** Statements that are being made beside the desk. */
  readonly runs: StatementRuns;
  /** Done once this transaction is kept, and only then. */
  readonly afterwards: (what: () => void) => void;
}

export type Handler<N extends OperationName> = (input: ParsedInputOf<N>, context: Context) => Promise<OutputOf<N>>;
export type Handlers = { readonly [N in OperationName]?: Handler<N> };
