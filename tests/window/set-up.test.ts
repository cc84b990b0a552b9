import { expect, test } from 'vitest';
import { operations } from '../../core/contract/index.ts';
import { emptySetUp, errorsOf, type SetUpDraft, setUpOf } from '../../renderer/places/set-up/draft.ts';

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
