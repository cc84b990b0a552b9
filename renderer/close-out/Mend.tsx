import { CorrectClock } from '../bench/CorrectClock.tsx';
import { goTo } from '../frame/router.ts';
import { Button } from '../parts/Button.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { onRevision } from '../state/on-revision.ts';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import type { CloseOut, Stop } from './close-out.ts';
import { MendBill } from './MendBill.tsx';
import { MendDrawn } from './MendDrawn.tsx';
import { MendMileage } from './MendMileage.tsx';
import { MendNumber } from './MendNumber.tsx';
import { MendQuarantine } from './MendQuarantine.tsx';

interface Props {
  readonly order: Order;
  readonly stop: Stop;
  readonly onNoLine: CloseOut['onNoLine'];
}

/** The way to mend one stop where it stands; a missing yes has its ways out below. */
export function Mend({ order, stop, onNoLine }: Props) {
  const words = String(stop.with.words ?? '');
  switch (stop.what) {
    case 'clock-open':
      return <StopClock order={order} person={String(stop.with.person ?? '')} />;
    case 'clock-forgotten':
      return <EndClock order={order} person={String(stop.with.person ?? '')} />;
    case 'mileage-out-missing':
      return <MendMileage order={order} />;
    case 'po-missing':
      return <MendNumber order={order} />;
    case 'old-parts-unanswered':
      return <OldParts order={order} />;
    case 'outside-bill-missing':
      return <MendBill order={order} words={words} />;
    case 'part-on-no-line':
      return <MendDrawn order={order} rows={onNoLine.filter((row) => row.words === words)} />;
    case 'quarantine':
      return <MendQuarantine order={order} words={words} />;
    case 'torque-missing':
    case 'second-missing':
    case 'step-failed':
    case 'step-not-needed':
      return (
        <button type="button" className="link" onClick={() => goTo('orders', order.id, `job-${stop.with.letter}`)}>
          {t('closeOut.toStep', { step: stop.with.step ?? '' })}
        </button>
      );
    case 'over-own-maximum':
    case 'beyond-own-maximum':
      return <p className="small ink-2">{t('closeOut.maximumHow')}</p>;
    default:
      return null;
  }
}

function StopClock({ order, person }: { readonly order: Order; readonly person: string }) {
  const off = useDo('clock.off');
  const clock = order.openClocks.find((one) => one.person === person);
  if (clock === undefined) return null;
  return (
    <>
      <Button small disabled={off.busy} onClick={() => void off.run({ personId: clock.personId })}>
        {t('closeOut.stopClock', { person })}
      </Button>
      <Wrong error={off.error} />
    </>
  );
}

function EndClock({ order, person }: { readonly order: Order; readonly person: string }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const me = useSession((session) => session.person);
  const corrected = new Set(order.clocks.map((one) => one.corrects));
  const entry = order.clocks.find((one) => one.person === person && one.off === null && !corrected.has(one.id));
  if (entry === undefined) return null;
  return (
    <>
      <p className="small ink-2">{t('closeOut.forgottenOn', { when: nearText(entry.on, writing, now) })}</p>
      {me?.role === 'owner' || me?.personId === entry.personId ? (
        <CorrectClock entry={entry} onDone={() => {}} />
      ) : (
        <p className="small">{t('closeOut.clockWho', { person })}</p>
      )}
    </>
  );
}

const ANSWERS = ['returned', 'shown', 'core', 'refused', 'disposed'] as const;

function OldParts({ order }: { readonly order: Order }) {
  const change = useDo('order.change');
  return (
    <div className="old-parts">
      {ANSWERS.map((oldPartsAnswer) => (
        <Button
          small
          key={oldPartsAnswer}
          disabled={change.busy}
          onClick={() =>
            void onRevision(
              order.revision,
              (revision) => change.run({ id: order.id, revision, change: { oldPartsAnswer } }),
              (row) => row.oldPartsAnswer === order.oldPartsAnswer,
            )
          }
        >
          {t(`closeOut.oldPart-${oldPartsAnswer}`)}
        </Button>
      ))}
      <Wrong error={change.error} />
    </div>
  );
}
