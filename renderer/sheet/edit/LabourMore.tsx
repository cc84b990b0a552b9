import { useShop, useWriting } from '../../state/shop.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import type { Line, Order } from '../order.ts';
import { readQuantity } from '../read-line.ts';
import { SheetCell } from '../SheetCell.tsx';
import { changeLine } from './change-line.ts';
import { Named } from './Named.tsx';
import { SheetPick } from './SheetPick.tsx';

const BILLINGS = ['typed', 'book', 'clocked'] as const;

/** Hours of a line: charged as typed, by the book less what it shares with another job, or as clocked; who works how long. */
export function LabourMore({ order, line }: { readonly order: Order; readonly line: Line }) {
  const writing = useWriting();
  const people = useShop()?.people.filter((person) => person.active) ?? [];
  const change = changeLine(line.id);
  const revision = line.revision;
  const hours = (thousandths: number) => quantityText(thousandths, 'h', writing);
  const others = order.jobs.filter((job) => job.id !== line.jobId);
  const job = order.jobs.find((one) => one.id === line.jobId);
  const shares = order.jobs.find((one) => one.id === line.overlapJobId);
  return (
    <>
      <Named words={t('edit.billing')}>
        <SheetPick
          revision={revision}
          label={t('edit.billingOf', { words: line.words })}
          value={line.billing}
          options={BILLINGS.map((value) => ({ value, words: t(`edit.billing-${value}`) }))}
          save={(value, on) => {
            const billing = BILLINGS.find((one) => one === value) ?? line.billing;
            // What was typed is what the book says, until somebody writes another figure there.
            return change(on, billing === 'book' && line.book === 0 ? { billing, book: line.quantity } : { billing });
          }}
          inRow={(row) => String(row.billing)}
        />
      </Named>
      {line.billing === 'book' ? (
        <>
          <Named words={t('edit.shares')}>
            <SheetPick
              revision={revision}
              label={t('edit.sharesOf', { words: line.words })}
              value={line.overlapJobId ?? ''}
              options={[
                { value: '', words: t('edit.sharesNothing') },
                ...others.map((one) => ({ value: one.id, words: `${one.letter} ${one.title}` })),
              ]}
              save={(value, on) => change(on, { overlapJobId: value === '' ? null : value })}
              inRow={(row) => String(row.overlapJobId ?? '')}
            />
          </Named>
          {line.overlapJobId === null ? null : (
            <Named words={t('edit.overlap')}>
              <SheetCell
                figure
                revision={revision}
                label={t('edit.overlapOf', { words: line.words })}
                value={hours(line.overlap)}
                save={(text, on) => {
                  const read = readQuantity(text, writing);
                  return read === null ? null : change(on, { overlap: read.quantity });
                }}
                unread={(text) => unreadWords(text, writing, t('sheet.unread', { label: t('edit.overlap') }))}
                inRow={(row) => hours(Number(row.overlap))}
              />
            </Named>
          )}
        </>
      ) : null}
      {people.map((person) => (
        <Named words={person.name} key={person.id}>
          <SheetCell
            figure
            revision={revision}
            label={t('edit.hoursOf', { name: person.name, words: line.words })}
            value={shareText(line.people, person.id)}
            placeholder={t('edit.noHours')}
            save={(text, on) => {
              const rest = line.people.filter((one) => one.personId !== person.id);
              if (text.trim() === '') return change(on, { people: rest });
              const read = readQuantity(text, writing);
              return read === null
                ? null
                : change(on, { people: [...rest, { personId: person.id, hours: read.quantity }] });
            }}
            unread={(text) => unreadWords(text, writing, t('sheet.unread', { label: person.name }))}
            inRow={(row) => shareText(Array.isArray(row.people) ? (row.people as Line['people']) : [], person.id)}
          />
        </Named>
      ))}
      <p className="small ink-2 wide">
        {line.billing === 'book'
          ? shares === undefined
            ? t('edit.bookWhole', { book: hours(line.book) })
            : t(line.charged < line.book ? 'edit.bookLess' : 'edit.bookNotShared', {
                book: hours(line.book),
                overlap: hours(line.overlap),
                letter: shares.letter,
                charged: hours(line.charged),
              })
          : t(line.billing === 'clocked' ? 'edit.asClocked' : 'edit.asTyped', { charged: hours(line.charged) })}{' '}
        {t('edit.clockedSoFar', { hours: hours(Math.round(((job?.clockedMinutes ?? 0) * 100) / 60) * 10) })}
      </p>
    </>
  );

  function shareText(all: Line['people'], personId: string): string {
    const mine = all.find((one) => one.personId === personId);
    return mine === undefined ? '' : hours(mine.hours);
  }
}
