/**
 * The time that it is in a test: a Tuesday morning of an ordinary month, so that no spec comes to midnight, to a month's
 * end or to a day the garage does not work by the hour that it is run at. From there on it runs as any clock does.
 * CROWNWHEEL_TESTS_AT (an instant such as 2026-12-31T23:58:30Z) begins every test then, to look for such an hour.
 */
export const ORDINARY = process.env.CROWNWHEEL_TESTS_AT ?? '2026-11-10T10:00:00Z';

/** How far the clock of the test in hand is from the machine's, in milliseconds. Each worker has one test at a time. */
let ahead = 0;

/** Sets the clock to this instant; to the machine's own where that is `real`. */
export function setClock(to: string): void {
  const instant = to === 'real' ? Date.now() : Date.parse(to);
  if (Number.isNaN(instant)) throw new Error(`${to} is no instant`);
  ahead = instant - Date.now();
}

/** The time in the test, milliseconds since 1970. */
export const now = (): number => Date.now() + ahead;

/** The day in the test; the garage of the specs stands in UTC. */
export const today = (): string => new Date(now()).toISOString().slice(0, 10);

/** What makes a page's clock the test's, run before any script of the page. */
export function pageClock(): string {
  return `{
    const Machine = Date;
    const ahead = ${ahead};
    Date = class extends Machine {
      constructor(...given) {
        if (given.length === 0) super(Machine.now() + ahead);
        else super(...given);
      }
      static now() {
        return Machine.now() + ahead;
      }
    };
  }`;
}
