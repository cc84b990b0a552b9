/** A car's place in a bay. */
export interface BayTime {
  /** The order; of a booking without one, the booking itself. */
  readonly orderId: string;
  readonly bayId: string;
  /** Civil date. */
  readonly day: string;
  /** Wall time 'HH:MM'. */
  readonly from: string;
  /** Thousandths of an hour. */
  readonly hours: number;
  /** Who is to do it. */
  readonly personId?: string | null | undefined;
}

/** Thousandths of an hour since midnight, whole when the minutes are a multiple of three. */
const start = ({ from }: BayTime) => {
  const [hour = 0, minute = 0] = from.split(':').map(Number);
  return hour * 1000 + (minute * 1000) / 60;
};

/** Whether two bookings share some time. One that begins when the other ends does not. */
const atOnce = (a: BayTime, b: BayTime) =>
  a.orderId !== b.orderId && a.day === b.day && start(a) < start(b) + b.hours && start(b) < start(a) + a.hours;

/** The bookings that stand in the same bay at the same time as this one, in the order handed in. */
export function clashesWith<B extends BayTime>(one: BayTime, all: readonly B[]): B[] {
  return all.filter((other) => one.bayId === other.bayId && atOnce(one, other));
}

/** The bookings in another bay that the same person is to do at the same time. */
export function personClashesWith<B extends BayTime>(one: BayTime, all: readonly B[]): B[] {
  const { personId } = one;
  if (personId === null || personId === undefined) return [];
  return all.filter((other) => other.personId === personId && other.bayId !== one.bayId && atOnce(one, other));
}
