import type { InputOf, OutputOf } from '../core/contract/index.ts';
import type { PersonName } from './garage.ts';
import type { Story } from './story.ts';

type Lines = NonNullable<InputOf<'job.add'>['lines']>;

/** Hours at the shop's rate, in thousandths. */
export const labour = (words: string, hours: number): Lines[number] => ({
  kind: 'labour',
  words,
  quantity: hours,
  unit: 'h',
  unitPrice: 12_800,
});

/** New pieces bought for the job; price and cost of one in cents. */
export const part = (words: string, pieces: number, unitPrice: number, unitCost: number): Lines[number] => ({
  kind: 'part',
  words,
  condition: 'new',
  quantity: pieces * 1000,
  unitPrice,
  unitCost,
});

/** One car's visit: the moves of desk and bench on its order, each at the instant of the scene it is made in. */
export class Visit {
  readonly #story: Story;
  #id = '';
  /** Who speaks for the car: the first person named for it, else the customer. */
  #who: { name: string; role: 'customer' | 'named'; phone: string } = { name: '', role: 'customer', phone: '' };
  readonly jobs = new Map<string, { id: string; lineIds: readonly string[] }>();

  constructor(story: Story) {
    this.#story = story;
  }

  get id(): string {
    return this.#id;
  }

  async book(input: InputOf<'order.book'>, by: PersonName = 'Piet'): Promise<void> {
    const { id } = await this.#story.did(by, 'order.book', await this.#known(input, by));
    this.#id = id;
    if (!('add' in input.customer)) return;
    const { name, phone = '', mayYes = [] } = input.customer.add;
    const [named] = mayYes;
    this.#who = named ? { name: named.name, role: 'named', phone } : { name, role: 'customer', phone };
  }

  /** A car that is here already comes as itself, its owner too; what is told of them now is written down with them. */
  async #known(input: InputOf<'order.book'>, by: PersonName): Promise<InputOf<'order.book'>> {
    if (!('add' in input.customer) || !('add' in input.car)) return input;
    const { plate = '', vin = '' } = input.car.add;
    const { rows } = await this.#story.did(by, 'car.list', { text: plate });
    const known = rows.find((row) => row.plate === plate);
    if (known === undefined) return input;
    const { owner, revision } = await this.#story.did(by, 'car.get', { id: known.id });
    if (owner === null) return input;
    if (vin !== '') await this.#story.did(by, 'car.change', { id: known.id, revision, change: { vin } });
    const customer = await this.#story.did(by, 'customer.get', { id: owner.id });
    const { add } = input.customer;
    if (Object.keys(add).length > 2)
      await this.#story.did(by, 'customer.change', { id: owner.id, revision: customer.revision, change: add });
    return { ...input, customer: { id: owner.id }, car: { id: known.id } };
  }

  whole(): Promise<OutputOf<'order.get'>> {
    return this.#story.did('Runa', 'order.get', { id: this.#id });
  }

  async job(title: string, lines: Lines, findingId: string | null = null): Promise<void> {
    const job = { title };
    const added = await this.#story.did('Piet', 'job.add', { orderId: this.#id, job, lines, findingId });
    this.jobs.set(added.letter, added);
  }

  /** A job as the job book has it, with its steps. */
  async fromBook(bookJobId: string): Promise<void> {
    const added = await this.#story.did('Piet', 'job.fromBook', { orderId: this.#id, bookJobId });
    this.jobs.set(added.letter, added);
  }

  jobId(letter: string): string {
    const job = this.jobs.get(letter);
    if (!job) throw new Error(`no job ${letter} on this order`);
    return job.id;
  }

  lineId(letter: string, place: number): string {
    const id = this.jobs.get(letter)?.lineIds[place];
    if (id === undefined) throw new Error(`no line ${place} in job ${letter}`);
    return id;
  }

  async found(text: string, urgency: 'unsafe' | 'soon' | 'watch' = 'soon'): Promise<string> {
    return (await this.#story.did('Nessa', 'finding.add', { orderId: this.#id, text, urgency })).id;
  }

  async quote(sent = true): Promise<void> {
    const { paperId } = await this.#story.did('Piet', 'quote.issue', { orderId: this.#id });
    if (sent) await this.#story.did('Piet', 'paper.sent', { id: paperId, how: 'message' });
  }

  /** A yes by phone to these jobs, up to a total; without one, up to what stands on the sheet. */
  async yes(letters: readonly string[], total?: number): Promise<void> {
    const order = await this.whole();
    const quote = order.papers.findLast((paper) => paper.kind === 'quote');
    await this.#story.did('Piet', 'decision.record', {
      orderId: this.#id,
      quotePaperId: quote?.id ?? null,
      jobs: letters.map((letter) => ({ jobId: this.jobId(letter), answer: 'yes' })),
      upTo: { total: total ?? order.sums?.gross ?? 0 },
      spoken: { name: this.#who.name, role: this.#who.role },
      way: 'phone',
      reached: this.#who.phone,
    });
  }

  /** A no, or a later, by phone to one job, after the risk was told. */
  async no(letter: string, answer: 'no' | 'later', risk: string): Promise<void> {
    await this.#story.did('Piet', 'decision.record', {
      orderId: this.#id,
      jobs: [{ jobId: this.jobId(letter), answer, risk }],
      upTo: null,
      spoken: { name: this.#who.name, role: this.#who.role },
      way: 'phone',
      reached: this.#who.phone,
    });
  }

  async on(person: PersonName, letter: string): Promise<void> {
    await this.#story.did(person, 'clock.on', { jobId: this.jobId(letter) });
  }

  async off(person: PersonName): Promise<void> {
    await this.#story.did(person, 'clock.off', {});
  }

  async invoice(mileage: number): Promise<{ paperId: string; toPay: number }> {
    const { id, revision } = await this.whole();
    await this.#story.did('Nessa', 'order.mileageOut', { id, revision, mileage });
    const paper = await this.#story.did('Piet', 'invoice.issue', { orderId: id });
    await this.#story.did('Piet', 'paper.sent', { id: paper.paperId, how: 'printed' });
    return paper;
  }

  async pay(kind: 'deposit' | 'payment' | 'refund', way: 'cash' | 'card' | 'transfer', amount: number): Promise<void> {
    await this.#story.did('Piet', 'payment.take', { orderId: this.#id, kind, way, amount });
  }

  async handOver(): Promise<void> {
    const { id, revision } = await this.whole();
    await this.#story.did('Piet', 'order.handOver', { id, revision, to: this.#who.name });
  }

  async cancel(why: string): Promise<void> {
    const { id, revision } = await this.whole();
    await this.#story.did('Piet', 'order.cancel', { id, revision, why });
  }
}
