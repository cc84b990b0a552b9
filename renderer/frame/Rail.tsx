import { setMachine, useMachine } from '../state/machine.ts';
import { useNow } from '../state/now.ts';
import { leave, useSession } from '../state/session.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { spanText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { timeText } from '../words/times.ts';
import { Mark } from './Mark.tsx';
import { hrefOf, PLACES, type PlaceName } from './router.ts';
import { useWidth } from './width.ts';

interface Props {
  readonly place: PlaceName;
  readonly onGo: () => void;
}

/** Left: the mark, the eight places as words, who is working with the running clock, the light. */
export function Rail({ place, onGo }: Props) {
  const tablet = useWidth().width === 'tablet';
  return (
    <nav className="rail" aria-label={t('frame.places')} id="places">
      {tablet ? null : (
        <div className="mark">
          <Mark />
          <span>{t('frame.program')}</span>
        </div>
      )}
      {PLACES.map((name) => (
        <a
          key={name}
          className="place-link"
          href={hrefOf(name)}
          aria-current={name === place ? 'page' : undefined}
          onClick={onGo}
        >
          {t(`frame.${name}`)}
        </a>
      ))}
      <div className="rail-foot">
        <Working />
        <Light />
      </div>
    </nav>
  );
}

function Working() {
  const person = useSession((session) => session.person);
  const open = useAsk('today.get', person ? {} : null).data?.open ?? [];
  const closes = useShop()?.settings?.planCloses ?? '24:00';
  const writing = useWriting();
  const now = useNow();
  if (!person) return null;
  const mine = open.find((clock) => clock.personId === person.personId);
  const afterHours = timeText(now, writing).padStart(5, '0') > closes;
  return (
    <>
      {(afterHours ? open : []).map((clock) => (
        <p key={clock.personId} className="in-heed">
          {clock.orderNumber === null
            ? t('frame.stillRunsFree', { person: clock.person })
            : t('frame.stillRuns', { person: clock.person, order: clock.orderNumber })}
        </p>
      ))}
      <p>
        <b>{person.name}</b>{' '}
        {mine?.kind === 'break'
          ? t('frame.onBreak')
          : mine?.orderNumber
            ? t('frame.clockOn', { order: mine.orderNumber })
            : ''}
        <br />
        {mine ? t('frame.clockAt', { time: spanText(now - mine.on) }) : t('frame.noClock')}
      </p>
      <button type="button" onClick={() => void leave()}>
        {t('frame.changePerson')}
      </button>
    </>
  );
}

function Light() {
  const bay = useMachine((machine) => machine.light === 'bay');
  return (
    <div className="rail-light">
      <button type="button" role="switch" aria-checked={bay} onClick={() => setMachine({ light: bay ? 'day' : 'bay' })}>
        <span>{t('frame.bayLight')}</span>
        <span className="semi" aria-hidden="true">
          {t(bay ? 'frame.on' : 'frame.off')}
        </span>
      </button>
    </div>
  );
}
