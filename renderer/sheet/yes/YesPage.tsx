import { useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { goTo } from '../../frame/router.ts';
import { TwoSides } from '../../frame/TwoSides.tsx';
import { Button } from '../../parts/Button.tsx';
import { FootBar } from '../../parts/FootBar.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { Wrong } from '../Wrong.tsx';
import { answerAfter, forgetDraft, saidOf, useYesDraft, type YesDraft } from './draft.ts';
import { ceilingOf, readDraft, readUpTo, type Wrongs } from './read-draft.ts';
import { reckonHere } from './reckon-here.ts';
import { rememberSaid } from './said-now.ts';
import { YesForm } from './YesForm.tsx';
import { YesSheet } from './YesSheet.tsx';
import './yes.css';

/** The places of the form in the order of the talk: the first that does not fit gets the focus. */
const PLACES = ['jobs', 'upTo', 'who', 'reached', 'strokes', 'at'] as const;

/** Recording a yes: the sheet answers which jobs, the form beside it the rest; the foot shows the yes to come, dashed. */
export function YesPage({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const settings = useShop()?.settings ?? null;
  const quotes = useAsk('quote.list', { orderId: order.id }).data?.quotes ?? [];
  const record = useDo('decision.record');
  const [draft, setDraft] = useYesDraft(order.id);
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const here = settings === null ? null : reckonHere(order, settings, (job) => answerAfter(order, draft, job));
  const upTo = draft.upTo ?? amountText(here?.covered.gross ?? null, writing);
  const ceiling = ceilingOf(readUpTo(upTo, writing), order);
  const anyYes = order.jobs.some((job) => saidOf(order, draft, job).answer === 'yes');

  const leave = () => goTo('orders', order.id);
  const go = async () => {
    const read = readDraft({ order, draft, quotes, upTo, writing, now: Date.now() });
    if ('wrongs' in read) {
      setWrongs(read.wrongs);
      const first = PLACES.find((place) => read.wrongs[place] !== undefined);
      // The field stands already; its sentence comes with the next drawing.
      document.querySelector<HTMLElement>(`[data-place="${first}"] :is(input, textarea, button)`)?.focus();
      return;
    }
    setWrongs({});
    const answer = await record.run(read);
    if (!answer.ok) return;
    rememberSaid({ orderId: order.id, decisionId: answer.output.id, ceiling: answer.output.ceiling });
    forgetDraft(order.id);
    leave();
  };
  useKey('Ctrl+Enter', () => void go());
  useKey('Esc', leave);

  return (
    <TwoSides
      first="bench"
      sheetLabel={`${t('sheet.order')} ${order.number}, ${t('decision.jobs')}`}
      sheet={
        <YesSheet
          order={order}
          quotes={quotes}
          draft={draft}
          onDraft={setDraft}
          here={here}
          upTo={amountText(ceiling, writing)}
          wrong={wrongs.jobs}
        />
      }
      benchLabel={t('decision.side')}
      bench={
        <YesForm
          order={order}
          quotes={quotes}
          draft={draft}
          onDraft={setDraft}
          here={here}
          upTo={upTo}
          ceiling={anyYes ? ceiling : null}
          wrongs={wrongs}
          onSend={() => void go()}
        />
      }
      foot={
        <>
          <Wrong error={record.error} />
          <FootBar
            yes={comingYes(order, here, ceiling, anyYes, draft)}
            {...(anyYes && ceiling !== null ? { coming: ceiling } : {})}
          >
            <Button onClick={leave}>{t('decision.leave')}</Button>
            <Button kind="go" keys="Ctrl+Enter" onClick={() => void go()} disabled={record.busy}>
              {t('decision.record')}
            </Button>
          </FootBar>
        </>
      }
    />
  );
}

/** The foot's figures as they would stand: what is on the sheet, and what would still be held. */
function comingYes(
  order: Order,
  here: ReturnType<typeof reckonHere>,
  ceiling: number | null,
  anyYes: boolean,
  draft: YesDraft,
): Order['yes'] {
  if (here === null) return order.yes;
  const held = order.jobs.filter((job) => here.inSum.has(job.id) && answerAfter(order, draft, job) !== 'yes');
  const reach = anyYes ? (ceiling ?? 0) : (order.yes.ceiling ?? 0);
  return {
    ...order.yes,
    onSheet: here.whole.gross,
    coveredTotal: here.covered.gross,
    coveredExcess: Math.max(0, here.covered.gross - reach - (order.yes.allowed ?? 0)),
    held: held.map(({ id, letter, title }) => ({ jobId: id, letter, title })),
    heldSum: here.whole.gross - here.covered.gross,
  };
}
