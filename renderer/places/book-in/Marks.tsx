import { useState } from 'react';
import { DRAWN_VIEWS, type DrawnView } from '../../../core/car/outline.ts';
import { CAR_SHAPES } from '../../../core/car/outline-shapes.ts';
import { TakePhoto } from '../../bench/TakePhoto.tsx';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { CarDrawing, type PlacedMark } from './CarDrawing.tsx';
import type { Change, Draft, Errors } from './draft.ts';
import { NewMark, OldMark, Taken } from './MarkRow.tsx';
import type { DrawnMark, SeenMark, WalkDraft } from './mark-draft.ts';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

const KINDS = ['scratch', 'dent', 'crack'] as const;
const MIDDLE = 500;

/**
 * Marks on the car, drawn where they are: those of earlier visits are ticked still so or gone, new ones are numbered on.
 * What has no place on a drawing is written a line each.
 */
export function Marks({ draft, change, errors }: Props) {
  const writing = useWriting();
  const now = Date.now();
  const known = draft.carId === null ? null : { carId: draft.carId };
  const list = useAsk('mark.list', known).data;
  const photos = useAsk('photo.list', known).data?.rows ?? [];
  const { walk } = draft;
  const [view, setView] = useState<DrawnView>('top');
  const [kind, setKind] = useState<(typeof KINDS)[number]>('scratch');
  const put = (part: Partial<WalkDraft>) => change({ walk: { ...walk, ...part } });

  const shape = walk.shape ?? list?.outline ?? 'saloon';
  const old = (list?.rows ?? []).filter((mark) => mark.gone === null);
  const nowOf = (id: string) => walk.seen.find((mark) => mark.id === id)?.now ?? null;
  const placed = [
    ...old.map((mark, at) => ({ ...mark, key: mark.id, n: at + 1, fresh: false, gone: nowOf(mark.id) === 'gone' })),
    ...walk.drawn.map((mark, at) => ({ ...mark, n: old.length + at + 1, fresh: true, gone: false })),
  ];
  const here: PlacedMark[] = placed.filter((mark) => mark.view === view);

  const draw = (x: number, y: number, focus: 'words' | 'mark') => {
    const key = crypto.getRandomValues(new Uint32Array(2)).join('');
    const words = t('intake.markBegins', { kind: t(`intake.kind-${kind}`), view: t(`intake.on-${view}`) });
    put({ shape, drawn: [...walk.drawn, { ...{ key, view, x, y, words }, photos: [] }] });
    const wanted = focus === 'words' ? `[data-mark-words="${key}"]` : `[data-mark="${key}"]`;
    // The press itself would take the focus away again.
    setTimeout(() => {
      const field = document.querySelector<HTMLElement>(wanted);
      field?.focus();
      if (field instanceof HTMLInputElement) field.setSelectionRange(words.length, words.length);
    });
  };
  const redraw = (key: string, part: Partial<DrawnMark>) =>
    put({ drawn: walk.drawn.map((mark) => (mark.key === key ? { ...mark, ...part } : mark)) });
  const see = (marks: readonly { id: string; words: string }[], how: SeenMark['now'] | null) => {
    const rest = walk.seen.filter((one) => marks.every(({ id }) => id !== one.id));
    put({ seen: how === null ? rest : [...rest, ...marks.map(({ id, words }) => ({ id, words, now: how }))] });
  };
  return (
    <>
      <div className="mark-ways">
        <Choice
          label={t('intake.shape')}
          value={shape}
          options={CAR_SHAPES.map((value) => ({ value, words: t(`intake.shape-${value}`) }))}
          onChange={(to) => put({ shape: to })}
        />
        <Choice
          label={t('intake.view')}
          value={view}
          options={DRAWN_VIEWS.map((value) => ({
            value,
            words: `${t(`intake.view-${value}`)}${countOf(placed.filter((mark) => mark.view === value).length)}`,
          }))}
          onChange={setView}
        />
      </div>
      <CarDrawing
        shape={shape}
        view={view}
        marks={here}
        onDraw={(x, y) => draw(x, y, 'words')}
        onMove={(key, x, y) => redraw(key, { x, y })}
      />
      <div className="mark-ways">
        <Choice
          label={t('intake.drawA')}
          value={kind}
          options={KINDS.map((value) => ({ value, words: t(`intake.kind-${value}`) }))}
          onChange={setKind}
        />
        <span className="mark-acts">
          <Button small onClick={() => draw(MIDDLE, MIDDLE, 'mark')}>
            {t('intake.addMark')}
          </Button>
          <TakePhoto onPhoto={(address) => put({ whole: [...walk.whole, address] })}>{t('intake.photoCar')}</TakePhoto>
          <Taken photos={walk.whole} />
        </span>
      </div>
      {old.length === 0 ? null : (
        <p className="small">
          {t('intake.marksBefore')}{' '}
          <button type="button" className="link" onClick={() => see(old, 'still')}>
            {t('intake.allStillSo')}
          </button>
        </p>
      )}
      <ul className="intake-marks">
        {old.map((mark, at) => (
          <OldMark
            key={mark.id}
            n={at + 1}
            id={mark.id}
            words={mark.words}
            since={t('intake.markSince', { day: dayText(mark.first.at, writing, now) })}
            now={nowOf(mark.id)}
            photos={photos
              .filter(({ of, takenOut }) => of.what === 'mark' && of.id === mark.id && !takenOut)
              .map(({ id }) => id)}
            again={walk.again[mark.id] ?? []}
            onNow={(how) => see([mark], how)}
            onPhoto={(address) =>
              put({ again: { ...walk.again, [mark.id]: [...(walk.again[mark.id] ?? []), address] } })
            }
          />
        ))}
        {walk.drawn.map((mark, at) => (
          <NewMark
            key={mark.key}
            n={old.length + at + 1}
            mark={mark}
            error={errors.walk !== undefined && mark.words.trim() === ''}
            onChange={(part) => redraw(mark.key, part)}
            onOut={() => put({ drawn: walk.drawn.filter((one) => one.key !== mark.key) })}
          />
        ))}
      </ul>
      {errors.walk === undefined ? null : (
        <p className="wrong-words" role="alert">
          {errors.walk}
        </p>
      )}
      <WordMarks draft={draft} change={change} errors={errors} drawn={(list?.rows ?? []).map((mark) => mark.words)} />
    </>
  );
}

const countOf = (n: number) => (n === 0 ? '' : ` ${n}`);

/** Marks that are only words: those of the last visit to be ticked, and new ones, a line each. */
function WordMarks({ draft, change, errors, drawn }: Props & { readonly drawn: readonly string[] }) {
  const last = useAsk('car.get', draft.carId === null ? null : { id: draft.carId }).data?.visits[0]?.orderId;
  const before = (useAsk('order.get', last === undefined ? null : { id: last }).data?.door.marks ?? []).filter(
    (mark) => !drawn.includes(mark),
  );
  const keep = (mark: string, still: boolean) =>
    change({ kept: still ? [...draft.kept, mark] : draft.kept.filter((one) => one !== mark) });
  return (
    <>
      {before.length === 0 ? null : (
        <fieldset className="choice">
          <legend>{t('intake.wordMarksBefore')}</legend>
          <ul className="intake-marks words">
            {before.map((mark) => (
              <li key={mark}>
                <span>{mark}</span>
                <Tick
                  ticked={draft.kept.includes(mark)}
                  onTick={(still) => keep(mark, still)}
                  label={t('intake.stillSo', { mark })}
                />
                <span aria-hidden="true">{t('intake.stillSoShort')}</span>
              </li>
            ))}
          </ul>
        </fieldset>
      )}
      <Field
        label={t('intake.marks')}
        value={draft.marks}
        onChange={(marks) => change({ marks })}
        lines={2}
        error={errors.marks ?? null}
      />
    </>
  );
}
