import { useRef, useState } from 'react';
import { EXPORTS } from '../../../core/contract/export-kinds.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { type Cell, writeCsv } from '../../../core/take-out/csv.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { saveText } from '../../parts/save-text.ts';
import { ask } from '../../state/call.ts';
import type { CallAnswer, CallError } from '../../state/transport.ts';
import { t } from '../../words/t.ts';

type Kind = (typeof EXPORTS)[number];
type Piece = OutputOf<'export.rows'>;

const rowsOf = ({ columns, figures, rows }: Piece): Cell[][] => {
  const isFigure = columns.map((name) => figures.includes(name));
  return rows.map((row) => row.map((text, at): Cell => (isFigure[at] ? { figure: text } : text)));
};

/** What the shop holds, as CSV files to take elsewhere: the same columns come in again. */
export function TakeOut() {
  const [done, setDone] = useState<number | null>(null);
  const [error, setError] = useState<CallError | null>(null);
  const stopping = useRef(false);
  const take = async (kind: Kind) => {
    stopping.current = false;
    setError(null);
    setDone(0);
    const written: Cell[][] = [];
    let after: string | null = '';
    while (after !== null && !stopping.current) {
      const answer: CallAnswer<Piece> = await ask('export.rows', { kind, after });
      if (!answer.ok) {
        setError(answer.error);
        break;
      }
      if (after === '') written.push(answer.output.columns);
      written.push(...rowsOf(answer.output));
      setDone(written.length - 1);
      after = answer.output.next;
    }
    setDone(null);
    if (after === null) saveText(`${kind}.csv`, writeCsv(written));
  };
  return (
    <section className="bring-out" aria-label={t('bringIn.out')}>
      <h3 className="h4">{t('bringIn.out')}</h3>
      <p className="ink-2">{t('bringIn.outWords')}</p>
      <div className="bring-acts">
        {EXPORTS.map((kind) => (
          <Button key={kind} disabled={done !== null} onClick={() => void take(kind)}>
            {t(`bringIn.out-${kind}`)}
          </Button>
        ))}
        {done === null ? null : (
          <Button
            small
            onClick={() => {
              stopping.current = true;
            }}
          >
            {t('bringIn.stopOut', { n: done })}
          </Button>
        )}
      </div>
      <NotSaved error={error} />
    </section>
  );
}
