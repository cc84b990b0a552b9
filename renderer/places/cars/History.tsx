import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';

const READERS = ['owner', 'later-owner'] as const;
type Reader = (typeof READERS)[number];

/** The car's history to take along: to its owner, or to a later one without the person. */
export function History({ carId }: { readonly carId: string }) {
  const writing = useWriting();
  const [reader, setReader] = useState<Reader>('owner');
  const [prices, setPrices] = useState(false);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState('');
  const [wrong, setWrong] = useState('');
  const make = async () => {
    setBusy(true);
    const answer = await ask('car.history', { id: carId, reader, prices: prices && reader === 'owner' });
    setBusy(false);
    setWrong(answer.ok ? '' : errorSentence(answer.error, writing));
    if (!answer.ok) return setSaid('');
    const { name, base64, visits, keptBack } = answer.output;
    savePdf(name, base64);
    const kept = keptBack === 0 ? '' : ` ${t('cars.historyKept', { n: keptBack })}`;
    setSaid(t('cars.historyMade', { name, n: visits }) + kept);
  };
  return (
    <section className="car-part" aria-label={t('cars.history')}>
      <Choice
        label={t('cars.historyFor')}
        value={reader}
        options={READERS.map((value) => ({ value, words: t(`cars.history-${value}`) }))}
        onChange={setReader}
      />
      <p className="small ink-2">{t(`cars.historyWords-${reader}`)}</p>
      {reader === 'owner' ? (
        <Tick ticked={prices} onTick={setPrices}>
          {t('cars.historyPrices')}
        </Tick>
      ) : null}
      <div className="car-acts">
        <Button disabled={busy} onClick={() => void make()}>
          {t('cars.historyMake')}
        </Button>
        <span role="status">{said}</span>
      </div>
      {wrong === '' ? null : (
        <p role="alert" className="wrong-words">
          {wrong}
        </p>
      )}
    </section>
  );
}
