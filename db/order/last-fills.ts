import type { OutputOf } from '../../core/contract/index.ts';
import { byVisit } from '../../core/fluid/fills.ts';
import type { Context } from '../context.ts';
import { foldText } from '../fold.ts';
import type { JobRow } from '../tables.ts';
import { carName, fluidEntries, serialOf, type UnitOfCar } from './fluids.ts';

type LastFill = OutputOf<'fluid.lastTimes'>['rows'][number];
type Entries = Awaited<ReturnType<ReturnType<typeof fluidEntries>['execute']>>;

const MOST = 8;

/**
 * What went in at earlier visits, newest first: into the unit with this serial, else into this car's unit of that name,
 * else by the same job of the book into other cars. The first of them that has any is the answer.
 */
export async function lastFills(context: Context, job: JobRow, carId: string, unit: UnitOfCar | null) {
  const named = (rows: Entries) =>
    rows.filter((row) => unit === null || foldText(row.unit) === foldText(unit.name)).filter(before(job));
  const serial = unit === null ? '' : serialOf(unit);
  if (serial !== '') {
    const rows = await fluidEntries(context).where('serial', '=', serial).execute();
    const found = fillsOf(rows.filter(before(job)), 'unit');
    if (found.length > 0) return found;
  }
  const ofCar = await fluidEntries(context).where('fluid_entry.car_id', '=', carId).execute();
  // Another serial is another unit, whatever it is called.
  const mine = named(ofCar).filter((row) => serial === '' || row.serial === '');
  const found = fillsOf(mine, 'car');
  return found.length > 0 ? found : fillsOf(named(await bySameJob(context, job)), 'job');
}

const before = (job: JobRow) => (row: Entries[number]) => row.direction === 'in' && row.visit !== job.work_order_id;

async function bySameJob(context: Context, job: JobRow): Promise<Entries> {
  if (job.book_job_version_id === null) return [];
  const jobs = await context.tx
    .selectFrom('job')
    .innerJoin('book_job_version as version', 'version.id', 'job.book_job_version_id')
    .innerJoin('book_job_version as mine', 'mine.book_job_id', 'version.book_job_id')
    .innerJoin('fluid_entry', 'fluid_entry.job_id', 'job.id')
    .select('job.id')
    .distinct()
    .where('mine.id', '=', job.book_job_version_id)
    .orderBy('job.id', 'desc')
    .limit(40)
    .execute();
  if (jobs.length === 0) return [];
  return fluidEntries(context)
    .where(
      'fluid_entry.job_id',
      'in',
      jobs.map(({ id }) => id),
    )
    .execute();
}

function fillsOf(rows: Entries, same: LastFill['same']): LastFill[] {
  return byVisit(rows.map((row) => ({ ...row, pump: row.name ?? '' })))
    .map(
      ({ last, quantity, strokes }): LastFill => ({
        same,
        orderNumber: last.number,
        at: last.at,
        car: carName(last),
        mileage: last.mileage_in,
        unit: { name: last.unit, serial: last.serial },
        fluid: last.fluid,
        quantity,
        strokes,
        pump: strokes === null ? '' : last.pump,
      }),
    )
    .sort((a, b) => b.at - a.at)
    .slice(0, MOST);
}
