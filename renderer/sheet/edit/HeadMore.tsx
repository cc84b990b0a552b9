import { useState } from 'react';
import type { InputOf } from '../../../core/contract/index.ts';
import { instantToWall, wallToInstant } from '../../../core/time/instant.ts';
import { onRevision } from '../../state/on-revision.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { SheetCell } from '../SheetCell.tsx';
import { save } from '../save.ts';
import { Named } from './Named.tsx';
import { PayerPick } from './PayerPick.tsx';

/** The rest of the head: what is promised, who pays, the customer's own maximum, their purchase order number. */
export function HeadMore({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const [open, setOpen] = useState(false);
  const { revision } = order;
  const change = (on: number, fields: InputOf<'order.change'>['change']) =>
    save('order.change', { id: order.id, revision: on, change: fields });
  const wall = (at: unknown) => {
    if (typeof at !== 'number') return '';
    const { date, time } = instantToWall(at, writing.zone);
    return `${date}T${time}`;
  };
  const toggle = (
    <p className="head-open">
      <button type="button" className="link small" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t('edit.headOpen')}
      </button>
    </p>
  );
  if (!open) return toggle;
  return (
    <>
      {toggle}
      <div className="more head-more" role="group" aria-label={t('edit.head')}>
        <Named words={t('edit.promise')}>
          <SheetCell
            moment
            revision={revision}
            label={t('edit.promise')}
            value={wall(order.promiseAt)}
            save={(text, on) => change(on, { promiseAt: text === '' ? null : wallToInstant(text, writing.zone) })}
            inRow={(row) => wall(row.promiseAt)}
          />
        </Named>
        <Named words={t('edit.promiseWords')}>
          <SheetCell
            revision={revision}
            label={t('edit.promiseWords')}
            value={order.promiseWords}
            placeholder={t('edit.promiseHint')}
            save={(promiseWords, on) => change(on, { promiseWords })}
            inRow={(row) => String(row.promiseWords)}
          />
        </Named>
        <Named words={t('edit.ownMaximum')}>
          <SheetCell
            figure
            revision={revision}
            label={t('edit.ownMaximum')}
            value={amountText(order.ownMaximum, writing)}
            placeholder={t('edit.none')}
            save={(text, on) => {
              if (text.trim() === '') return change(on, { ownMaximum: null });
              const ownMaximum = readAmount(text, writing);
              return ownMaximum === null || ownMaximum < 0 ? null : change(on, { ownMaximum });
            }}
            inRow={(row) => (typeof row.ownMaximum === 'number' ? amountText(row.ownMaximum, writing) : '')}
          />
        </Named>
        <Named words={t(order.poRequired ? 'edit.poNeeded' : 'edit.po')}>
          <SheetCell
            revision={revision}
            label={t('edit.po')}
            value={order.poNumber}
            placeholder={t('edit.none')}
            save={(poNumber, on) => change(on, { poNumber })}
            inRow={(row) => String(row.poNumber)}
          />
        </Named>
        <Named words={t('edit.when')} wide>
          <SheetCell
            revision={revision}
            label={t('edit.when')}
            value={order.when.join(', ')}
            placeholder={t('edit.whenHint')}
            save={(text, on) => change(on, { when: splitList(text) })}
            inRow={(row) => (Array.isArray(row.when) ? row.when.join(', ') : '')}
          />
        </Named>
        <PayerPick
          order={order}
          onPick={(payerId) =>
            onRevision(
              revision,
              (on) => change(on, { payerId }),
              (row) => row.payerId === (order.payer?.id ?? null),
            )
          }
        />
      </div>
    </>
  );
}

function splitList(text: string): string[] {
  return text
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}
