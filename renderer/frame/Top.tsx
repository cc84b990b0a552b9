import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { longDay } from '../words/times.ts';
import { FindLine } from './FindLine.tsx';
import { Mark } from './Mark.tsx';
import { useWidth } from './width.ts';

interface Props {
  readonly placesShown: boolean;
  readonly onPlaces: () => void;
}

/** Top: one find line, the day and the time; on a tablet also the mark, behind which the places fold. */
export function Top({ placesShown, onPlaces }: Props) {
  const tablet = useWidth().width === 'tablet';
  const day = longDay(useNow(5000), useWriting());
  return (
    <header className="top">
      {tablet ? (
        <button
          type="button"
          className="mark"
          aria-expanded={placesShown}
          aria-controls="places"
          aria-label={t('frame.showPlaces')}
          onClick={onPlaces}
        >
          <Mark />
        </button>
      ) : null}
      <FindLine />
      <div className="when">
        <span>{day.weekday}</span> {day.rest}
      </div>
    </header>
  );
}
