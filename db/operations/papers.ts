import type { PaperDocument, PaperTaken } from '../../core/paper/document.ts';
import { paperName } from '../../core/paper/words.ts';
import { addDays } from '../../core/time/civil.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { invoicePaper, passedWords, quotePaper, settingsOfOrder } from '../order/document.ts';
import { stopsOfOrder } from '../order/facts.ts';
import { issue } from '../order/issue.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { balanceOf, type Reckoned, reckonOrder } from '../order/reckon.ts';
import { makePdfAnew, pdfOf } from '../pdf.ts';
import { settingsOf, signedIn } from '../people.ts';
import { post, salePostings } from '../postings.ts';
import { badInput, held, heldBy, notAllowed, notFound, Refusal } from '../refusal.ts';
import { remindAfterInvoice } from '../remind.ts';
import { nextNumber } from '../series.ts';

const takenOf = (loaded: Loaded, zone: string): PaperTaken[] =>
  loaded.payments
    .flatMap((payment) => (payment.kind === 'rounding' ? [] : [{ ...payment, kind: payment.kind }]))
    .map((payment) => ({
      what: payment.kind,
      method: payment.way === '' ? null : payment.way,
      date: civilDateOf(payment.at, zone),
      amount: payment.amount,
    }));

/** What the coins there are added to what was paid already (below zero: took off). */
const roundingOf = (loaded: Loaded): number =>
  0 - loaded.payments.reduce((sum, payment) => sum + (payment.kind === 'rounding' ? payment.amount : 0), 0);

const sheetMoved = ({ order }: Loaded, now: number, seen: number) =>
  new Refusal({
    code: 'changed-meanwhile',
    what: 'work_order',
    id: order.id,
    revision: order.revision,
    now: { gross: now },
    yours: { gross: seen },
  });

/** Why there is nothing to quote; null where there is. A quote over nothing is one where something is free in it. */
function nothingToQuote(loaded: Loaded, { inSum, answers, totals }: Reckoned) {
  if (inSum.length === 0) {
    const declined = loaded.jobs.length > 0 && loaded.jobs.every((job) => answers.get(job.id) !== undefined);
    return declined ? 'quote-declined' : 'nothing-on-the-sheet';
  }
  const free = (job: Loaded['jobs'][number]) =>
    job.kind !== 'charged' ||
    job.given === 1 ||
    loaded.lines.some((line) => line.job_id === job.id && line.given === 1);
  return totals.gross === 0 && !inSum.some(free) ? 'quote-empty' : null;
}

export const paperHandlers: Handlers = {
  'quote.issue': async ({ orderId, validUntil }, context) => {
    const settings = settingsOf(context);
    const loaded = await loadOrder(context, orderId);
    const reckoned = reckonOrder(loaded, settings);
    const nothing = nothingToQuote(loaded, reckoned);
    if (nothing !== null) throw held([{ what: nothing, with: {} }]);
    const before = loaded.papers.findLast((paper) => paper.kind === 'quote');
    const number = before?.number ?? (await nextNumber(context, 'quote'));
    const version = (before?.version ?? 0) + 1;
    const until = validUntil ?? addDays(context.today, settings.quoteDays);
    if (until < context.today) throw badInput('validUntil', 'in-the-past');
    const document = quotePaper(context, settings, loaded, reckoned, { number, version, validUntil: until });
    const paperId = await issue(
      context,
      loaded,
      document,
      reckoned.totals,
      { sheet: reckoned.sheet, rules: reckoned.rules },
      { version, valid_until: until },
    );
    return { paperId, number, version, gross: reckoned.totals.gross };
  },
  'invoice.issue': async ({ orderId, seen, overrides }, context) => {
    const who = signedIn(context);
    const settings = settingsOf(context);
    const loaded = await loadOrder(context, orderId);
    const before = loaded.papers.find((paper) => paper.kind === 'invoice');
    if (before) throw held([{ what: 'invoiced', with: { number: before.number } }]);
    const reckoned = reckonOrder(loaded, settings);
    if (reckoned.inSum.length === 0) throw held([{ what: 'nothing-on-the-sheet', with: {} }]);
    const { gross } = reckoned.totals;
    if (seen !== null && seen !== gross) throw sheetMoved(loaded, gross, seen);
    const stops = stopsOfOrder(loaded, reckoned, context.seesPrices);
    const reasons = new Map<string, string>(overrides.map((one) => [one.what, one.reason]));
    const standing = stops.filter((stop) => stop.override === 'never' || !reasons.has(stop.what));
    if (standing.length > 0) throw heldBy(standing);
    if (who.role !== 'owner' && stops.some((stop) => stop.override === 'owner'))
      throw notAllowed('role', { needs: 'owner' });
    const number = await nextNumber(context, 'invoice');
    const dueOn = addDays(context.today, settings.payDays);
    const taken = takenOf(loaded, settings.zone);
    const toPay = reckoned.totals.gross + balanceOf(loaded);
    const printed = stops.map((stop) => ({
      what: passedWords(settingsOfOrder(settings, loaded), stop),
      reason: reasons.get(stop.what) ?? '',
      by: who.name,
    }));
    const document = invoicePaper(context, settings, loaded, reckoned, {
      number,
      dueOn,
      taken,
      cashRounding: roundingOf(loaded),
      toPay,
      overrides: printed,
    });
    const paperId = await issue(
      context,
      loaded,
      document,
      reckoned.totals,
      { sheet: reckoned.sheet, rules: reckoned.rules },
      { due_on: dueOn },
    );
    await post(context, paperId, salePostings(reckoned.totals, 1, settings.prices === 'inclusive'));
    await remindAfterInvoice(context, loaded, reckoned, paperId);
    return { paperId, number, gross: reckoned.totals.gross, toPay };
  },
  'paper.read': async ({ id }, context) => {
    const row = await context.tx.selectFrom('paper').select('document').where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('paper', id);
    const document = JSON.parse(row.document) as PaperDocument;
    const bytes = await pdfOf(context.folder, id, document);
    return { name: `${paperName(document)}.pdf`, base64: Buffer.from(bytes).toString('base64') };
  },
  'paper.makeAnew': async ({ id }, context) => {
    const row = await context.tx.selectFrom('paper').select('document').where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('paper', id);
    await makePdfAnew(context.folder, id, JSON.parse(row.document) as PaperDocument, context.now);
    return { id };
  },
  'paper.sent': async ({ id, how, at }, context) => {
    const row = await context.tx.selectFrom('paper').select('id').where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('paper', id);
    if (at !== null && at > context.now) throw badInput('at', 'in-the-future');
    const sentId = newId();
    await context.write.insert('paper_sent', {
      id: sentId,
      paper_id: id,
      at: at ?? context.now,
      how,
      person_id: signedIn(context).id,
    });
    return { id: sentId };
  },
};
