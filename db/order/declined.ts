import { civilDateOf } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import type { Declined } from './whole.ts';

/** Work that was declined on this car and not said yes to since; shown at the next intake. */
export async function declinedOfCar(
  context: Context,
  carId: string,
  exceptOrderId: string | null,
): Promise<Declined[]> {
  const rows = await context.tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .innerJoin('job', 'job.id', 'decision_job.job_id')
    .innerJoin('work_order', 'work_order.id', 'decision.work_order_id')
    .select([
      'decision.id as decisionId',
      'job.id as jobId',
      'work_order.id as orderId',
      'work_order.number',
      'work_order.mileage_in',
      'job.title',
    ])
    .select([
      'decision_job.amount',
      'decision_job.answer',
      'decision_job.risk',
      'decision_job.unsafe',
      'decision_job.follow_up_on',
      'decision_job.follow_up_mileage',
      'decision.at',
    ])
    .where('work_order.car_id', '=', carId)
    .orderBy('decision.at')
    .orderBy('decision.number')
    .execute();
  const last = new Map(rows.map((row) => [row.jobId, row]));
  const zone = context.settings?.zone ?? 'UTC';
  return [...last.values()].flatMap((row): Declined[] => {
    if (row.answer === 'yes' || row.orderId === exceptOrderId) return [];
    return [
      {
        decisionId: row.decisionId,
        jobId: row.jobId,
        orderId: row.orderId,
        orderNumber: row.number,
        title: row.title,
        amount: context.seesPrices ? row.amount : null,
        declinedOn: civilDateOf(row.at, zone),
        answer: row.answer,
        risk: row.risk,
        unsafe: row.unsafe === 1,
        mileage: row.mileage_in,
        followUpOn: row.follow_up_on,
        followUpMileage: row.follow_up_mileage,
      },
    ];
  });
}
