import { addDays } from '../../core/time/civil.ts';
import { civilDateOf, wallToInstant } from '../../core/time/instant.ts';
import { Field } from '../parts/Field.tsx';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';

/** When something was done that is keyed in later, from the bench copy: the last time the shop's clock showed this. */
export function instantOf(time: string, zone: string, now: number): number | null {
  if (!/^\d{2}:\d{2}$/.test(time)) return null;
  const today = civilDateOf(now, zone);
  const at = wallToInstant(`${today}T${time}`, zone);
  return at <= now ? at : wallToInstant(`${addDays(today, -1)}T${time}`, zone);
}

interface Props {
  /** "HH:MM"; '' for now; null while nobody asked for it. */
  readonly value: string | null;
  readonly onChange: (time: string | null) => void;
}

/** For what was done from paper while the power was out: its time, which the record shows as entered late. */
export function EarlierTime({ value, onChange }: Props) {
  return value === null ? (
    <button type="button" className="link" onClick={() => onChange('')}>
      {t('bench.wasEarlier')}
    </button>
  ) : (
    <Field label={t('bench.doneAt')} type="time" value={value} onChange={onChange} note={t('bench.lateNote')} />
  );
}

/** What goes along to the shop: nothing for now. */
export function useEarlier(): (time: string | null) => { at?: number } {
  const { zone } = useWriting();
  return (time) => {
    const at = instantOf(time ?? '', zone, Date.now());
    return at === null ? {} : { at };
  };
}
