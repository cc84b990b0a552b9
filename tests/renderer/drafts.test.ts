import { describe, expect, test } from 'vitest';
import { operations } from '../../core/contract/index.ts';
import { currencyDigits } from '../../core/money/currency.ts';
import { bookingOf, type Draft, emptyDraft, errorsOf } from '../../renderer/places/book-in/draft.ts';
import { readBack } from '../../renderer/places/book-in/read-back.ts';
import { fieldSaver } from '../../renderer/places/customers/field-saver.ts';
import { countryName, USAGES, usageOf } from '../../renderer/places/set-up/countries.ts';
import { emptySetUp, errorsOf as setUpErrors, setUpOf } from '../../renderer/places/set-up/draft.ts';
import { PLAIN_WRITING } from '../../renderer/words/figures.ts';

describe('what a country fills in', () => {
  test('no country stands twice', () => {
    expect(new Set(USAGES.map(({ code }) => code)).size).toBe(USAGES.length);
  });

  test.each(USAGES.map((usage) => [usage.code, usage] as const))('%s can be set up with', (code, usage) => {
    expect(countryName(code)).not.toBe(code);
    expect(currencyDigits(usage.currency)).not.toBeNull();
    expect(usage.decimal).not.toBe(usage.group);
    expect(usageOf(code)).toBe(usage);
    const { code: country, ...rest } = usage;
    const people = [{ id: 'person-1', name: 'Runa', role: 'owner' as const, code: 'runa-4127' }];
    const draft = { ...emptySetUp('UTC'), ...rest, country, name: 'Saltmarsh Motor Works', hour: '96', people };
    expect(setUpErrors(draft)).toEqual({});
    const { settings } = operations['shop.setUp'].input.parse(setUpOf(draft));
    // Never tax or law: those are the owner's own.
    expect(settings).toMatchObject({ taxes: [], overrun: { mode: 'none' }, supplies: { mode: 'itemise' } });
  });

  test('the order of its dates goes to the shop: the month first in the United States, else the language where nothing else is usual', () => {
    const forms = new Map(USAGES.map((usage) => [usage.code, usage.dateForm]));
    expect(['US', 'SE', 'GB', 'DE'].map((code) => forms.get(code))).toEqual([
      'month-day',
      'year-month',
      'language',
      'language',
    ]);
    expect(setUpOf({ ...emptySetUp('UTC'), dateForm: 'month-day' }).settings.dateForm).toBe('month-day');
    expect(setUpOf({ ...emptySetUp('UTC'), dateForm: 'year-month' }).settings.dateForm).toBe('year-month');
  });

  test('one that is not in the list has none', () => expect(usageOf('XX')).toBeUndefined());
});

/** Somebody new with a new car that is here now. */
const least: Draft = { ...emptyDraft('km'), name: 'Ilse Vandermeer', words: 'Corvane R', complaint: 'It whines.' };

describe('a car booked in', () => {
  test('nothing typed: who, which car and what they say are asked for', () => {
    expect(Object.keys(errorsOf(emptyDraft('km'), PLAIN_WRITING)).sort()).toEqual(['complaint', 'name', 'words']);
    expect(errorsOf(least, PLAIN_WRITING)).toEqual({});
  });

  test('known people and cars need no name', () => {
    const known = { ...emptyDraft('km'), customerId: 'c', carId: 'k', year: '16', complaint: 'It whines.' };
    expect(errorsOf(known, PLAIN_WRITING)).toEqual({});
    expect(bookingOf(known, PLAIN_WRITING)).toMatchObject({ customer: { id: 'c' }, car: { id: 'k' } });
  });

  test.each<readonly [field: keyof Draft, typed: Partial<Draft>]>([
    ['name', { name: '  ' }],
    ['words', { words: '' }],
    ['year', { year: '16' }],
    ['year', { year: '1899' }],
    ['mileage', { mileage: 'a lot' }],
    ['mileage', { mileage: '61480.5' }],
    ['complaint', { complaint: '\n' }],
    ['keys', { keys: '12' }],
    ['keys', { keys: 'x' }],
    ['hours', { bayId: 'b', day: '', from: '08:00' }],
    ['hours', { bayId: 'b', day: '2026-03-10', from: '08:00', hours: '0' }],
    ['ownMost', { ownMost: 'enough' }],
    ['ownMost', { ownMost: '-1' }],
  ])('%s is told at its field: %o', (field, typed) => {
    expect(errorsOf({ ...least, ...typed }, PLAIN_WRITING)).toEqual({ [field]: expect.stringMatching(/\S.*[.?]$/) });
  });

  test('goes over as it was typed', () => {
    const draft: Draft = {
      ...least,
      ...{
        phone: '555-0142',
        plate: 'KTB 4471',
        year: '2016',
        mileage: '42,180',
        keys: '2',
        marks: 'Dent\n\n Scratch ',
      },
      ...{ bayId: 'bay-1', day: '2026-03-10', from: '08:00', hours: '2,5' },
      ...{ promise: '2026-03-10T16:30', ownMost: '1,250.00', drive: 'no', here: true },
    };
    const input = operations['order.book'].input.parse(bookingOf(draft, { ...PLAIN_WRITING, zone: 'Europe/Berlin' }));
    expect(input).toMatchObject({
      customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
      car: { add: { plate: 'KTB 4471', year: 2016, unit: 'km' } },
      door: { keys: 2, marks: ['Dent', 'Scratch'], testDrive: false },
      mileage: 42_180,
      booking: { bayId: 'bay-1', day: '2026-03-10', from: '08:00', hours: 2_500 },
      promiseAt: Date.parse('2026-03-10T15:30Z'),
      ownMaximum: 125_000,
    });
  });

  test('what was not asked is not said', () => {
    const input = operations['order.book'].input.parse(bookingOf(least, PLAIN_WRITING));
    expect(input).toMatchObject({ mileage: null, booking: null, promiseAt: null, ownMaximum: null });
    expect(input.door).toMatchObject({ keys: null, testDrive: null, oldParts: 'unasked', marks: [] });
  });

  test('is read back as a sentence, with no figure left open', () => {
    const bays = [{ id: 'bay-1', name: 'Bay 1' }];
    const full = { bayId: 'bay-1', day: '2026-03-10', from: '08:00', promise: '2026-03-10T16:30', ownMost: '300' };
    const [head, rest] = readBack({ ...least, ...full, plate: 'KTB 4471', marks: 'Dent' }, bays, PLAIN_WRITING);
    expect(head).toContain('Ilse Vandermeer');
    expect(head).toContain('KTB 4471');
    for (const said of ['Bay 1', '10 Mar 2026', '8:00', '16:30', '300.00']) expect(rest).toContain(said);
    for (const text of [head, rest, ...readBack(emptyDraft('km'), [], PLAIN_WRITING)]) expect(text).not.toMatch(/[{}]/);
  });
});

describe('a cell that was changed meanwhile', () => {
  interface Fields {
    readonly name: string;
    readonly phone: string;
  }
  const before = { revision: 1, fields: { name: 'Ilse', phone: '1' } };
  const stale = { code: 'changed-meanwhile', what: 'customer', id: 'c', revision: 2, now: null, yours: null } as const;

  /** A row in the shop; what is sent on an old revision is refused. */
  function shopWith(fields: Fields, revision: number) {
    let row = { revision, fields };
    return {
      row: before,
      send: async (sent: typeof before) => {
        if (sent.revision !== row.revision) return { ok: false, error: stale } as const;
        row = { revision: row.revision + 1, fields: sent.fields };
        return { ok: true, output: null } as const;
      },
      read: async () => ({ ok: true, output: row }) as const,
      stands: () => row,
    };
  }

  test('by nobody: saved at once', async () => {
    const shop = shopWith(before.fields, 1);
    expect(await fieldSaver('phone', shop)('2', false)).toEqual({ ok: true });
    expect(shop.stands()).toEqual({ revision: 2, fields: { name: 'Ilse', phone: '2' } });
  });

  test('in another cell: sent again by itself, and the other stays', async () => {
    const shop = shopWith({ name: 'Ilse V.', phone: '1' }, 2);
    expect(await fieldSaver('phone', shop)('2', false)).toEqual({ ok: true });
    expect(shop.stands().fields).toEqual({ name: 'Ilse V.', phone: '2' });
  });

  test('in this cell: nothing is written, and the other value comes back', async () => {
    const shop = shopWith({ name: 'Ilse', phone: '9' }, 2);
    expect(await fieldSaver('phone', shop)('2', false)).toEqual({ ok: false, meanwhile: '9' });
    expect(shop.stands().fields.phone).toBe('9');
  });

  test('in this cell, and the person picked theirs: written over', async () => {
    const shop = shopWith({ name: 'Ilse', phone: '9' }, 2);
    expect(await fieldSaver('phone', shop)('2', true)).toEqual({ ok: true });
    expect(shop.stands().fields.phone).toBe('2');
  });
});
