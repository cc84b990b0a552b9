import { expect, test } from 'vitest';
import { operations } from '../../core/contract/index.ts';
import { emptySetUp, errorsOf, type SetUpDraft, setUpOf } from '../../renderer/places/set-up/draft.ts';
import { refusedAt } from '../../renderer/places/set-up/refused.ts';

/** The least that opens a garage: a name, an hour of work, one person with a code. */
const least: SetUpDraft = {
  ...emptySetUp('Europe/Berlin'),
  name: 'Saltmarsh Motor Works',
  hour: '128.00',
  people: [{ id: 'person-1', name: 'Runa', role: 'owner', code: 'runa-4127' }],
};

test('name, hour of work and one person are enough; what the page says is what the shop takes', () => {
  expect(errorsOf(least)).toEqual({});
  const input = operations['shop.setUp'].input.parse(setUpOf(least));
  expect(input.settings.overrun).toMatchObject({ mode: 'none', bp: 0, fixed: 0, cap: null });
  expect(input.rates[0]?.price).toBe(12_800);
});

test('each series goes on from its own number', () => {
  const draft = { ...least, nextOrder: '1187', nextQuote: '300', nextInvoice: '1045', nextCreditNote: '20' };
  expect(setUpOf(draft).settings.firstNumbers).toEqual({
    order: 1187,
    quote: 300,
    invoice: 1045,
    creditNote: 20,
    receipt: 1,
  });
  expect(errorsOf({ ...least, nextQuote: '0', nextReceipt: 'one' })).toEqual({
    nextQuote: expect.any(String),
    nextReceipt: expect.any(String),
  });
});

test('the rule of the yes goes over as typed, and figures of a rule not chosen do not', () => {
  const typed = { overPercent: '10', overSum: '50.00', overCap: '200', overBase: 'net', overEdge: 'outside' } as const;
  expect(setUpOf({ ...least, ...typed, overrun: 'lesser' }).settings.overrun).toMatchObject({
    mode: 'lesser',
    bp: 1000,
    fixed: 5000,
    cap: 20_000,
    base: 'net',
    edge: 'outside',
  });
  expect(setUpOf({ ...least, ...typed, overrun: 'none' }).settings.overrun).toMatchObject({
    bp: 0,
    fixed: 0,
    cap: null,
  });
  expect(errorsOf({ ...least, overrun: 'greater' })).toEqual({
    overPercent: expect.any(String),
    overSum: expect.any(String),
  });
});

test('printed sentences are lines; a ninth is refused at its field', () => {
  expect(setUpOf({ ...least, notices: 'One.\n\n  Two. ' }).settings.notices).toEqual(['One.', 'Two.']);
  expect(errorsOf({ ...least, notices: 'A line.\n'.repeat(9) })).toEqual({ notices: expect.any(String) });
});

test('what the shop refuses stands at the field where it was typed', () => {
  const people = [
    { id: 'person-1', name: 'Runa', role: 'owner', code: 'runa-4127' },
    { id: 'person-2', name: '', role: 'desk', code: '' },
    { id: 'person-3', name: 'Piet', role: 'desk', code: 'piet-1012' },
  ] as const;
  const taxes = [{ id: 'tax-4', name: 'Sales tax', rate: '6.25', kinds: ['part'], source: '', checkedOn: '' }] as const;
  const { errors, elsewhere } = refusedAt(
    [
      { path: 'settings.address.1', problem: 'too-long', with: { most: 120 } },
      { path: 'people.1.name', problem: 'control-character' },
      { path: 'settings.taxes.0.ratePpm', problem: 'too-much' },
      { path: 'rates.0.price', problem: 'too-much' },
      { path: 'bays.0.name', problem: 'missing' },
    ],
    { ...least, people, taxes },
  );
  // The empty row between is not sent: the second person sent is the third row.
  expect(Object.keys(errors).toSorted()).toEqual(['address', 'hour', 'person-3 name', 'tax-4 rate']);
  expect(elsewhere).toEqual([expect.stringContaining('bays.0.name')]);
});
