import type { ReactNode } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { listWords } from '../words/list.ts';
import { t } from '../words/t.ts';
import { YesBar } from './YesBar.tsx';

export type Yes = OutputOf<'order.get'>['yes'];

interface Props {
  readonly yes: Yes;
  /** The ceiling of a yes that is being recorded, minor units: a dashed length. */
  readonly coming?: number;
  readonly children?: ReactNode;
}

/** The foot: yes up to, against on the sheet; what is held is hatched and named under it; the actions at the right. */
export function FootBar({ yes, coming, children }: Props) {
  const writing = useWriting();
  const { ceiling, onSheet } = yes;
  const blind = ceiling === undefined || onSheet === undefined;
  return (
    <section className="foot" aria-label={t('parts.yesUpTo')}>
      {blind ? null : (
        <div className="foot-figure">
          <span>{t('parts.yesUpTo')}</span>
          <b className="in-stamp">{amountText(ceiling, writing)}</b>
        </div>
      )}
      <div className="foot-bar">
        {blind ? null : <YesBar yes={{ ...yes, ceiling, onSheet }} {...(coming === undefined ? {} : { coming })} />}
        <p>
          <Words yes={yes} coming={coming} />
        </p>
      </div>
      {blind ? null : (
        <div className="foot-figure figure">
          <span>{t('parts.onTheSheet')}</span>
          <b>{amountText(onSheet, writing)}</b>
        </div>
      )}
      {children === undefined ? null : <div className="foot-actions">{children}</div>}
    </section>
  );
}

function Words({ yes, coming }: { readonly yes: Yes; readonly coming: number | undefined }) {
  const writing = useWriting();
  if (yes.ceiling === undefined)
    return <b className={yes.inside ? '' : 'in-stop'}>{t(yes.inside ? 'parts.benchInside' : 'parts.benchBeyond')}</b>;
  const letters = listWords(yes.held.map((job) => job.letter));
  const n = yes.held.length;
  const excess = yes.coveredExcess ?? 0;
  const room = yes.ceiling - (yes.coveredTotal ?? 0);
  return (
    <>
      {coming === undefined ? null : (
        <>
          <b className="in-stamp">{t('parts.coming', { sum: amountText(coming, writing) })}</b>{' '}
        </>
      )}
      {n === 0 ? null : (
        <>
          <b className="in-stop">{t('parts.heldWait', { n, letters, sum: amountText(yes.heldSum ?? 0, writing) })}</b>{' '}
          {coming === undefined ? t('parts.heldWork', { n, letters }) : null}{' '}
        </>
      )}
      {excess <= 0 ? null : (
        <>
          <b className="in-stop">{t('parts.beyond', { sum: amountText(excess, writing) })}</b>{' '}
          {n === 0 ? t('parts.beyondHeld') : null}
        </>
      )}
      {n > 0 || excess > 0 || coming !== undefined
        ? null
        : room > 0
          ? t('parts.inside', { sum: amountText(room, writing) })
          : t(yes.ceiling === 0 && yes.onSheet === 0 ? 'parts.nothingSaid' : 'parts.insideWhole')}
    </>
  );
}
