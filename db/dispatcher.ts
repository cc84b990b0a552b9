import type { Kysely } from 'kysely';
import type { z } from 'zod';
import type { Answer, ShopError } from '../core/contract/errors.ts';
import { type OperationName, operations } from '../core/contract/index.ts';
import type { May } from '../core/contract/operation.ts';
import { instant } from '../core/contract/scalars.ts';
import { sightOf } from '../core/contract/sight.ts';
import { civilDateOf } from '../core/time/instant.ts';
import type { StatementRuns } from './books/runs.ts';
import type { Context, Who } from './context.ts';
import { canonical, sha256 } from './digest.ts';
import { newId } from './id.ts';
import { kept } from './kept.ts';
import { handlers } from './operations/index.ts';
import { problemsOf } from './problem.ts';
import { badInput, notAllowed, Refusal } from './refusal.ts';
import { readSettings } from './settings.ts';
import type { Tables } from './tables.ts';
import { recordTrail } from './trail.ts';
import type { ShopWarning } from './warnings.ts';
import { Writer } from './writer.ts';

export interface Caller {
  readonly personId: string | null;
  readonly device: string;
}

export interface CallOptions {
  /** A do carries a request id; the same request twice is applied once and answers the same. */
  readonly request?: string | undefined;
  /** An instant of practice time, taken in practice shops only. */
  readonly at?: number | undefined;
}

export interface House {
  readonly db: Kysely<Tables>;
  readonly folder: string;
  readonly practice: boolean;
  readonly warnings: readonly ShopWarning[];
  readonly clock: () => number;
  readonly runs: StatementRuns;
  /** Turns a driver's error into one of ours, or null when it is unknown. */
  readonly known: (fault: unknown) => ShopError | null;
  readonly announce: (rooms: string[]) => void;
  readonly trailNote: (last: { n: number; hash: string }) => void;
  readonly log: (id: string, fault: unknown) => void;
}

const RANK: Record<May, number> = { anyone: 0, crew: 1, desk: 2, owner: 3 };
const ROLE_RANK: Record<Who['role'], number> = { mechanic: 1, desk: 2, owner: 3 };

const shopRow = kept((tx: Context['tx']) => tx.selectFrom('shop').select('settings'));
const personRow = kept((tx: Context['tx'], { personId }: { personId: string }) =>
  tx.selectFrom('person').select(['id', 'name', 'role', 'active']).where('id', '=', personId),
);

/**
 * One call through the house: parse the input, check the person's right, run one transaction, record the trail,
 * announce what changed, return the parsed output. Every door comes through here.
 */
export async function dispatch(
  house: House,
  name: string,
  input: unknown,
  caller: Caller,
  options: CallOptions = {},
): Promise<Answer> {
  try {
    if (!Object.hasOwn(operations, name)) throw new Refusal({ code: 'unknown-operation', operation: name });
    const operation = operations[name as OperationName];
    const handler = handlers[name as OperationName] as
      | ((input: unknown, context: Context) => Promise<unknown>)
      | undefined;
    if (!handler) throw new Refusal({ code: 'unknown-operation', operation: name });
    const parsed = parse(operation.input, input);
    if (options.at !== undefined && !house.practice) throw badInput('at', 'practice-only');
    if (options.at !== undefined && !instant.safeParse(options.at).success) throw badInput('at', 'out-of-range');
    const now = options.at ?? house.clock();
    let trail: { n: number; hash: string } | null = null;
    // A copy takes long: once the right to it is checked it is made beside the database, and others go on.
    let beside: Context | null = null;
    const afterwards: (() => void)[] = [];
    // Who only asks waits for nobody who writes.
    const access = operation.kind === 'ask' ? 'read only' : 'read write';
    const transaction = house.db.transaction().setAccessMode(access);
    const output = await transaction.execute(async (tx) => {
      const [shop] = await shopRow(tx, {});
      const settings = shop ? readSettings(shop.settings) : null;
      const who = await whoCalls(tx, caller.personId);
      if (RANK[operation.may] > (who ? ROLE_RANK[who.role] : 0))
        throw notAllowed(who ? 'role' : 'sign-in', { needs: operation.may });
      const write = new Writer(tx);
      const context: Context = {
        tx,
        write,
        now,
        today: civilDateOf(now, settings?.zone ?? 'UTC'),
        practice: house.practice,
        folder: house.folder,
        warnings: house.warnings,
        settings,
        who,
        ...sightOf(who?.role ?? null, settings?.sees ?? null),
        runs: house.runs,
        afterwards: (what) => void afterwards.push(what),
      };
      if (name === 'care.copy') {
        beside = context;
        return null;
      }
      if (operation.kind === 'ask') return operation.output.parse(await handler(parsed, context));
      const request = options.request ?? newId();
      const inputHash = sha256(canonical([name, input, caller.personId]));
      const before = await tx.selectFrom('request').selectAll().where('id', '=', request).executeTakeFirst();
      if (before) {
        if (before.input_hash !== inputHash) throw badInput('request', 'used-for-another');
        return JSON.parse(before.answer) as unknown;
      }
      const answer = operation.output.parse(await handler(parsed, context));
      await write.insert('request', {
        id: request,
        operation: name,
        input_hash: inputHash,
        answer: JSON.stringify(answer),
        at: now,
      });
      trail = await recordTrail(tx, {
        at: now,
        personId: who?.id ?? null,
        device: caller.device,
        operation: name,
        request,
        changes: write.changes,
      });
      return answer;
    });
    for (const what of afterwards) what();
    if (beside) {
      const done = operation.output.parse(await handler(parsed, beside));
      house.announce(['care']);
      return { ok: true, output: done };
    }
    if (trail) {
      house.trailNote(trail);
      house.announce([name.split('.')[0] ?? name]);
    }
    return { ok: true, output };
  } catch (fault) {
    return { ok: false, error: errorOf(house, fault) };
  }
}

async function whoCalls(tx: Context['tx'], personId: string | null): Promise<Who | null> {
  if (personId === null) return null;
  const [row] = await personRow(tx, { personId });
  if (!row || row.active === 0) throw notAllowed('sign-in');
  return { id: row.id, name: row.name, role: row.role };
}

function parse(schema: z.ZodType, value: unknown): unknown {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw new Refusal({
    code: 'bad-input',
    fields: problemsOf(result.error.issues),
  });
}

function errorOf(house: House, fault: unknown): ShopError {
  if (fault instanceof Refusal) return fault.error;
  const known = house.known(fault);
  if (known) return known;
  const id = newId();
  house.log(id, fault);
  return { code: 'unknown-fault', id };
}
