import { Button } from '../../parts/Button.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';

/** The files that were brought in before, each with the way to take it back. */
export function Earlier({ busy, onTakeBack }: { readonly busy: boolean; readonly onTakeBack: (id: string) => void }) {
  const writing = useWriting();
  const runs = useAsk('import.list', {}).data?.runs;
  const now = Date.now();
  if (runs === undefined) return null;
  return (
    <section className="bring-earlier" aria-label={t('bringIn.earlier')}>
      <h3 className="h4">{t('bringIn.earlier')}</h3>
      {runs.length === 0 ? <p className="ink-2">{t('bringIn.noEarlier')}</p> : null}
      <ul>
        {runs.map((run) => (
          <li key={run.id}>
            <b className="semi">{run.fileName}</b>
            <span>
              {t('bringIn.run', {
                ...{ when: nearText(run.at, writing, now), person: run.person },
                ...{ customers: run.counts.customers, cars: run.counts.cars, visits: run.counts.visits },
              })}
            </span>
            {run.undoneAt === null ? (
              <Button small disabled={busy} onClick={() => onTakeBack(run.id)}>
                {t('bringIn.takeBack')}
              </Button>
            ) : (
              <span className="ink-2">{t('bringIn.wasTakenBack', { when: nearText(run.undoneAt, writing, now) })}</span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
