import { Button } from '../parts/Button.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { CloseOut } from './close-out.ts';

type Drawn = CloseOut['onNoLine'][number];

/** A part that was drawn and stands on no line: back on the shelf, or charged on the job it was drawn for. */
export function MendDrawn({ order, rows }: { readonly order: Order; readonly rows: readonly Drawn[] }) {
  const writing = useWriting();
  const back = useDo('part.putBack');
  const add = useDo('line.add');
  const issue = useDo('part.issue');
  const stock = useAsk('part.list', rows.length === 0 ? null : {}).data?.rows ?? [];

  /**
   * A line for it, the part drawn onto that line, then the first drawing put back: in this order a refusal (beyond the
   * yes) leaves the shelf's count true, and a second press goes on with the line that stands already.
   */
  const charge = async (row: Drawn, unitPrice: number) => {
    const part = stock.find((one) => one.id === row.partId);
    const stands = order.jobs
      .find((job) => job.id === row.jobId)
      ?.lines.find((line) => line.partId === row.partId && !order.moves.some((move) => move.lineId === line.id));
    let lineId = stands?.id;
    if (lineId === undefined) {
      const added = await add.run({
        jobId: row.jobId,
        line: {
          kind: part?.unit === 'L' ? 'fluid' : 'part',
          words: row.words,
          partNumber: part?.number ?? '',
          partId: row.partId,
          quantity: row.quantity,
          unit: row.unit,
          unitPrice,
        },
      });
      if (!added.ok) return;
      lineId = added.output.id;
    }
    const drawn = await issue.run({ jobId: row.jobId, lineId, partId: row.partId, quantity: row.quantity });
    if (drawn.ok) await back.run({ moveId: row.moveId, quantity: row.quantity });
  };

  return (
    <>
      {rows.map((row) => {
        const { letter, words } = row;
        const price = stock.find((one) => one.id === row.partId)?.price ?? null;
        return (
          <div className="mend-drawn" key={row.moveId}>
            <span className="small ink-2">
              {t('closeOut.drawn', { quantity: quantityText(row.quantity, row.unit, writing), letter })}
            </span>
            <Button
              small
              label={t('closeOut.putOnLineOf', { letter, words })}
              disabled={add.busy || issue.busy}
              held={price === null ? t('closeOut.noPrice') : null}
              onClick={() => void charge(row, price ?? 0)}
            >
              {t('closeOut.putOnLine', { letter })}
            </Button>
            <Button
              small
              label={t('closeOut.putOnShelfOf', { words })}
              disabled={back.busy}
              onClick={() => void back.run({ moveId: row.moveId, quantity: row.quantity })}
            >
              {t('closeOut.putOnShelf')}
            </Button>
          </div>
        );
      })}
      <Wrong error={back.error ?? issue.error ?? add.error} />
    </>
  );
}
