import { useRef } from 'react';
import { hrefOf } from '../../frame/router.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { StatementSent } from './StatementSent.tsx';

export interface StatementRow {
  readonly id: string;
  readonly customerId: string;
  readonly customer: string;
  readonly email: string;
  readonly closing: number;
  /** null: still to be made. */
  readonly file: string | null;
  readonly sent: readonly { readonly at: number; readonly how: string; readonly by: string }[];
}

interface Props {
  readonly label: string;
  readonly until: string;
  readonly rows: readonly StatementRow[];
  /** One file holds them all: it is opened above, not row by row. */
  readonly joined: boolean;
  readonly onFile: (name: string) => void;
}

/** Statements of a run one below the other: each with its file, and how it was sent or the way to write that down. */
export function StatementRows({ label, until, rows, joined, onFile }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const list = useRef<HTMLUListElement>(null);
  /** The form goes with what it wrote down; the keys go on at the next one. */
  const goOnFrom = (id: string) => {
    const after = rows.slice(rows.findIndex((row) => row.id === id) + 1);
    const next = after.find((row) => row.sent.length === 0 && row.file !== null);
    const to = next === undefined ? `[data-id="${id}"] a` : `[data-id="${next.id}"] input`;
    list.current?.querySelector<HTMLElement>(to)?.focus();
  };
  return (
    <ul className="statement-rows" ref={list} aria-label={label}>
      {rows.map((row) => (
        <li key={row.id} data-id={row.id}>
          <div>
            <a className="semi" href={hrefOf('customers', row.customerId)}>
              {row.customer}
            </a>
            <br />
            {row.file === null ? (
              <span className="small ink-2">{t('statement.toMake')}</span>
            ) : joined ? null : (
              <button type="button" className="link small" onClick={() => onFile(row.file ?? '')}>
                {t('statement.file', { name: row.file })}
              </button>
            )}
          </div>
          <b className="figure">{amountText(row.closing, writing)}</b>
          {row.sent.length > 0 ? (
            <p className="ink-2">
              {row.sent
                .map(({ at, how }) => t('statement.rowSent', { when: nearText(at, writing, now), how }))
                .join(' ')}
            </p>
          ) : row.file === null ? (
            <span />
          ) : (
            <StatementSent
              which={{ id: row.id }}
              {...{ until, customer: row.customer, email: row.email }}
              onDone={() => goOnFrom(row.id)}
            />
          )}
        </li>
      ))}
    </ul>
  );
}
