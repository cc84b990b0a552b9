import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';

type Load = OutputOf<'booking.capacity'>['days'][number];

interface Props {
  readonly load: Load | null;
  readonly onAway: (personId: string) => void;
}

/** What can still be promised on a day, and whose hours those are, each with its drawn scale. */
export function DayLoad({ load, onAway }: Props) {
  const { decimal } = useWriting();
  if (load === null) return <div className="week-load" />;
  const h = (thousandths: number) => formatQuantity(thousandths, decimal);
  const { free, planned, booked } = load;
  const words = (one: Load['people'][number]) => {
    const figures = { name: one.name, present: h(one.present), booked: h(one.booked) };
    const why = one.absences.map((absence) => absence.words).find((text) => text !== '');
    if (one.present === 0)
      return why === undefined ? t('plan.personAway', figures) : t('plan.personAwayWhy', { ...figures, words: why });
    if (one.booked > one.present) return t('plan.personOver', figures);
    return t(one.booked > 0 ? 'plan.personBooked' : 'plan.personHours', figures);
  };
  return (
    <div className="week-load">
      <Scale part={booked} whole={planned} said={t('plan.loadSaid', { booked: h(booked), planned: h(planned) })} />
      <p className={free < 0 ? 'in-stop' : undefined}>
        {free < 0
          ? t('plan.over', { over: h(-free), planned: h(planned) })
          : t('plan.free', { free: h(free), planned: h(planned) })}
      </p>
      <ul>
        {load.people
          .filter((one) => one.hours > 0 || one.booked > 0)
          .map((one) => (
            <li key={one.personId}>
              <button
                type="button"
                className={one.booked > one.present ? 'link in-stop' : 'link'}
                onClick={() => onAway(one.personId)}
              >
                {words(one)}
              </button>
            </li>
          ))}
      </ul>
    </div>
  );
}

/** So much of so much: filled; what is too much is hatched on past the end. */
function Scale({ part, whole, said }: { readonly part: number; readonly whole: number; readonly said: string }) {
  const length = Math.max(part, whole, 1);
  const share = (figure: number) => `${(figure * 100) / length}%`;
  return (
    <div className="week-scale" role="img" aria-label={said}>
      <i className="filled" style={{ width: share(Math.min(part, whole)) }} />
      {part < whole ? <i className="left" style={{ width: share(whole - part) }} /> : null}
      {part > whole ? <i className="too-much" style={{ width: share(part - whole) }} /> : null}
    </div>
  );
}
