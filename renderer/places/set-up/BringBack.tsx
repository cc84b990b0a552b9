import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { begun } from '../../state/begun.ts';
import { type CallAnswer, mayPickCopy, pickCopy, sendBegin } from '../../state/transport.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';

type Wrong = { readonly wrong: string };
interface Look {
  readonly garage: string;
  readonly lastInvoice: number | null;
  readonly trail: number | null;
}
interface Here {
  readonly path: string;
  readonly words: string;
}

const MOST_SHOWN = 5;
/** The column that it stands in scrolls by itself: what is wrong must not stay under the foot. */
const inSight = (words: HTMLElement | null) => words?.scrollIntoView({ block: 'nearest' });

/** A copy is pointed at, looked into, and only then brought back, with the last invoice number that stands on paper. */
export function BringBack() {
  const [open, setOpen] = useState(false);
  const [here, setHere] = useState<readonly Here[]>([]);
  const [copy, setCopy] = useState('');
  const [look, setLook] = useState<Look | null>(null);
  const [last, setLast] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const lastWrong = !/^\d{0,9}$/.test(last.trim());

  /** What was answered, or null where it was a sentence about what is wrong. */
  const ask = async <O extends object>(body: object): Promise<O | null> => {
    setBusy(true);
    setWrong(null);
    const answer = (await sendBegin(body)) as CallAnswer<O | Wrong>;
    setBusy(false);
    if (answer.ok && !('wrong' in answer.output)) return answer.output;
    setWrong(answer.ok ? (answer.output as Wrong).wrong : errorSentence(answer.error));
    return null;
  };
  const begin = async () => {
    setOpen(true);
    const found = await ask<{ readonly copies: readonly Here[] }>({ what: 'copies' });
    if (found !== null) setHere(found.copies.slice(0, MOST_SHOWN));
  };
  const point = (path: string) => {
    setCopy(path);
    setLook(null);
    setWrong(null);
  };
  const pick = async () => {
    const path = await pickCopy();
    if (path !== null) point(path);
  };
  const go = async () => {
    if (look === null) return setLook(await ask<Look>({ what: 'look', copy }));
    if (lastWrong) return;
    const lastInvoice = Number(last.trim()) > 0 ? Number(last.trim()) : null;
    const back = await ask<{ readonly said: string }>({ what: 'bring-back', copy, lastInvoice });
    if (back !== null) await begun(back);
  };
  return (
    <section aria-label={t('start.copy')}>
      <h3>{t('start.copy')}</h3>
      <p>{t('start.copyWords')}</p>
      {open ? (
        <form
          className="set-up-copy"
          onSubmit={(event) => {
            event.preventDefault();
            void go();
          }}
        >
          {here.map((one) => (
            <p key={one.path}>
              <button type="button" className="link" onClick={() => point(one.path)}>
                {one.words}
              </button>
            </p>
          ))}
          <Field
            label={t('start.copyPlace')}
            value={copy}
            onChange={point}
            autoFocus
            maxLength={4096}
            note={t('start.copyPlaceNote')}
          />
          {mayPickCopy() ? (
            <Button small onClick={() => void pick()}>
              {t('start.copyPick')}
            </Button>
          ) : null}
          {look === null ? null : (
            <>
              <p role="status">
                <b>{look.garage || t('start.copyNobody')}</b>
                {', '}
                {look.lastInvoice === null ? t('start.copyNoInvoice') : t('start.copyInvoice', { n: look.lastInvoice })}{' '}
                {t('start.copySound')}
              </p>
              <Field
                label={t('start.copyLast')}
                value={last}
                onChange={setLast}
                inputMode="numeric"
                error={lastWrong ? t('start.copyLastWrong') : null}
                note={t('start.copyLastNote')}
              />
            </>
          )}
          <Button type="submit" disabled={busy || copy.trim() === ''}>
            {t(busy ? 'start.copyBusy' : look === null ? 'start.copyLook' : 'start.copyGo')}
          </Button>
        </form>
      ) : (
        <Button onClick={() => void begin()}>{t('start.copyOpen')}</Button>
      )}
      {wrong === null ? null : (
        <p className="wrong-words" role="alert" ref={inSight}>
          {wrong}
        </p>
      )}
    </section>
  );
}
