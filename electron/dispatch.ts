import type { Answer } from '../core/contract/errors.ts';

/** Who calls, and through which device. */
export interface Caller {
  readonly personId: string | null;
  readonly device: string;
}

export interface CallOptions {
  /** UUIDv7: the same request twice is applied once. */
  readonly request?: string;
  /** Epoch milliseconds; accepted only in a practice shop. */
  readonly at?: number;
}

/** What every door needs of the shop. db/shop.ts is the real one; tests of the doors hand in a fake. */
export interface Shop {
  call(operation: string, input: unknown, caller: Caller, options?: CallOptions): Promise<Answer>;
  /** Checks a person's code; the output is {personId, name, role}. */
  enter(person: string, code: string): Promise<Answer>;
  onChange(listener: (rooms: string[]) => void): () => void;
  readonly practice: boolean;
  readonly folder: string;
  close(): Promise<void>;
}
