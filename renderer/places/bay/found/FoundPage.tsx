import { useState } from 'react';
import { base64Of } from '../../../bench/photo-file.ts';
import { TakePhoto } from '../../../bench/TakePhoto.tsx';
import { TapsWaiting } from '../../../bench/TapsWaiting.tsx';
import { Button } from '../../../parts/Button.tsx';
import { Choice } from '../../../parts/Choice.tsx';
import { Field } from '../../../parts/Field.tsx';
import type { Job, Order } from '../../../sheet/order.ts';
import { useNow } from '../../../state/now.ts';
import { newRequestId } from '../../../state/request-id.ts';
import { useWriting } from '../../../state/shop.ts';
import { tap } from '../../../state/taps.ts';
import { t } from '../../../words/t.ts';
import { timeText, weekdayText } from '../../../words/times.ts';
import { BayTop } from '../BayTop.tsx';
import { ClockStrip } from '../ClockStrip.tsx';
import { CarZones } from './CarZones.tsx';
import { measuredOf, NOT_MEASURED } from './limit.ts';
import { MeasuredRow } from './MeasuredRow.tsx';
import { type Mend, MendRow } from './MendRow.tsx';
import { IT_IS, type ItIs, PARTS, type Part, type Zone } from './zones.ts';

interface Props {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly step: number | null;
  readonly onBack: () => void;
}

type Urgency = Order['findings'][number]['urgency'];
const URGENCIES: readonly Urgency[] = ['unsafe', 'soon', 'watch'];
const OTHER = 'other';

interface Picture {
  readonly at: number;
  readonly address: string;
}

/** Found something: where, which part, what it is, measured, how urgent, pictures, what would mend it; in any order. */
export function FoundPage({ order, job, step, onBack }: Props) {
  const writing = useWriting();
  const now = useNow(30_000);
  const [zone, setZone] = useState<Zone | null>(null);
  const [part, setPart] = useState<Part | typeof OTHER | null>(null);
  const [itIs, setItIs] = useState<ItIs | null>(null);
  const [own, setOwn] = useState('');
  const [measuring, setMeasuring] = useState(NOT_MEASURED);
  const [urgency, setUrgency] = useState<Urgency | null>(null);
  const [pictures, setPictures] = useState<readonly Picture[]>([]);
  const [mend, setMend] = useState<Mend | null>(null);

  const place = zone === null ? '' : t(`found.zone-${zone}`);
  const partWords = part === null || part === OTHER ? '' : t(`found.part-${part}`);
  const usual = itIs === 'loose' ? t('found.play') : itIs === 'worn' ? t('found.thickness') : t('found.figure');
  const state = itIs === null ? '' : t(`found.is-${itIs}`);
  const head = [place, partWords].filter((words) => words !== '').join(', ');
  const text = [[head, state].filter((words) => words !== '').join(': '), own.trim()]
    .filter((words) => words !== '')
    .join('. ');
  const missing =
    text === '' || (partWords === '' && own.trim() === '')
      ? t('found.sayWhat')
      : urgency === null
        ? t('found.sayUrgent')
        : null;

  const send = async (withMend: boolean) => {
    if (missing !== null || urgency === null) return;
    const id = newRequestId();
    await tap('finding.add', {
      ...{ orderId: order.id, id, text, urgency, place, part: partWords },
      measured: measuredOf(measuring, usual),
      mend: withMend ? mend : null,
    });
    for (const { address } of pictures)
      await tap('photo.keep', {
        ...{ orderId: order.id, of: { what: 'finding', id }, words: head, base64: base64Of(address) },
      });
    onBack();
  };
  const when = `${weekdayText(now, writing)}, ${timeText(now, writing)}`;
  return (
    <>
      <BayTop
        order={order}
        title={t('bay.found')}
        under={
          step === null
            ? t('bay.orderAt', { number: order.number, when })
            : t('bay.orderStepAt', { number: order.number, n: step, when })
        }
        action={<Button onClick={onBack}>{step === null ? t('bay.back') : t('bay.backToStep', { n: step })}</Button>}
      />
      <ClockStrip order={order} />
      <TapsWaiting />
      <div className="bay-mid found">
        <div className="found-where">
          <div>
            <h2>{t('found.where')}</h2>
            <CarZones
              value={zone}
              onChange={(to) => {
                setZone(to);
                if (part !== OTHER) setPart(null);
              }}
            />
          </div>
          <div>
            <h2>
              {place === '' ? t('found.whichPart') : place}{' '}
              {place === '' ? null : <small>{t('found.whichPartSmall')}</small>}
            </h2>
            {zone === null ? (
              <p className="ink-2">{t('found.whereFirst')}</p>
            ) : (
              <Choice
                quiet
                label={t('found.whichPart')}
                value={part}
                options={[
                  ...PARTS[zone].map((one) => ({ value: one, words: t(`found.part-${one}`) })),
                  { value: OTHER, words: t('found.otherPart') },
                ]}
                onChange={setPart}
              />
            )}
            <h2>{t('found.itIs')}</h2>
            <Choice
              quiet
              label={t('found.itIs')}
              value={itIs}
              options={IT_IS.map((one) => ({ value: one, words: t(`found.is-${one}`) }))}
              onChange={setItIs}
            />
            <Field label={t('found.inWords')} value={own} maxLength={400} onChange={setOwn} />
            <MeasuredRow value={measuring} onChange={setMeasuring} usual={usual} part={partWords || own} />
          </div>
        </div>
        <section className="found-row urgent" aria-label={t('found.urgent')}>
          <h2>{t('found.urgent')}</h2>
          <Choice
            quiet
            label={t('found.urgent')}
            value={urgency}
            options={URGENCIES.map((one) => ({
              value: one,
              words: (
                <>
                  <b>{t(`found.urgency-${one}`)}</b>
                  <span>{t(`found.means-${one}`)}</span>
                </>
              ),
            }))}
            onChange={setUrgency}
          />
        </section>
        <section className="found-row" aria-label={t('found.pictures')}>
          <h2>{t('found.pictures')}</h2>
          <div className="pictures">
            {pictures.map(({ at, address }, n) => (
              <figure key={at}>
                <img src={address} alt={t('found.picture', { n: n + 1 })} />
                <figcaption>{timeText(at, writing)}</figcaption>
                <button
                  type="button"
                  className="link"
                  aria-label={t('found.dropPicture', { n: n + 1 })}
                  onClick={() => setPictures(pictures.filter((one) => one.at !== at))}
                >
                  {t('found.drop')}
                </button>
              </figure>
            ))}
            <TakePhoto onPhoto={(address) => setPictures((all) => [...all, { at: Date.now(), address }])}>
              {t(pictures.length === 0 ? 'found.takeOne' : 'found.takeAnother')}
            </TakePhoto>
          </div>
        </section>
        <MendRow value={mend} onChange={setMend} about={`${partWords} ${own}`} car={job?.title ?? ''} />
      </div>
      <footer className="found-foot">
        <p>
          {t('found.goesToDesk')} <b>{t('found.doNotStart')}</b> {t('found.beforeYes')}
        </p>
        <Button held={missing} onClick={() => void send(false)}>
          {t('found.keep')}
        </Button>
        <Button kind="go" held={missing ?? (mend === null ? t('found.sayMend') : null)} onClick={() => void send(true)}>
          {t('found.send')}
        </Button>
      </footer>
    </>
  );
}
