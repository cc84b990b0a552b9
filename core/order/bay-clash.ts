/** A car's place in a bay. */
export interface BayTime {
  readonly orderId: string;
  readonly bayId: string;
  /** Civil date. */
  readonly day: string;
  /** Wall time 'HH:MM'. */
  readonly from: string;
  /** Thousandths of an hour. */
  readonly hours: number;
}

/** Thousandths of an hour since midnight, whole when the minutes are a multiple of three. */
const start = ({ from }: BayTime) => {
  const [hour = 0, minute = 0] = from.split(':').map(Number);
  return hour * 1000 + (minute * 1000) / 60;
};

/** Whether two cars stand in one bay at once. One that begins when the other ends does not clash. */
function meet(a: BayTime, b: BayTime): boolean {
  return (
    a.orderId !== b.orderId &&
    a.bayId === b.bayId &&
    a.day === b.day &&
    start(a) < start(b) + b.hours &&
    start(b) < start(a) + a.hours
  );
}

/** The bookings that stand in the same bay at the same time as this one, in the order handed in. */
export function clashesWith<B extends BayTime>(one: BayTime, all: readonly B[]): B[] {
  return all.filter((other) => meet(one, other));
}
