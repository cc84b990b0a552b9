import type { Handlers } from '../context.ts';
import { addFinding, findingColumns, findingFieldsOf, findingRow } from '../order/findings.ts';
import { notFound } from '../refusal.ts';
import { given, jobRow, openSheet } from './on-the-sheet.ts';

export const findingHandlers: Handlers = {
  'finding.add': async ({ orderId, id: ownId, ...fields }, context) => {
    await openSheet(context, orderId);
    return { id: await addFinding(context, orderId, ownId, fields), revision: 1 };
  },
  'finding.change': async ({ id, revision, jobId, ...change }, context) => {
    const row = await findingRow(context, id);
    await openSheet(context, row.work_order_id);
    if (jobId && (await jobRow(context, jobId)).work_order_id !== row.work_order_id) throw notFound('job', jobId);
    const fields = Object.assign(findingFieldsOf(row), given(change));
    const patch = { ...findingColumns(fields), ...(jobId === undefined ? {} : { job_id: jobId }) };
    const next = await context.write.edit('finding', id, revision, patch, { ...change, jobId }, (now) => ({
      ...findingFieldsOf(now),
      jobId: now.job_id,
    }));
    return { id, revision: next };
  },
};
