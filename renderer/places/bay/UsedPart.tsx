import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { heldWords } from '../../bench/held-words.ts';
import { Stepper } from '../../bench/Stepper.tsx';
import { TapsWaiting } from '../../bench/TapsWaiting.tsx';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { useWriting } from '../../state/shop.ts';
import { tap, tapsOf, useTaps } from '../../state/taps.ts';
import { useAsk } from '../../state/use-ask.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { BayTop } from './BayTop.tsx';
import { ClockStrip } from './ClockStrip.tsx';

type Part = OutputOf<'part.list'>['rows'][number];

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly onBack: () => void;
}

interface Pick {
  readonly part: Part;
  /** Of the job, where the part stands on one. */
  readonly lineId: string | null;
}

/** One press, thousandths: a piece, or a tenth of what is measured. */
const PIECE = 1000;
const TENTH = 100;

/** Used a part: what stands on the job's lines first, then anything on the shelf; how many; off the shelf at once. */
export function UsedPart({ order, job, onBack }: Props) {
  const writing = useWriting();
  const [text, setText] = useState('');
  const [pick, setPick] = useState<Pick | null>(null);
  const [quantity, setQuantity] = useState<number | null>(null);
  const stock = useAsk('part.list', {}).data?.rows ?? [];
  const hits = useAsk('part.list', text.trim() === '' ? null : { text: text.trim(), most: 8 }).data?.rows ?? [];
  const taps = useTaps((state) => state.taps);
  const held = heldWords(order, job);
  const issued = (lineId: string) =>
    order.moves.filter((move) => move.lineId === lineId).reduce((sum, move) => sum - move.quantity, 0) +
    tapsOf(taps, 'part.issue')
      .filter(({ input }) => input.lineId === lineId)
      .reduce((sum, { input }) => sum + input.quantity, 0);
  const lines = job.lines.flatMap((line) => {
    const part = stock.find(
      (one) => one.id === line.partId || (line.partNumber !== '' && one.number === line.partNumber),
    );
    return part === undefined ? [] : [{ line, part, left: line.quantity - issued(line.id) }];
  });
  const take = (to: Pick, many: number) => {
    setPick(to);
    setQuantity(Math.max(many, to.part.unit === '' ? PIECE : TENTH));
  };
  const use = async () => {
    if (pick === null || quantity === null || quantity <= 0) return;
    await tap('part.issue', { jobId: job.id, lineId: pick.lineId, partId: pick.part.id, quantity });
    onBack();
  };
  return (
    <>
      <BayTop
        order={order}
        title={t('bay.usedPart')}
        under={`${job.letter} ${job.title}`}
        action={<Button onClick={onBack}>{t('bay.back')}</Button>}
      />
      <ClockStrip order={order} />
      <TapsWaiting />
      <div className="bay-mid">
        {lines.length === 0 ? null : (
          <section className="found-row" aria-label={t('bay.onTheJob')}>
            <h2>{t('bay.onTheJob')}</h2>
            {lines.map(({ line, part, left }) => (
              <PartRow
                key={line.id}
                part={part}
                chosen={pick?.lineId === line.id}
                words={line.words}
                note={
                  left <= 0 ? t('bench.taken') : t('bay.stillToTake', { n: quantityText(left, line.unit, writing) })
                }
                onPick={() => take({ part, lineId: line.id }, left)}
              />
            ))}
          </section>
        )}
        <section className="found-row" aria-label={t('bay.onTheShelf')}>
          <h2>{t('bay.onTheShelf')}</h2>
          <Field label={t('bay.findPart')} value={text} onChange={setText} />
          {hits.map((part) => (
            <PartRow
              key={part.id}
              part={part}
              chosen={pick?.lineId === null && pick.part.id === part.id}
              words={part.words}
              note={t('bay.onHand', { n: quantityText(part.onHand, part.unit, writing) })}
              onPick={() => take({ part, lineId: null }, PIECE)}
            />
          ))}
          {text.trim() !== '' && hits.length === 0 ? <p className="ink-2">{t('bay.noPart')}</p> : null}
        </section>
      </div>
      <footer className="found-foot">
        {pick === null ? (
          <p>{t('bay.pickFirst')}</p>
        ) : (
          <>
            <p>
              <b>{pick.part.words}</b>, {pick.part.number}
              {pick.part.bin === '' ? '' : `, ${pick.part.bin}`}. {pick.lineId === null ? t('bay.onNoLine') : ''}
            </p>
            <Stepper
              label={t('bench.howMuch')}
              value={quantity}
              onChange={setQuantity}
              step={pick.part.unit === '' ? PIECE : TENTH}
              unit={pick.part.unit}
            />
          </>
        )}
        <Button
          kind="go"
          held={held ?? (pick === null || quantity === null || quantity <= 0 ? t('bay.pickHeld') : null)}
          onClick={() => void use()}
        >
          {t('bay.useIt')}
        </Button>
      </footer>
    </>
  );
}

interface RowProps {
  readonly part: Part;
  readonly chosen: boolean;
  readonly words: string;
  readonly note: string;
  readonly onPick: () => void;
}

function PartRow({ part, chosen, words, note, onPick }: RowProps) {
  return (
    <button type="button" className="part-row" aria-pressed={chosen} onClick={onPick}>
      <span>
        <b>{words}</b> <span className="ink-2">{part.number}</span>
      </span>
      <span>{note}</span>
      <b>{part.bin}</b>
    </button>
  );
}
