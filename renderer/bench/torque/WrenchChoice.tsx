import { create } from 'zustand';
import { Choice } from '../../parts/Choice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

/** The wrench in hand at this window, until another is taken or the window closes. */
export const useWrench = create<{ readonly id: string | null }>(() => ({ id: null }));

const NONE = '';

/** Which wrench of the shop is in hand; one whose calibration is overdue says so, and so does the record. */
export function WrenchChoice({ used }: { readonly used: string }) {
  const writing = useWriting();
  const wrenches = useAsk('wrench.list', {}).data?.rows ?? [];
  const id = useWrench((wrench) => wrench.id);
  const inHand = wrenches.find((wrench) => wrench.id === id);
  if (wrenches.length === 0) return <p className="small ink-2">{t('bench.noWrenches')}</p>;
  return (
    <div className="wrenches">
      <Choice
        label={t('bench.wrench')}
        value={id ?? NONE}
        options={[
          ...wrenches.map((wrench) => ({
            value: wrench.id,
            words: wrench.overdue ? t('bench.wrenchOverdue', { name: wrench.name }) : wrench.name,
          })),
          { value: NONE, words: t('bench.wrenchNone') },
        ]}
        onChange={(wrench) => useWrench.setState({ id: wrench === NONE ? null : wrench })}
      />
      {inHand?.overdue ? (
        <p className="wrong-words" role="alert">
          {t('bench.overdueWarning', {
            name: inHand.name,
            day: inHand.dueOn === null ? '' : civilText(inHand.dueOn, writing),
          })}
        </p>
      ) : null}
      {used === '' || inHand !== undefined ? null : (
        <p className="small ink-2">{t('bench.wrenchBefore', { name: used })}</p>
      )}
    </div>
  );
}
