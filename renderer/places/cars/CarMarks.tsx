import { useState } from 'react';
import { DRAWN_VIEWS } from '../../../core/car/outline.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Photo } from '../../bench/Photo.tsx';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { CarDrawing } from '../book-in/CarDrawing.tsx';

type Mark = OutputOf<'mark.list'>['rows'][number];

/** The marks of a car over all its visits, where they are; what was written down wrongly is put right. */
export function CarMarks({ carId }: { readonly carId: string }) {
  const list = useAsk('mark.list', { carId }).data;
  const photos = useAsk('photo.list', { carId }).data?.rows ?? [];
  if (list === undefined || list.rows.length === 0) return null;
  const placed = list.rows.map((mark, at) => ({
    ...{ key: mark.id, n: at + 1, view: mark.view, x: mark.x, y: mark.y, words: mark.words },
    ...{ fresh: false, gone: mark.gone !== null },
  }));
  const { outline } = list;
  const views = DRAWN_VIEWS.filter((view) => placed.some((mark) => mark.view === view));
  return (
    <section className="car-part">
      <h2>{t('intake.carMarks')}</h2>
      <div className="car-marks">
        {views.map((view) => (
          <CarDrawing
            key={view}
            shape={outline ?? 'saloon'}
            view={view}
            marks={placed.filter((mark) => mark.view === view)}
          />
        ))}
      </div>
      <ul className="intake-marks">
        {list.rows.map((mark, at) => (
          <MarkLine
            key={mark.id}
            n={at + 1}
            mark={mark}
            photos={photos
              .filter(({ of, takenOut }) => of.what === 'mark' && of.id === mark.id && !takenOut)
              .map(({ id }) => id)}
          />
        ))}
      </ul>
    </section>
  );
}

interface LineProps {
  readonly n: number;
  readonly mark: Mark;
  readonly photos: readonly string[];
}

function MarkLine({ n, mark, photos }: LineProps) {
  const change = useDo('mark.change');
  const [words, setWords] = useState<string | null>(null);
  const [open, setOpen] = useState(false);
  const { id, revision, first, last, gone } = mark;
  const save = async () => {
    if (words === null || words.trim() === '') return;
    if ((await change.run({ id, revision, change: { words } })).ok) setWords(null);
  };
  return (
    <li className={gone === null ? undefined : 'gone'}>
      <span className="car-mark" aria-hidden="true">
        {n}
      </span>
      {words === null ? (
        <span>
          {mark.words}{' '}
          <small className="ink-2">
            {gone === null
              ? t('intake.markVisits', { first: first.number, last: last.number })
              : t('intake.markGoneAt', { gone: gone.number })}
          </small>
        </span>
      ) : (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          <input
            className="in"
            aria-label={t('intake.markWords', { n })}
            value={words}
            maxLength={160}
            onChange={(event) => setWords(event.target.value)}
          />
        </form>
      )}
      <span className="mark-photos">
        {photos.length === 0 ? null : (
          <button type="button" className="link" onClick={() => setOpen(true)}>
            {t('intake.photos', { n: photos.length })}
          </button>
        )}
      </span>
      {gone === null ? (
        <Button
          small
          label={words === null ? t('intake.putRightMark', { n }) : t('intake.putRight')}
          onClick={() => (words === null ? setWords(mark.words) : void save())}
        >
          {t('intake.putRight')}
        </Button>
      ) : (
        <Button small onClick={() => void change.run({ id, revision, change: { goneOrderId: null } })}>
          {t('intake.thereAfterAll')}
        </Button>
      )}
      <NotSaved error={change.error} />
      {open ? (
        <Dialog title={mark.words} onClose={() => setOpen(false)}>
          {photos.map((photo) => (
            <Photo key={photo} id={photo} words={mark.words} />
          ))}
        </Dialog>
      ) : null}
    </li>
  );
}
