import { useState } from 'react';
import { Photo } from '../../bench/Photo.tsx';
import { base64Of } from '../../bench/photo-file.ts';
import { TakePhoto } from '../../bench/TakePhoto.tsx';
import { TapsWaiting } from '../../bench/TapsWaiting.tsx';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { Wrong } from '../../sheet/Wrong.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { tap, tapsOf, useTaps } from '../../state/taps.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { BayTop } from './BayTop.tsx';
import { ClockStrip } from './ClockStrip.tsx';
import { PhotoPaper } from './PhotoPaper.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly step: number | null;
  readonly onBack: () => void;
}

/** Photos of the visit: taken of the step in hand or of the car, with a word; which of them are printed. */
export function PhotoPage({ order, job, step, onBack }: Props) {
  const writing = useWriting();
  const now = useNow(30_000);
  const rows = (useAsk('photo.list', { orderId: order.id }).data?.rows ?? []).filter((row) => !row.takenOut);
  const waiting = tapsOf(
    useTaps((state) => state.taps),
    'photo.keep',
  ).filter(({ input }) => input.orderId === order.id);
  const print = useDo('photo.print');
  const takeOut = useDo('photo.takeOut');
  const [of, setOf] = useState<'step' | 'car'>(step === null ? 'car' : 'step');
  const [address, setAddress] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const keep = async () => {
    if (address === null) return;
    await tap('photo.keep', {
      orderId: order.id,
      of:
        of === 'step' && step !== null && job !== undefined
          ? { what: 'step', id: job.id, step }
          : { what: 'order', id: order.id },
      words,
      base64: base64Of(address),
    });
    setAddress(null);
    setWords('');
  };
  return (
    <>
      <BayTop
        order={order}
        title={t('bay.photo')}
        action={<Button onClick={onBack}>{step === null ? t('bay.back') : t('bay.backToStep', { n: step })}</Button>}
      />
      <ClockStrip order={order} />
      <TapsWaiting />
      <div className="bay-mid">
        {address === null ? (
          <div className="pictures one">
            <TakePhoto onPhoto={setAddress}>{t('found.takeOne')}</TakePhoto>
          </div>
        ) : (
          <div className="photo-new">
            <img src={address} alt={t('bay.justTaken')} />
            <div>
              {step === null ? null : (
                <Choice
                  label={t('bay.photoOf')}
                  value={of}
                  options={[
                    { value: 'step', words: t('bay.ofStep', { n: step }) },
                    { value: 'car', words: t('bay.ofCar') },
                  ]}
                  onChange={setOf}
                />
              )}
              <Field label={t('bay.photoWords')} value={words} maxLength={200} onChange={setWords} />
              <Button kind="go" onClick={() => void keep()}>
                {t('bay.keepPhoto')}
              </Button>
              <Button onClick={() => setAddress(null)}>{t('bay.takeAgain')}</Button>
            </div>
          </div>
        )}
        {waiting.length === 0 ? null : <p className="in-heed semi">{t('bay.photosWait', { n: waiting.length })}</p>}
        <Wrong error={print.error ?? takeOut.error} />
        {rows.length === 0 ? (
          <p className="ink-2">{t('bay.noPhotos')}</p>
        ) : (
          <ul className="photo-list">
            {rows.map((row) => (
              <li key={row.id}>
                <Photo id={row.id} words={row.words} />
                <p>
                  {row.of.what === 'step' ? `${t('bay.ofStep', { n: row.of.step })}. ` : ''}
                  {row.words} <span className="ink-2">{`${row.by}, ${nearText(row.at, writing, now)}`}</span>
                </p>
                {row.kind === 'webp' ? null : (
                  <Tick
                    ticked={row.printed}
                    onTick={(printed) => void print.run({ id: row.id, revision: row.revision, printed })}
                  >
                    {t('bay.printIt')}
                  </Tick>
                )}
                <button
                  type="button"
                  className="link"
                  onClick={() => void takeOut.run({ id: row.id, revision: row.revision, takenOut: true })}
                >
                  {t('bay.takeOut')}
                </button>
              </li>
            ))}
          </ul>
        )}
        {rows.some((row) => row.printed) ? <PhotoPaper orderId={order.id} /> : null}
      </div>
    </>
  );
}
