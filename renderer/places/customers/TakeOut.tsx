import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

type Look = OutputOf<'privacy.look'>;
type MayGo = Look['goes'][number]['what'];

/** What goes and what must stay, each with why, before anything goes. */
export function TakeOut({ id, onDone }: { readonly id: string; readonly onDone: () => void }) {
  const writing = useWriting();
  const look = useAsk('privacy.look', { customerId: id }).data;
  const takeOut = useDo('privacy.takeOut');
  const owner = useSession((session) => session.person?.role === 'owner');
  const [kept, setKept] = useState<readonly MayGo[]>([]);
  const [gone, setGone] = useState(false);
  if (look === undefined) return null;
  const goes = look.goes.map((one) => one.what).filter((what) => !kept.includes(what));
  const why = (row: Look['stays'][number]) =>
    row.why === 'years' && row.until !== null
      ? t('privacy.why-years', { until: civilText(row.until, writing) })
      : t(row.why === 'years' ? 'privacy.why-years-none' : `privacy.why-${row.why}`);
  const go = async () => {
    const answer = await takeOut.run({ customerId: id, revision: look.revision, goes });
    if (answer.ok) setGone(true);
  };
  return (
    <section className="privacy-look" aria-label={t('privacy.look')}>
      {gone ? (
        <p role="status" className="semi">
          {t('privacy.gone')}
        </p>
      ) : null}
      <h3>{t('privacy.goes')}</h3>
      {look.goes.length === 0 ? <p className="ink-2">{t('privacy.nothingGoes')}</p> : null}
      <ul>
        {look.goes.map(({ what, n }) => (
          <li key={what}>
            <Tick
              ticked={!kept.includes(what)}
              onTick={(ticked) => setKept(ticked ? kept.filter((one) => one !== what) : [...kept, what])}
            >
              {t(`privacy.goes-${what}`, { n })}
            </Tick>
          </li>
        ))}
      </ul>
      <h3>{t('privacy.stays')}</h3>
      <ul>
        {look.stays.map((row) => (
          <li key={row.what}>
            <b className="semi">{t(`privacy.stays-${row.what}`, { n: row.n })}</b>
            <br />
            <span className="small ink-2">{why(row)}</span>
          </li>
        ))}
      </ul>
      {goes.length === 0 ? null : (
        <p className="small">
          <b className="in-heed">{t('privacy.sure')}</b>
        </p>
      )}
      <div className="contact-acts">
        {goes.length === 0 ? null : (
          <Button
            onClick={() => void go()}
            disabled={takeOut.busy}
            {...(owner ? {} : { held: t('privacy.ownerOnly') })}
          >
            {t('privacy.go')}
          </Button>
        )}
        <Button onClick={onDone}>{t('privacy.leave')}</Button>
      </div>
      <NotSaved error={takeOut.error} />
    </section>
  );
}
