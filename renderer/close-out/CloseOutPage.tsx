import { useRef, useState } from 'react';
import { useKey } from '../frame/keys.ts';
import { goTo } from '../frame/router.ts';
import { TwoSides } from '../frame/TwoSides.tsx';
import { Button } from '../parts/Button.tsx';
import { FootBar } from '../parts/FootBar.tsx';
import { Loading } from '../parts/Loading.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { heldSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';
import { BeforeItLeaves } from './BeforeItLeaves.tsx';
import { CloseOutSheet } from './CloseOutSheet.tsx';
import type { Stop } from './close-out.ts';
import { Made } from './Made.tsx';
import { NotDone } from './NotDone.tsx';
import { useNextControl } from './next-control.ts';
import { StorageDue } from './StorageDue.tsx';
import { stopSentence } from './stop-sentence.ts';
import { WaysOut } from './WaysOut.tsx';
import './close-out.css';

/** Esc leaves the field in hand first, then the page. */
function leaveFieldOr(leave: () => void): void {
  const at = document.activeElement;
  if (at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement) at.blur();
  else leave();
}

/** Closing an order out: the sheet against the work done, what stops the invoice with its ways out, and the invoice. */
export function CloseOutPage({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const asked = useAsk('closeOut.get', { orderId: order.id });
  const owner = useSession((session) => session.person?.role === 'owner');
  const invoice = useDo('invoice.issue');
  const [reasons, setReasons] = useState<Readonly<Record<string, string>>>({});
  const toSheet = () => goTo('orders', order.id);
  const toYes = () => goTo('orders', order.id, 'yes');
  const closeOut = asked.data;
  const reasonFor = (stop: Stop) =>
    stop.override === 'note' || (stop.override === 'owner' && owner) ? (reasons[stop.what] ?? '').trim() : '';
  const standing = (closeOut?.stops ?? []).filter((stop) => reasonFor(stop) === '');
  const empty = closeOut !== undefined && closeOut.jobs.length === 0;
  const ready = closeOut !== undefined && !empty && standing.length === 0;
  const make = async () => {
    const passed = new Map((closeOut?.stops ?? []).map((stop) => [stop.what, reasonFor(stop)]));
    const overrides = [...passed].flatMap(([what, reason]) => (reason === '' ? [] : [{ what, reason }]));
    const answer = await invoice.run({ orderId: order.id, seen: closeOut?.totals?.charge ?? null, overrides });
    if (answer.ok) goTo('orders', order.id, 'invoice');
  };
  useKey('Ctrl+Enter', () => void make(), ready && !invoice.busy);
  useKey('Esc', () => leaveFieldOr(toSheet));
  const main = useRef<HTMLButtonElement>(null);
  useNextControl(closeOut === undefined ? undefined : closeOut.stops.length, main);

  if (closeOut === undefined)
    return asked.error !== null ? (
      <div className="page">
        <Wrong error={asked.error} />
      </div>
    ) : asked.loading ? (
      <Loading rows={10} />
    ) : null;

  const [first] = standing;
  const why = empty
    ? heldSentence({ what: 'nothing-on-the-sheet', with: {} }, writing)
    : first === undefined
      ? null
      : standing.length === 1
        ? stopSentence(first, writing)
        : t('closeOut.stopsMore', { first: stopSentence(first, writing), n: standing.length - 1 });
  return (
    <TwoSides
      first="bench"
      sheetLabel={`${t('sheet.order')} ${order.number}`}
      sheet={<CloseOutSheet order={order} closeOut={closeOut} />}
      benchLabel={t('closeOut.before')}
      bench={
        <>
          <BeforeItLeaves
            order={order}
            stops={closeOut.stops}
            onNoLine={closeOut.onNoLine}
            reasons={reasons}
            onReason={(what, reason) => setReasons({ ...reasons, [what]: reason })}
          />
          <StorageDue order={order} />
          <WaysOut order={order} closeOut={closeOut} onYes={toYes} />
          <Made closeOut={closeOut} />
        </>
      }
      foot={
        <>
          <NotDone
            what={t('closeOut.notMade')}
            changed={t('closeOut.sheetMoved')}
            error={invoice.error}
            onAgain={() => void invoice.again()}
          />
          <FootBar yes={order.yes}>
            <Button onClick={toSheet}>{t('closeOut.leave')}</Button>
            <Button
              ref={main}
              kind="go"
              keys="Ctrl+Enter"
              onClick={() => void make()}
              disabled={invoice.busy}
              held={why}
            >
              {t('closeOut.make')}
            </Button>
          </FootBar>
        </>
      }
    />
  );
}
