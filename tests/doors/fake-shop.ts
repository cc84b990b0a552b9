import type { Answer } from '../../core/contract/errors.ts';
import type { Caller, CallOptions, Shop } from '../../electron/dispatch.ts';

export interface Made {
  readonly operation: string;
  readonly input: unknown;
  readonly caller: Caller;
  readonly options: CallOptions | undefined;
}

/** A shop that knows two people and notes what it is asked: the doors are tested, not what lies behind them. */
export class FakeShop implements Shop {
  readonly practice = true;
  readonly folder = '/somewhere/shop';
  readonly made: Made[] = [];
  closed = 0;
  readonly #listeners = new Set<(rooms: string[]) => void>();

  async call(operation: string, input: unknown, caller: Caller, options?: CallOptions): Promise<Answer> {
    this.made.push({ operation, input, caller, options });
    if (operation === 'paper.read') {
      const { id } = input as { id: string };
      if (caller.personId === null) return { ok: false, error: { code: 'not-allowed', why: 'sign-in' } };
      if (id !== 'paper-1') return { ok: false, error: { code: 'not-found', what: 'paper', id } };
      return {
        ok: true,
        output: { name: 'Rechnung 7 – Köhler.pdf', base64: Buffer.from('%PDF-1.7 x').toString('base64') },
      };
    }
    if (operation === 'break.it') throw new Error('secret inside');
    if (operation === 'no.such') return { ok: false, error: { code: 'unknown-operation', operation } };
    if (operation === 'customer.add') for (const listener of this.#listeners) listener(['customer']);
    return { ok: true, output: { operation, by: caller.personId } };
  }

  async enter(person: string, code: string): Promise<Answer> {
    const known = { Nadja: '4711', Ole: '1234' }[person];
    if (known !== code) return { ok: false, error: { code: 'not-allowed', why: 'code' } };
    return { ok: true, output: { personId: `id-${person}`, name: person, role: 'desk' } };
  }

  onChange(listener: (rooms: string[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async close(): Promise<void> {
    this.closed += 1;
  }
}
