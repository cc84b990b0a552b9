import { useWriting } from '../state/shop.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';

export interface HoursRow {
  readonly key: string;
  readonly person: string;
  /** Thousandths of an hour; null where nothing was quoted for this person: then no tick is drawn. */
  readonly quoted: number | null;
  readonly clocked: number;
}

/** The first step in hours that leaves room for its figures on the ruler. */
function stepOf(hours: number): number {
  return [0.5, 1, 2, 5, 10, 20, 50].find((step) => hours / step <= (step < 1 ? 4 : 7)) ?? 100;
}

/** Hours clocked drawn per person on one ruler, with a tick at the quote and hatch beyond it; the figures beside. */
export function HoursBar({
  rows,
  quotedWords,
  clockedWords,
}: {
  readonly rows: readonly HoursRow[];
  readonly quotedWords: string;
  readonly clockedWords: string;
}) {
  const writing = useWriting();
  const most = Math.max(1000, ...rows.flatMap((row) => [row.quoted ?? 0, row.clocked]));
  const step = stepOf(most / 1000);
  const end = Math.ceil(most / 1000 / step) * step;
  const marks = Array.from({ length: Math.round(end / step) + 1 }, (_, i) => i * step);
  const at = (thousandths: number) => `${(thousandths / 10 / end).toFixed(3)}%`;
  return (
    <div className="hours">
      <div className="hours-head" aria-hidden="true">
        <span />
        <div className="ruler">
          {marks.map((mark) => (
            <span key={mark} style={{ left: at(mark * 1000) }}>
              {mark === end ? t('parts.hours', { n: mark }) : mark}
            </span>
          ))}
        </div>
        <span className="figure">{quotedWords}</span>
        <span className="figure">{clockedWords}</span>
      </div>
      {rows.map((row) => (
        <div className="hours-row" key={row.key}>
          <span>{row.person}</span>
          <div className="hours-bar" aria-hidden="true">
            {marks.map((mark) => (
              <i key={mark} className="grid" style={{ left: at(mark * 1000) }} />
            ))}
            <i className="worked" style={{ width: at(Math.min(row.clocked, row.quoted ?? row.clocked)) }} />
            {row.quoted !== null && row.clocked > row.quoted ? (
              <i className="over" style={{ left: at(row.quoted), width: at(row.clocked - row.quoted) }} />
            ) : null}
            {row.quoted === null ? null : <i className="quote" style={{ left: at(row.quoted) }} />}
          </div>
          <span className="figure">{row.quoted === null ? '' : quantityText(row.quoted, '', writing)}</span>
          <span className="figure">{quantityText(row.clocked, '', writing)}</span>
        </div>
      ))}
    </div>
  );
}
