import { STARTING_CHECKS } from '../../core/bench/starting-checks.ts';
import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { checkListFields } from '../../core/contract/check.ts';
import { bookJobContent } from '../../core/contract/procedure.ts';
import { hashCode } from '../code.ts';
import type { Context, Handlers, Settings } from '../context.ts';
import { newId } from '../id.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, notAllowed, notFound, Refusal } from '../refusal.ts';
import type { Series } from '../tables.ts';
import { addCheckList } from './check.ts';

function checkZone(zone: string): void {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
  } catch {
    throw badInput('settings.zone', 'unknown-zone');
  }
}

/** The settings as the person asking may see them; the overrun rule and taxes are for everybody. */
async function peopleOf(context: Context) {
  const rows = await context.tx.selectFrom('person').selectAll().orderBy('name').execute();
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    role: row.role,
    payRate: context.seesCost ? row.pay_rate : null,
    active: row.active === 1,
    revision: row.revision,
    week: row.week === null ? null : (JSON.parse(row.week) as number[]),
  }));
}

/** The next number of each series, for whoever has signed in. */
async function nextNumbers(context: Context) {
  if (context.who === null || context.settings === null) return null;
  const rows = await context.tx.selectFrom('number_series').selectAll().execute();
  const next = (id: Series) => rows.find((row) => row.id === id)?.next ?? 1;
  return {
    order: next('order'),
    quote: next('quote'),
    invoice: next('invoice'),
    creditNote: next('credit-note'),
    receipt: next('receipt'),
  };
}

export const shopHandlers: Handlers = {
  'shop.setUp': async (input, context) => {
    if (context.settings) throw new Refusal({ code: 'already-set-up' });
    checkZone(input.settings.zone);
    const names = new Set(input.people.map((person) => person.name.toLowerCase()));
    if (names.size !== input.people.length) throw badInput('people', 'same-name-twice');
    const { write, now } = context;
    await write.insert('shop', {
      id: 'shop',
      revision: 1,
      settings: JSON.stringify(input.settings),
      practice: context.practice ? 1 : 0,
      made_at: now,
    });
    const first = input.settings.firstNumbers;
    const series: Record<Series, number> = {
      order: first.order,
      quote: first.quote,
      invoice: first.invoice,
      'credit-note': first.creditNote,
      receipt: first.receipt,
    };
    for (const [id, next] of Object.entries(series)) await write.insert('number_series', { id: id as Series, next });
    const people = [];
    for (const person of input.people) {
      const id = newId();
      await write.insert('person', {
        id,
        revision: 1,
        name: person.name,
        role: person.role,
        code_hash: hashCode(person.code),
        pay_rate: person.payRate,
        active: 1,
        week: null,
      });
      people.push({ id, name: person.name, role: person.role });
    }
    for (const [place, bay] of input.bays.entries()) await write.insert('bay', { id: newId(), ...bay, place });
    for (const [place, rate] of input.rates.entries())
      await write.insert('labour_rate', {
        id: newId(),
        name: rate.name,
        price: rate.price,
        usual: rate.usual ? 1 : 0,
        place,
      });
    if (input.jobBook) {
      for (const job of STARTING_JOBS) {
        const content = bookJobContent.parse(job);
        const id = newId();
        await write.insert('book_job', { id, title: content.title, version: 1 });
        await write.insert('book_job_version', {
          id: newId(),
          book_job_id: id,
          version: 1,
          content: JSON.stringify(content),
          at: now,
          person_id: people[0]?.id ?? null,
        });
      }
      for (const list of STARTING_CHECKS) await addCheckList(context, checkListFields.parse(list));
    }
    return { people };
  },
  'shop.get': async (_input, context) => {
    const { tx, settings } = context;
    const shop = await tx.selectFrom('shop').select(['revision']).executeTakeFirst();
    const bays = await tx.selectFrom('bay').selectAll().orderBy('place').execute();
    const rates = await tx.selectFrom('labour_rate').selectAll().orderBy('place').execute();
    return {
      isSetUp: settings !== null,
      practice: context.practice,
      folder: context.folder,
      warnings: [...context.warnings],
      settings,
      revision: shop?.revision ?? 0,
      people: await peopleOf(context),
      bays: bays.map(({ id, name, words }) => ({ id, name, words })),
      rates: context.seesPrices
        ? rates.map(({ id, name, price, usual }) => ({ id, name, price, usual: usual === 1 }))
        : [],
      nextNumbers: await nextNumbers(context),
      now: context.now,
    };
  },
  'shop.change': async (input, context) => {
    const settings = settingsOf(context);
    if (input.settings.zone !== undefined) checkZone(input.settings.zone);
    if (input.settings.firstNumbers !== undefined) throw badInput('settings.firstNumbers', 'set-once');
    const now: Settings = { ...settings, ...withoutMissing(input.settings) };
    const revision = await context.write.edit(
      'shop',
      'shop',
      input.revision,
      { settings: JSON.stringify(now) },
      input.settings,
      (row) => JSON.parse(row.settings),
    );
    return { revision };
  },
  'person.add': async (input, context) => {
    const same = await context.tx.selectFrom('person').select('id').where('name', '=', input.name).executeTakeFirst();
    if (same) throw badInput('name', 'same-name-twice');
    const id = newId();
    await context.write.insert('person', {
      id,
      revision: 1,
      name: input.name,
      role: input.role,
      code_hash: hashCode(input.code),
      pay_rate: input.payRate,
      active: 1,
      week: null,
    });
    return { id, revision: 1 };
  },
  'person.change': async (input, context) => {
    const row = await context.tx.selectFrom('person').selectAll().where('id', '=', input.id).executeTakeFirst();
    if (!row) throw notFound('person', input.id);
    const stillOwner = (input.role ?? row.role) === 'owner' && (input.active ?? row.active === 1);
    if (row.role === 'owner' && !stillOwner) {
      const others = await context.tx
        .selectFrom('person')
        .select('id')
        .where('role', '=', 'owner')
        .where('active', '=', 1)
        .where('id', '<>', row.id)
        .execute();
      if (others.length === 0) throw notAllowed('last-owner');
    }
    const revision = await context.write.edit(
      'person',
      input.id,
      input.revision,
      {
        ...(input.name === undefined ? {} : { name: input.name }),
        ...(input.role === undefined ? {} : { role: input.role }),
        ...(input.payRate === undefined ? {} : { pay_rate: input.payRate }),
        ...(input.active === undefined ? {} : { active: input.active ? 1 : 0 }),
        ...(input.code === undefined ? {} : { code_hash: hashCode(input.code) }),
        ...(input.week === undefined ? {} : { week: input.week === null ? null : JSON.stringify(input.week) }),
      },
      { name: input.name, role: input.role },
      (person) => ({ name: person.name, role: person.role }),
    );
    return { id: input.id, revision };
  },
  'presence.come': async (_input, context) => {
    await context.write.insert('presence', {
      id: newId(),
      person_id: signedIn(context).id,
      what: 'come',
      at: context.now,
    });
    return {};
  },
  'presence.go': async (_input, context) => {
    await context.write.insert('presence', {
      id: newId(),
      person_id: signedIn(context).id,
      what: 'gone',
      at: context.now,
    });
    return {};
  },
};

/** The keys that were handed in with a value. */
function withoutMissing<T extends object>(change: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}
