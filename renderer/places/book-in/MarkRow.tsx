import { useState } from 'react';
import { Photo } from '../../bench/Photo.tsx';
import { TakePhoto } from '../../bench/TakePhoto.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { t } from '../../words/t.ts';
import type { DrawnMark, SeenMark } from './mark-draft.ts';

interface OldProps {
  readonly n: number;
  readonly id: string;
  readonly words: string;
  /** "since 4 Mar 2026". */
  readonly since: string;
  readonly now: SeenMark['now'] | null;
  /** Ids of photos that the shop has of it. */
  readonly photos: readonly string[];
  readonly again: readonly string[];
  readonly onNow: (now: SeenMark['now'] | null) => void;
  readonly onPhoto: (address: string) => void;
}

/** A mark of an earlier visit: still so, or gone. */
export function OldMark({ n, id, words, since, now, photos, again, onNow, onPhoto }: OldProps) {
  const [open, setOpen] = useState(false);
  return (
    <li className={now === 'gone' ? 'gone' : undefined}>
      <span className="car-mark" aria-hidden="true">
        {n}
      </span>
      <span id={`mark-${id}`}>
        {words} <small className="ink-2">{since}</small>
      </span>
      <span className="mark-photos">
        {photos.length === 0 ? null : (
          <button type="button" className="link" aria-describedby={`mark-${id}`} onClick={() => setOpen(true)}>
            {t('intake.photos', { n: photos.length })}
          </button>
        )}
        <Taken photos={again} />
        <TakePhoto onPhoto={onPhoto}>{t('intake.photo')}</TakePhoto>
      </span>
      <span className="mark-now">
        <Tick
          ticked={now === 'still'}
          onTick={(on) => onNow(on ? 'still' : null)}
          label={t('intake.stillSo', { mark: words })}
        />
        <span aria-hidden="true">{t('intake.stillSoShort')}</span>
        <Tick
          ticked={now === 'gone'}
          onTick={(on) => onNow(on ? 'gone' : null)}
          label={t('intake.gone', { mark: words })}
        />
        <span aria-hidden="true">{t('intake.goneShort')}</span>
      </span>
      {open ? (
        <Dialog title={words} onClose={() => setOpen(false)}>
          {photos.map((photo) => (
            <Photo key={photo} id={photo} words={words} />
          ))}
        </Dialog>
      ) : null}
    </li>
  );
}

interface NewProps {
  readonly n: number;
  readonly mark: DrawnMark;
  readonly error: boolean;
  readonly onChange: (part: Partial<DrawnMark>) => void;
  readonly onOut: () => void;
}

/** A mark that was drawn just now: its words, its photos. */
export function NewMark({ n, mark, error, onChange, onOut }: NewProps) {
  return (
    <li>
      <span className="car-mark fresh" aria-hidden="true">
        {n}
      </span>
      <input
        className={error ? 'in wrong' : 'in'}
        data-mark-words={mark.key}
        aria-label={t('intake.markWords', { n })}
        aria-invalid={error || undefined}
        value={mark.words}
        maxLength={160}
        onChange={(event) => onChange({ words: event.target.value })}
      />
      <span className="mark-photos">
        <Taken photos={mark.photos} />
        <TakePhoto onPhoto={(address) => onChange({ photos: [...mark.photos, address] })}>
          {t('intake.photo')}
        </TakePhoto>
      </span>
      <button type="button" className="link" aria-label={t('intake.markOut', { n })} onClick={onOut}>
        {t('intake.markOutShort')}
      </button>
    </li>
  );
}

/** Photos of this talk, small. */
export function Taken({ photos }: { readonly photos: readonly string[] }) {
  return photos.map((address) => (
    <img key={address.slice(-64)} className="mark-taken" src={address} alt={t('intake.photoTaken')} />
  ));
}
