import { useRef } from 'react';
import { civilDateOf } from '../../../core/time/instant.ts';
import { useKey } from '../../frame/keys.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import type { OrderFilter } from './OrderWeek.tsx';

const WHICH = ['open', 'unpaid', 'refused', 'cameBack', 'lab', 'oldUnit', 'past', 'all'] as const;

interface Props {
  readonly filter: OrderFilter;
  /** When the first order ever was opened. */
  readonly first: number | null;
  readonly onChange: (part: Partial<OrderFilter>) => void;
}

/** One sentence that says which orders: each underlined word opens its own list. */
export function FilterSentence({ filter, first, onChange }: Props) {
  const which = useRef<HTMLSelectElement>(null);
  useKey('F', () => which.current?.focus());
  const { zone } = useWriting();
  const yearOf = (at: number) => Number(civilDateOf(at, zone).slice(0, 4));
  const years = first === null ? [] : yearsBack(yearOf(Date.now()), yearOf(first));
  return (
    <search className="orders-filter">
      {t('orders.show')}{' '}
      <select
        ref={which}
        aria-label={t('orders.which')}
        value={filter.which}
        onChange={(event) => onChange({ which: WHICH.find((one) => one === event.target.value) ?? 'all' })}
      >
        {WHICH.map((one) => (
          <option key={one} value={one}>
            {t(`orders.${one}`)}
          </option>
        ))}
      </select>{' '}
      {t('orders.fromYear')}{' '}
      <select
        aria-label={t('orders.year')}
        value={filter.year ?? ''}
        onChange={(event) => onChange({ year: event.target.value === '' ? null : Number(event.target.value) })}
      >
        <option value="">{t('orders.anyYear')}</option>
        {years.map((year) => (
          <option key={year} value={year}>
            {year}
          </option>
        ))}
      </select>{' '}
      {t('orders.thatHold')}{' '}
      <input
        aria-label={t('orders.text')}
        placeholder={t('orders.anyWords')}
        maxLength={60}
        value={filter.text}
        onChange={(event) => onChange({ text: event.target.value })}
      />
      {t('orders.newestFirst')}
    </search>
  );
}

const yearsBack = (from: number, to: number) => Array.from({ length: Math.max(1, from - to + 1) }, (_, n) => from - n);
