import type { Context } from '../context.ts';
import { kept } from '../kept.ts';

/** What is asked to read orders whole, a question a table, for any number of ids (see load-rows). */

type Tx = Context['tx'];
interface Ids {
  readonly [name: string]: readonly string[];
  readonly ids: readonly string[];
}

const PAPER = [
  'id',
  'work_order_id',
  'kind',
  'number',
  'version',
  'issued_at',
  'issued_on',
  'person_id',
  'customer_id',
  'net',
  'tax',
  'gross',
  'due_on',
  'valid_until',
  'corrects',
] as const;

export const orders = kept((tx: Tx, { ids }: Ids) => tx.selectFrom('work_order').selectAll().where('id', 'in', ids));

export const jobs = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('job').selectAll().where('work_order_id', 'in', ids).orderBy('place'),
);

export const lines = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('line').selectAll().where('job_id', 'in', ids).where('taken_out', '=', 0).orderBy('place'),
);

export const clockEntries = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('clock_entry').selectAll().where('job_id', 'in', ids).orderBy('on_at'),
);

export const clocksRunning = kept((tx: Tx) => tx.selectFrom('clock_open').selectAll().where('job_id', 'is not', null));

export const stepsDone = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('step_done').selectAll().where('job_id', 'in', ids).orderBy('recorded_at').orderBy('id'),
);

export const torqueEntries = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('torque_entry').selectAll().where('job_id', 'in', ids).orderBy('recorded_at').orderBy('id'),
);

export const partMoves = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('part_move')
    .innerJoin('part', 'part.id', 'part_move.part_id')
    .selectAll('part_move')
    .select('part.words')
    .where('job_id', 'in', ids)
    .orderBy('part_move.at'),
);

export const awaited = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('awaited')
    .innerJoin('line', 'line.id', 'awaited.line_id')
    .selectAll('awaited')
    .select(['line.words', 'line.job_id'])
    .where('line.job_id', 'in', ids),
);

export const decisions = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('decision').selectAll().where('work_order_id', 'in', ids).orderBy('number'),
);

export const decidedJobs = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .selectAll('decision_job')
    .select('decision.work_order_id')
    .where('decision.work_order_id', 'in', ids)
    .orderBy('decision.number'),
);

export const quarantines = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('quarantine').selectAll().where('work_order_id', 'in', ids).orderBy('at').orderBy('id'),
);

export const checksDone = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('check_done')
    .select(['check_list_id', 'person_id', 'at', 'work_order_id'])
    .where('work_order_id', 'in', ids)
    .orderBy('at')
    .orderBy('id'),
);

export const bookVersions = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('book_job_version').selectAll().where('id', 'in', ids),
);

export const findings = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('finding').selectAll().where('work_order_id', 'in', ids).orderBy('at'),
);

export const discounts = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('sheet_discount')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .where('taken_out', '=', 0)
    .orderBy('id'),
);

export const contactTries = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('contact_try').selectAll().where('work_order_id', 'in', ids).orderBy('at'),
);

export const toldOfFindings = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('message')
    .select(['work_order_id', 'at'])
    .where('work_order_id', 'in', ids)
    .where('about', '=', 'found')
    .where('direction', '=', 'out')
    .orderBy('at'),
);

export const payments = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('payment').selectAll().where('work_order_id', 'in', ids).orderBy('at').orderBy('id'),
);

export const papers = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('paper').select(PAPER).where('work_order_id', 'in', ids).orderBy('issued_at').orderBy('id'),
);

export const bookings = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .select(['bay.name as bay', 'day', 'from_time', 'hours', 'person_id', 'no_show_at', 'work_order_id'])
    .where('work_order_id', 'in', ids)
    .orderBy('booking.day', 'desc'),
);

export const sheets = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('paper').select(['work_order_id', 'sheet']).where('id', 'in', ids),
);

export const papersSent = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('paper_sent').selectAll().where('paper_id', 'in', ids),
);

export const people = kept((tx: Tx) => tx.selectFrom('person').select(['id', 'name', 'role', 'pay_rate']));

export const wrenches = kept((tx: Tx) => tx.selectFrom('wrench').select(['id', 'name']));

export const customers = kept((tx: Tx, { ids }: Ids) => tx.selectFrom('customer').selectAll().where('id', 'in', ids));

export const cars = kept((tx: Tx, { ids }: Ids) => tx.selectFrom('car').selectAll().where('id', 'in', ids));

export const readings = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('odometer_reading')
    .selectAll()
    .where('car_id', 'in', ids)
    .orderBy('car_id')
    .orderBy('at')
    .orderBy('id'),
);
