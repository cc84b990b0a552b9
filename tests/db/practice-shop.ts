import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ShopError } from '../../core/contract/errors.ts';
import type { InputOf, OperationName, OutputOf } from '../../core/contract/index.ts';
import { openShop, type Shop } from '../../db/shop.ts';

/** An invented garage's settings; 20 % on every kind of line, supplies 5 % of labour up to 25.00, the strictest yes rule. */
export const SETTINGS: InputOf<'shop.setUp'>['settings'] = {
  name: 'Saltmarsh Motor Works',
  address: ['14 Causeway Road', 'Port Ansel'],
  phone: '555-0100',
  email: '',
  registration: 'registered repairer PA-2207',
  taxNumber: 'T-100',
  logoPng: null,
  currency: 'USD',
  decimal: '.',
  group: ',',
  zone: 'UTC',
  language: 'en',
  paper: 'Letter',
  distance: 'km',
  torque: 'N·m',
  prices: 'exclusive',
  taxRounding: 'document',
  cashStep: 5,
  supplies: { mode: 'percent', bp: 500, cap: 2500, floor: null, sentence: 'Shop supplies are a share of labour.' },
  overrun: { mode: 'none', bp: 0, fixed: 0, cap: null, base: 'gross', edge: 'inside', source: '', checkedOn: null },
  taxes: [
    {
      id: 'tax',
      name: 'Sales tax',
      ratePpm: 200_000,
      kinds: ['labour', 'part', 'fluid', 'outside', 'supplies', 'fee', 'core'],
      source: '',
      checkedOn: null,
    },
  ],
  quoteDays: 14,
  payDays: 14,
  followUpDays: 30,
  followUpDistance: 2000,
  warranty: 'Work and parts are warranted for 12 months or 20 000 km, whichever comes first.',
  notices: ['Old parts are shown on request.'],
  firstNumbers: { order: 1187, quote: 300, invoice: 1045, creditNote: 20, receipt: 500 },
  planOpens: '08:00',
  planCloses: '17:30',
};

/** The instant of a UTC wall time, for `at`. */
export const at = (wall: string): number => Date.parse(`${wall}:00Z`);

export class PracticeShop {
  readonly folder: string;
  readonly people: ReadonlyMap<string, string>;
  shop: Shop;
  now = at('2026-03-10T08:00');

  constructor(folder: string, shop: Shop, people: ReadonlyMap<string, string>) {
    this.folder = folder;
    this.shop = shop;
    this.people = people;
  }

  /** Calls as somebody; throws when the answer is an error. */
  async did<N extends OperationName>(
    as: string,
    operation: N,
    input: InputOf<N>,
    request?: string,
  ): Promise<OutputOf<N>> {
    const answer = await this.shop.call(
      operation,
      input,
      { personId: this.people.get(as) ?? null, device: 'test' },
      { at: this.now, ...(request ? { request } : {}) },
    );
    if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
    return answer.output as OutputOf<N>;
  }

  /** Calls as somebody and returns the error; throws when it was taken. */
  async refused<N extends OperationName>(as: string, operation: N, input: unknown): Promise<ShopError> {
    const answer = await this.shop.call(
      operation,
      input,
      { personId: this.people.get(as) ?? null, device: 'test' },
      { at: this.now },
    );
    if (answer.ok) throw new Error(`${operation} was taken: ${JSON.stringify(answer.output)}`);
    return answer.error;
  }

  async reopen(): Promise<void> {
    await this.shop.close();
    this.shop = await openShop({ folder: this.folder });
  }

  async end(): Promise<void> {
    await this.shop.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** A new practice shop with an owner, a desk and two mechanics, in a folder of its own. */
export async function practiceShop(settings: Partial<typeof SETTINGS> = {}): Promise<PracticeShop> {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-shop-'));
  const shop = await openShop({ folder, practice: true });
  const answer = await shop.call(
    'shop.setUp',
    {
      settings: { ...SETTINGS, ...settings },
      people: [
        { name: 'Odile', role: 'owner', code: 'owner-code', payRate: 0 },
        { name: 'Desk', role: 'desk', code: 'desk-code', payRate: 2800 },
        { name: 'Runa', role: 'mechanic', code: 'runa-code', payRate: 2800 },
        { name: 'Piet', role: 'mechanic', code: 'piet-code', payRate: 2400 },
      ],
      bays: [{ name: 'Bay 1', words: 'two-post lift' }],
      rates: [{ name: 'Labour', price: 9600, usual: true }],
    },
    { personId: null, device: 'test' },
    { at: at('2026-03-01T08:00') },
  );
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const { people } = answer.output as OutputOf<'shop.setUp'>;
  return new PracticeShop(folder, shop, new Map(people.map((person) => [person.name, person.id])));
}
