import { Button } from '../parts/Button.tsx';
import { wrongSentence } from '../sheet/Wrong.tsx';
import { useSession } from '../state/session.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { forgetTap, sendAgain, useTaps } from '../state/taps.ts';
import { t, tMaybe } from '../words/t.ts';
import { timeText } from '../words/times.ts';

/** What was tapped and the shop has not taken: how many wait and for what, and what was refused and why. */
export function TapsWaiting() {
  const writing = useWriting();
  const { taps, away } = useTaps();
  const me = useSession((session) => session.person?.personId);
  const people = useShop()?.people ?? [];
  const waiting = taps.filter((one) => one.error === null && !one.taken);
  const others = waiting.filter((one) => one.personId !== me);
  const refused = taps.flatMap((one) => (one.error === null ? [] : [{ ...one, error: one.error }]));
  const mine = waiting.length - others.length;
  if ((mine === 0 || !away) && others.length === 0 && refused.length === 0) return null;
  const what = (operation: string) => tMaybe(`bench.tap-${operation.replace('.', '-')}`) ?? operation;
  return (
    <div className="taps" role="status">
      {mine > 0 && away ? <p className="semi">{t('bench.tapsWait', { n: mine })}</p> : null}
      {others.length === 0 ? null : (
        <p>
          {t('bench.tapsOf', {
            n: others.length,
            name: people.find((person) => person.id === others[0]?.personId)?.name ?? '',
          })}
        </p>
      )}
      {refused.map((one) => (
        <div key={one.place} className="tap-refused">
          <p>
            <b className="in-stop">
              {t('bench.tapRefused', { what: what(one.operation), time: timeText(one.at, writing) })}
            </b>{' '}
            {wrongSentence(one.error, writing)}
          </p>
          <Button small onClick={() => sendAgain(one.place)}>
            {t('parts.tryAgain')}
          </Button>
          <Button small onClick={() => forgetTap(one.place)}>
            {t('bench.tapLeave')}
          </Button>
        </div>
      ))}
    </div>
  );
}
