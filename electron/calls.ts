import { z } from 'zod';
import type { Answer, ShopError } from '../core/contract/errors.ts';
import { problemsOf } from '../db/problem.ts';
import type { Codes } from './codes.ts';
import { type Counter, personIdOf } from './counter.ts';

/** One call as a script writes it. */
export const callLine = z.strictObject({
  operation: z.string().min(1),
  input: z.unknown().default({}),
  /** Who calls, by name or id. */
  as: z.string().min(1).optional(),
  /** Epoch milliseconds; a practice shop only. */
  at: z.int().optional(),
  request: z.string().optional(),
});
export type CallLine = z.output<typeof callLine>;

/** Makes calls for people who have shown their code; each person is asked for it once. */
export class Calls {
  readonly #counter: Counter;
  readonly #codes: Codes;
  readonly #entered = new Map<string, string>();

  constructor(counter: Counter, codes: Codes) {
    this.#counter = counter;
    this.#codes = codes;
  }

  async make(line: CallLine): Promise<Answer> {
    let personId: string | null = null;
    if (line.as !== undefined) {
      const entered = await this.#enter(line.as);
      if (typeof entered !== 'string') return entered;
      personId = entered;
    }
    return this.#counter.call(line.operation, line.input, personId, {
      ...(line.request === undefined ? {} : { request: line.request }),
      ...(line.at === undefined ? {} : { at: line.at }),
    });
  }

  async #enter(person: string): Promise<string | Answer> {
    const known = this.#entered.get(person);
    if (known !== undefined) return known;
    const code = await this.#codes.of(person);
    if (code === null) return { ok: false, error: { code: 'not-allowed', why: 'no-code', with: { person } } };
    const entered = await this.#counter.enter(person, code);
    if (!entered.ok) return entered;
    const id = personIdOf(entered.output);
    this.#entered.set(person, id);
    return id;
  }
}

/** One line of a batch: its number in the file, and the call, or the refusal that a line which is no call is answered with. */
export interface BatchLine {
  readonly number: number;
  readonly call: CallLine | Answer;
}

/** The lines of a batch, in order; empty ones count but are no calls. */
export function readBatch(text: string): BatchLine[] {
  return text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => line.trim() !== '')
    .map(({ line, number }) => ({ number, call: readLine(line, number) }));
}

function readLine(line: string, number: number): CallLine | Answer {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    return bad([{ path: `line ${number}`, problem: 'not-json', with: { why } }]);
  }
  const read = callLine.safeParse(value);
  if (read.success) return read.data;
  return bad(problemsOf(read.error.issues).map((each) => ({ ...each, path: `line ${number} ${each.path}`.trim() })));
}

const bad = (fields: Extract<ShopError, { code: 'bad-input' }>['fields']): Answer => ({
  ok: false,
  error: { code: 'bad-input', fields },
});
