import { Children, type ReactNode } from 'react';
import { t } from '../words/t.ts';

interface Props {
  /** Who, how, when: a line each. */
  readonly lines: readonly ReactNode[];
  /** Amount as text; '' where it may not be seen. */
  readonly upTo: string;
  /** Leans the other way, so that two under one another look stamped by hand. */
  readonly right?: boolean;
  /** Dashed and straight: about to be, not recorded yet. */
  readonly coming?: boolean;
  /** Comes down once. */
  readonly fresh?: boolean;
}

/** A yes: a thing with a person, a time, a way and an amount. */
export function Stamp({ lines, upTo, right = false, coming = false, fresh = false }: Props) {
  const look = ['stamp', right ? 'right' : '', coming ? 'coming' : '', fresh ? 'fresh' : ''].join(' ').trim();
  return (
    <div className={look}>
      <div>
        <span className="stamp-yes">{t('parts.yes')}</span>
        {Children.map(lines, (line) => (
          <span>{line}</span>
        ))}
        {upTo === '' ? null : <b>{t('parts.upTo', { amount: upTo })}</b>}
      </div>
    </div>
  );
}
