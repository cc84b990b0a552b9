import { followUp } from '../../core/order/declined.ts';
import { creditOf } from '../account.ts';
import type { Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { letterOf, type Reckoned, reckonOrder } from '../order/reckon.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notAllowed, notFound } from '../refusal.ts';
import { remindOfDeclined } from '../remind.ts';

/** Once the invoice is out nothing of it is declined any more, and nothing new is said yes to: that is another visit. */
function heldByInvoice(
  { papers }: Loaded,
  { onSheet }: Reckoned,
  jobs: readonly { readonly jobId: string; readonly answer: string }[],
): void {
  const invoice = papers.find(({ kind }) => kind === 'invoice');
  if (invoice && jobs.some(({ jobId, answer }) => answer === 'yes' || onSheet.has(jobId)))
    throw held([{ what: 'invoiced', with: { number: invoice.number } }]);
}

export const yesHandlers: Handlers = {
  'decision.record': async (input, context) => {
    const who = signedIn(context);
    const settings = settingsOf(context);
    const loaded = await loadOrder(context, input.orderId);
    const reckoned = reckonOrder(loaded, settings);
    const yes = input.jobs.filter((one) => one.answer === 'yes');
    heldByInvoice(loaded, reckoned, input.jobs);
    if (yes.length > 0 && input.upTo === null) throw badInput('upTo', 'needed-for-yes');
    if (input.at !== null && input.at > context.now) throw badInput('at', 'in-the-future');
    if (input.way === 'phone' && input.reached === '') throw badInput('reached', 'number-needed');
    if (input.way === 'signed' && (input.strokes === null || input.strokes.length === 0))
      throw badInput('strokes', 'signature-needed');
    for (const [at, one] of input.jobs.entries()) {
      if (input.jobs.findIndex((other) => other.jobId === one.jobId) < at)
        throw badInput(`jobs.${at}.jobId`, 'same-row-twice');
      const job = loaded.jobs.find((row) => row.id === one.jobId);
      if (!job) throw notFound('job', one.jobId);
      if (one.answer === 'no' && one.unsafe && input.way !== 'signed')
        throw held([{ what: 'unsafe-no-needs-signature', with: { letter: letterOf(job.place) } }]);
      if (one.answer === 'yes' && job.kind !== 'charged' && input.spoken.role !== 'owner')
        throw held([{ what: 'free-work-needs-owner', with: { letter: letterOf(job.place) } }]);
      if (one.answer === 'yes' && job.kind === 'charged' && job.given === 0 && input.spoken.role === 'owner')
        throw held([{ what: 'charged-work-needs-customer', with: { letter: letterOf(job.place) } }]);
    }
    if (input.spoken.role === 'payer' && loaded.payer === null) throw held([{ what: 'nobody-else-pays', with: {} }]);
    if (input.spoken.role === 'owner' && who.role !== 'owner') throw notAllowed('role', { needs: 'owner' });
    if (
      input.quotePaperId !== null &&
      !loaded.papers.some((paper) => paper.id === input.quotePaperId && paper.kind === 'quote')
    )
      throw notFound('quote', input.quotePaperId);
    const ceiling =
      yes.length === 0 || input.upTo === null
        ? null
        : 'total' in input.upTo
          ? input.upTo.total
          : reckoned.yes.ceiling + input.upTo.plus;
    if (input.spoken.role === 'named' && ceiling !== null) {
      const named = (JSON.parse(loaded.customer.may_yes) as { name: string; upTo: number | null }[]).find(
        (one) => one.name === input.spoken.name,
      );
      if (!named) throw held([{ what: 'not-named', with: { name: input.spoken.name } }]);
      if (named.upTo !== null && ceiling > named.upTo)
        throw held([{ what: 'over-their-limit', with: { name: named.name, upTo: named.upTo } }]);
    }
    const max = loaded.order.own_maximum;
    if (max !== null && ceiling !== null && ceiling > max)
      throw held([{ what: 'over-own-maximum', with: { maximum: max, excess: ceiling - max } }]);
    const id = newId();
    await context.write.insert('decision', {
      id,
      work_order_id: input.orderId,
      number: loaded.decisions.length + 1,
      at: input.at ?? context.now,
      recorded_at: context.now,
      ceiling,
      spoken_name: input.spoken.name,
      spoken_role: input.spoken.role,
      way: input.way,
      reached: input.reached,
      words: input.words,
      quote_paper_id: input.quotePaperId,
      strokes: input.strokes === null ? null : JSON.stringify(input.strokes),
      on_sheet: reckoned.totals.gross,
      person_id: who.id,
    });
    for (const one of input.jobs) {
      const again =
        one.answer === 'yes'
          ? null
          : followUp(
              context.today,
              loaded.order.mileage_in,
              one.askAgainDays ?? settings.followUpDays,
              one.askAgainDistance ?? settings.followUpDistance,
            );
      await context.write.insert('decision_job', {
        id: newId(),
        decision_id: id,
        job_id: one.jobId,
        answer: one.answer,
        amount: reckoned.totals.jobs.get(one.jobId) ?? reckoned.aside.get(one.jobId) ?? 0,
        risk: one.risk,
        unsafe: one.unsafe ? 1 : 0,
        follow_up_on: again?.on ?? null,
        follow_up_mileage: again?.distance ?? null,
      });
      await remindOfDeclined(context, loaded, one.jobId, again);
    }
    if (input.oldParts !== null) {
      const door = { ...(JSON.parse(loaded.order.door) as object), oldParts: input.oldParts };
      await context.write.update('work_order', input.orderId, {
        door: JSON.stringify(door),
        revision: loaded.order.revision + 1,
      });
    }
    const credit = ceiling === null ? null : await creditOf(context, await loadOrder(context, input.orderId));
    return { id, ceiling, credit };
  },
  'decision.tried': async (input, context) => {
    await loadOrder(context, input.orderId);
    if (input.at !== null && input.at > context.now) throw badInput('at', 'in-the-future');
    const id = newId();
    await context.write.insert('contact_try', {
      id,
      work_order_id: input.orderId,
      at: input.at ?? context.now,
      way: input.way,
      reached: input.reached,
      words: input.words,
      person_id: signedIn(context).id,
    });
    return { id };
  },
};
