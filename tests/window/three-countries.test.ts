import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '../../core/contract/index.ts';
import { openShop } from '../../db/shop.ts';
import { usageOf } from '../../renderer/places/set-up/countries.ts';
import {
  emptySetUp,
  errorsOf,
  newTax,
  type SetUpDraft,
  setUpOf,
  type TaxDraft,
} from '../../renderer/places/set-up/draft.ts';

/**
 * Three garages set up from the page of the first start as their owners would fill it in: no tax on labour, one VAT on
 * everything, two taxes side by side. Rates and sources are invented; the program ships none. Sums by hand from
 * 100.00 of labour and 50.05 of a part.
 */
const ALL = ['labour', 'part', 'fluid', 'outside', 'supplies', 'fee', 'core'] as const;
const tax = (id: string, name: string, rate: string, kinds: TaxDraft['kinds']): TaxDraft => ({
  ...newTax(id),
  ...{ name, rate, kinds, source: 'our own tax adviser', checkedOn: '2026-09-03' },
});

function draft(country: string, zone: string, taxes: readonly TaxDraft[]): SetUpDraft {
  const usage = usageOf(country);
  if (usage === undefined) throw new Error(`no usage of ${country}`);
  const { code, ...rest } = usage;
  return {
    ...emptySetUp(zone),
    ...rest,
    country: code,
    name: 'Saltmarsh Motor Works',
    hour: rest.decimal === ',' ? '100,00' : '100.00',
    taxes,
    people: [{ id: 'person-1', name: 'Runa', role: 'owner', code: 'runa-4127' }],
  };
}

const CASES = [
  {
    what: 'no tax on labour, 6 % on parts and fluids',
    draft: draft('US', 'America/Chicago', [tax('tax-1', 'Sales tax', '6', ['part', 'fluid'])]),
    // 50.05 x 6 % = 3.003
    expected: { currency: 'USD', distance: 'mi', paper: 'Letter', taxes: [300], gross: 15_305 },
  },
  {
    what: 'one VAT of 19 % on everything',
    draft: draft('DE', 'Europe/Berlin', [tax('tax-1', 'VAT', '19', ALL)]),
    // 150.05 x 19 % = 28.5095
    expected: { currency: 'EUR', distance: 'km', paper: 'A4', taxes: [2851], gross: 17_856 },
  },
  {
    what: 'two taxes side by side, 5 % and 9.975 %',
    draft: draft('CA', 'America/Toronto', [
      tax('tax-1', 'Federal tax', '5', ALL),
      tax('tax-2', 'Other tax', '9.975', ALL),
    ]),
    // 150.05 x 5 % = 7.5025; x 9.975 % = 14.9674875: each on the sum before tax, none on the other
    expected: { currency: 'CAD', distance: 'km', paper: 'Letter', taxes: [750, 1497], gross: 17_252 },
  },
] as const;

for (const { what, draft: filled, expected } of CASES)
  test(`a garage is set up and prices a job: ${what}`, async () => {
    expect(errorsOf(filled)).toEqual({});
    const folder = mkdtempSync(join(tmpdir(), 'crownwheel-country-'));
    const shop = await openShop({ folder, practice: true });
    try {
      const call = async <N extends OperationName>(as: string | null, operation: N, input: InputOf<N>) => {
        const answer = await shop.call(operation, input, { personId: as, device: 'test' });
        if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
        return answer.output as OutputOf<N>;
      };
      const runa = (await call(null, 'shop.setUp', setUpOf(filled))).people[0]?.id ?? '';
      const { settings } = await call(runa, 'shop.get', {});
      expect(settings).toMatchObject({
        ...{ currency: expected.currency, distance: expected.distance, paper: expected.paper },
        // The strictest rule for the yes, whatever the country; what is local says where it is from and when it was checked.
        overrun: { mode: 'none' },
      });
      expect(settings?.taxes.map(({ source, checkedOn }) => [source, checkedOn])).toEqual(
        filled.taxes.map(() => ['our own tax adviser', '2026-09-03']),
      );
      const { id } = await call(runa, 'order.book', {
        customer: { add: { name: 'Ilse Vandermeer' } },
        car: { add: { words: 'Corvane R', unit: settings?.distance ?? 'km' } },
        complaint: 'It whines.',
        here: true,
      });
      await call(runa, 'job.add', {
        orderId: id,
        job: { title: 'Find the whine' },
        lines: [
          { kind: 'labour', words: 'Road test', quantity: 1000, unit: 'h', unitPrice: 10_000 },
          { kind: 'part', words: 'Seal', quantity: 1000, unit: '', unitPrice: 5005 },
        ],
      });
      const { sums } = await call(runa, 'order.get', { id });
      expect(sums?.net).toBe(15_005);
      expect(sums?.taxes.map((one) => one.amount)).toEqual(expected.taxes);
      expect(sums?.gross).toBe(expected.gross);
    } finally {
      await shop.close();
      rmSync(folder, { recursive: true });
    }
  });
