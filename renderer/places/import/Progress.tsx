import { Button } from '../../parts/Button.tsx';
import { t } from '../../words/t.ts';
import type { Work } from './use-bring-in.ts';

/** Long work: counts, time left, a way out. What is in hand is finished before it stops. */
export function Progress({ work, onStop }: { readonly work: Work; readonly onStop: (() => void) | null }) {
  const { what, done, total, since } = work;
  const left = done === 0 || total === 0 ? null : Math.ceil(((Date.now() - since) / done) * (total - done) * 0.001);
  return (
    <div className="bring-progress" role="status">
      <p>
        <b>{t(`bringIn.${what}`)}</b> {total === 0 ? (done === 0 ? null : done) : t('bringIn.doneOf', { done, total })}
        {left === null ? null : `, ${t('bringIn.timeLeft', { seconds: left })}`}
      </p>
      <progress max={Math.max(total, 1)} value={total === 0 ? undefined : done} aria-label={t(`bringIn.${what}`)} />
      <p>
        <span className="ink-2">{t('bringIn.goOnWorking')}</span>
        {onStop === null ? null : (
          <Button small onClick={onStop}>
            {t('bringIn.stop')}
          </Button>
        )}
      </p>
    </div>
  );
}
