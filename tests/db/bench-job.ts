import type { InputOf } from '../../core/contract/index.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

type Content = InputOf<'jobBook.save'>['content'];
export type BookStep = Content['steps'][number];

/** An invented job of the book with these steps, numbered in their order. */
export const bookJob = (steps: readonly Omit<BookStep, 'n'>[], more: Partial<Content> = {}): Content => ({
  title: 'Invented job',
  bookHours: 1000,
  sourceOfFigures: 'invented for the test',
  lines: [],
  cautions: [],
  ...more,
  steps: steps.map((step, at) => ({ ...step, n: at + 1 })),
});

/** A car that is here, with that job on its sheet and the customer's yes to it. */
export class BenchJob {
  readonly garage: PracticeShop;
  readonly orderId: string;
  readonly jobId: string;

  private constructor(garage: PracticeShop, orderId: string, jobId: string) {
    this.garage = garage;
    this.orderId = orderId;
    this.jobId = jobId;
  }

  static async begun(steps: readonly Omit<BookStep, 'n'>[], more: Partial<Content> = {}): Promise<BenchJob> {
    const garage = await practiceShop();
    const { id: bookJobId } = await garage.did('Desk', 'jobBook.save', {
      id: null,
      basedOn: 0,
      content: bookJob(steps, more),
    });
    const { id: orderId } = await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
      car: { add: { plate: 'KVR 221', words: 'Corvane R coupe', unit: 'km' } },
      complaint: 'Whines on the overrun.',
      mileage: 42_180,
      here: true,
    });
    const { id: jobId } = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId });
    const bench = new BenchJob(garage, orderId, jobId);
    await bench.yes(jobId);
    return bench;
  }

  async yes(jobId: string): Promise<void> {
    await this.garage.did('Desk', 'decision.record', {
      orderId: this.orderId,
      jobs: [{ jobId, answer: 'yes' }],
      upTo: { total: 900_000 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'person',
    });
  }

  order() {
    return this.garage.did('Odile', 'order.get', { id: this.orderId });
  }

  /** Touches of the wrench by Runa, all that are left unless so many. */
  async make(step: number, count?: number) {
    const { made, touches } = await this.garage.did('Runa', 'torque.get', { jobId: this.jobId, step });
    return this.garage.did('Runa', 'torque.make', {
      ...{ jobId: this.jobId, step, touch: made },
      count: count ?? touches.length - made,
    });
  }

  /** Runa has done it, or what else is said; Piet signs where it is his to sign. */
  tick(n: number, more: Partial<InputOf<'step.tick'>> = {}) {
    return this.garage.did('Runa', 'step.tick', { jobId: this.jobId, n, state: 'done', ...more });
  }

  get piet() {
    return { personId: this.garage.people.get('Piet') ?? '', code: 'piet-code' };
  }
}
