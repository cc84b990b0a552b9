import type { InputOf, OperationName, OutputOf } from '../../core/contract/index.ts';
import type { OpenDoor } from '../../electron/open.ts';
import { SETTINGS } from '../db/practice-shop.ts';

/** The people of the garage under test, the first one chosen when a window opens. */
export const PEOPLE = [
  { name: 'Odile', role: 'owner', code: 'odile-1234', payRate: 3400 },
  { name: 'Piet', role: 'desk', code: 'piet-1234', payRate: 2800 },
  { name: 'Runa', role: 'mechanic', code: 'runa-1234', payRate: 2800 },
  { name: 'Nessa', role: 'mechanic', code: 'nessa-1234', payRate: 2600 },
] as const;
export type PersonName = (typeof PEOPLE)[number]['name'];

type Lines = NonNullable<InputOf<'job.add'>['lines']>;

/** An hour and a half at the shop's rate; 20 % tax and 5 % supplies on labour make it 181.44 with tax. */
export const ROAD_TEST: Lines[number] = {
  kind: 'labour',
  words: 'Road test',
  quantity: 1500,
  unit: 'h',
  unitPrice: 9600,
};

/** An invented garage: what stands in it before a test begins is put there through the program's own operations. */
export class Garage {
  readonly shop: OpenDoor['shop'];
  readonly door: OpenDoor;
  readonly #people: ReadonlyMap<string, string>;

  constructor(door: OpenDoor, people: ReadonlyMap<string, string>) {
    this.door = door;
    this.shop = door.shop;
    this.#people = people;
  }

  static async setUp(door: OpenDoor): Promise<Garage> {
    const { people } = await call(door, null, 'shop.setUp', {
      settings: SETTINGS,
      people: [...PEOPLE],
      bays: [{ name: 'Bay 1', words: 'two-post lift' }],
      rates: [{ name: 'Labour', price: 9600, usual: true }],
    });
    return new Garage(door, new Map(people.map((person) => [person.name, person.id])));
  }

  /** The same garage behind another door, after it was closed. */
  reopened(door: OpenDoor): Garage {
    return new Garage(door, this.#people);
  }

  personId(name: PersonName): string {
    const id = this.#people.get(name);
    if (id === undefined) throw new Error(`nobody here is called ${name}`);
    return id;
  }

  /** Calls as somebody; throws when the answer is an error. */
  did<N extends OperationName>(as: PersonName, operation: N, input: InputOf<N>, at?: number): Promise<OutputOf<N>> {
    return call(this.door, this.personId(as), operation, input, at);
  }

  order(id: string): Promise<OutputOf<'order.get'>> {
    return this.did('Odile', 'order.get', { id });
  }

  /** Ilse Vandermeer's Corvane R, booked in and here with 42,180 km; now, or at an instant. */
  async booked(change: Partial<InputOf<'order.book'>> = {}, at?: number): Promise<string> {
    const { id } = await this.did(
      'Odile',
      'order.book',
      {
        customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142', email: 'ilse@vandermeer.example' } },
        car: { add: { plate: 'KTB 4471', words: 'Corvane R', year: 2016, unit: 'km' } },
        complaint: 'It whines from the back.',
        mileage: 42_180,
        here: true,
        ...change,
      },
      at,
    );
    return id;
  }

  /** A job on the order; returns its id. */
  async job(orderId: string, title = 'Find the whine', lines: Lines = [ROAD_TEST]): Promise<string> {
    return (await this.did('Odile', 'job.add', { orderId, job: { title }, lines })).id;
  }

  /** A yes by phone to every job that stands on the sheet now, up to its sum. */
  async yes(orderId: string): Promise<void> {
    const order = await this.order(orderId);
    await this.did('Odile', 'decision.record', {
      orderId,
      jobs: order.jobs.map((job) => ({ jobId: job.id, answer: 'yes' })),
      upTo: { total: order.sums?.gross ?? 0 },
      spoken: { name: order.customer.name, role: 'customer' },
      way: 'phone',
      reached: '555-0142',
    });
  }
}

async function call<N extends OperationName>(
  door: OpenDoor,
  personId: string | null,
  operation: N,
  input: InputOf<N>,
  at?: number,
): Promise<OutputOf<N>> {
  const answer = await door.shop.call(operation, input, { personId, device: 'test' }, at === undefined ? {} : { at });
  if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
  return answer.output as OutputOf<N>;
}
