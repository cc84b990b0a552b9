import { useId, useState } from 'react';
import { parseQuantity } from '../../../core/measure/quantity.ts';
import { LINE_KINDS } from '../../../core/money/line.ts';
import { readQuantity } from '../../sheet/read-line.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText, quantityText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { type BookLine, type Content, newLine } from './draft.ts';
import { Sums } from './Sums.tsx';
import { eachOf, reckonJob, type StockParts } from './totals.ts';
import { JobCell, useJob } from './writing-job.tsx';

/** Hours, parts, fluids and outside work of the job, with what it comes to at each rate. */
export function Lines() {
  const { content, change } = useJob();
  const writing = useWriting();
  const shop = useShop();
  const parts = useAsk('part.list', { most: 500 }).data?.rows ?? [];
  const numbers = useId();
  const settings = shop?.settings;
  const usual = shop?.rates.find((rate) => rate.usual) ?? shop?.rates[0];
  if (settings === undefined || settings === null) return null;
  const sees = shop !== undefined && shop.rates.length > 0;
  // Under a fixed price, too, a line says what it is worth.
  const reckoned = reckonJob({ ...content, fixedPrice: null }, usual?.price ?? 0, parts, settings);
  const text = (sum: number) => (sees ? amountText(sum, writing) : '');
  const placed = content.lines.map((line, at) => ({ line, at, key: `${at} of ${content.lines.length}` }));
  const kinds = LINE_KINDS.filter((kind) => kind === 'labour' || content.lines.some((line) => line.kind === kind));
  return (
    <section className="book-lines" aria-label={t('jobBook.before')}>
      <div className="book-line book-lines-head" aria-hidden="true">
        <span />
        <span>{t('jobBook.before')}</span>
        <span className="figure">{t('jobBook.quantity')}</span>
        <span className="figure">{t('jobBook.each')}</span>
        <span className="figure">{t('jobBook.sum')}</span>
      </div>
      <datalist id={numbers}>
        {parts.map((part) => (
          <option key={part.id} value={part.number}>
            {part.words}
          </option>
        ))}
      </datalist>
      {kinds.map((kind) => (
        <div key={kind} className="book-kind">
          <p className="h4">{t(`sheet.kind-${kind}`)}</p>
          <div>
            {kind === 'labour' ? <Hours sum={text(reckoned.labour)} rate={text(usual?.price ?? 0)} /> : null}
            {placed
              .filter(({ line }) => line.kind === kind)
              .map(({ key, line, at }) => (
                <LineOf key={key} line={line} at={at} parts={parts} numbers={numbers} sum={text(reckoned.line(at))} />
              ))}
          </div>
        </div>
      ))}
      {change === null ? null : <NewLine />}
      {sees ? <Sums {...{ parts, settings }} rates={shop?.rates ?? []} /> : null}
    </section>
  );
}

function Hours({ sum, rate }: { readonly sum: string; readonly rate: string }) {
  const { content } = useJob();
  const writing = useWriting();
  return (
    <>
      <div className="book-line">
        <span>{t('jobBook.bookHours')}</span>
        <JobCell
          label={t('jobBook.bookHours')}
          figure
          value={quantityText(content.bookHours, '', writing)}
          rest={quantityText(content.bookHours, 'h', writing)}
          read={(text, now) => {
            const hours = parseQuantity(text.replace(/h$/i, ''), writing);
            return hours === null || hours < 0 ? null : { ...now, bookHours: hours };
          }}
          wrong={(text) => unreadWords(text, writing, t('jobBook.hoursWrong'))}
        />
        <span className="figure ink-2">{rate}</span>
        <span className="figure">{sum}</span>
      </div>
      <div className="book-line">
        <span>{t('jobBook.people')}</span>
        <JobCell
          label={t('jobBook.people')}
          figure
          value={String(content.people)}
          read={(text, now) => (/^[1-6]$/.test(text.trim()) ? { ...now, people: Number(text) } : null)}
          wrong={t('jobBook.peopleWrong')}
        />
        <span />
        <span />
      </div>
    </>
  );
}

const withLine = (content: Content, at: number, part: Partial<BookLine>): Content => ({
  ...content,
  lines: content.lines.map((line, i) => (i === at ? { ...line, ...part } : line)),
});

interface LineProps {
  readonly line: BookLine;
  readonly at: number;
  readonly parts: StockParts;
  readonly numbers: string;
  readonly sum: string;
}

function LineOf({ line, at, parts, numbers, sum }: LineProps) {
  const { change, takeOut } = useJob();
  const writing = useWriting();
  const each = eachOf(line, parts);
  const part = parts.find((one) => line.partNumber !== '' && one.number === line.partNumber);
  const unpriced = each === null && sum !== '';
  return (
    <div className="book-line">
      <JobCell
        label={t('jobBook.wordsOf', { n: at + 1 })}
        value={line.words}
        read={(words, now) => (words.trim() === '' ? null : withLine(now, at, { words }))}
        wrong={t('stock.needed')}
      />
      <JobCell
        label={t('jobBook.quantityOf', { words: line.words })}
        figure
        value={quantityText(line.quantity, line.unit, writing)}
        read={(text, now) => {
          const read = readQuantity(text.replace('\u00a0', ' '), writing);
          return read === null ? null : withLine(now, at, read);
        }}
        wrong={(text) => unreadWords(text, writing, t('jobBook.quantityWrong'))}
      />
      <JobCell
        label={t('jobBook.eachOf', { words: line.words })}
        figure
        value={amountText(line.unitPrice, writing)}
        placeholder={each === null ? (unpriced ? t('jobBook.noPrice') : '') : amountText(each, writing)}
        read={(text, now) => {
          const unitPrice = text.trim() === '' ? null : readAmount(text, writing);
          if (text.trim() !== '' && (unitPrice === null || unitPrice < 0)) return null;
          return withLine(now, at, { unitPrice });
        }}
        wrong={t('jobBook.eachWrong')}
      />
      <span className="figure">{unpriced ? '' : sum}</span>
      {change === null && line.partNumber === '' ? null : (
        <span className="book-line-more">
          {line.kind === 'part' || line.kind === 'fluid' ? (
            <JobCell
              className="book-number"
              label={t('jobBook.numberOf', { words: line.words })}
              placeholder={change === null ? '' : t('jobBook.numberHint')}
              value={line.partNumber}
              list={numbers}
              read={(partNumber, now) => withLine(now, at, { partNumber: partNumber.slice(0, 40) })}
              wrong={t('shop.wordsWrong')}
            />
          ) : null}
          {part?.oneTime ? <span className="book-mark one">{t('jobBook.oneTime')}</span> : null}
          {takeOut === null ? null : (
            <button
              type="button"
              className="link"
              aria-label={t('jobBook.takeOutOf', { words: line.words })}
              onClick={() => takeOut(line.words, (now) => ({ ...now, lines: now.lines.filter((_, i) => i !== at) }))}
            >
              {t('jobBook.takeOut')}
            </button>
          )}
        </span>
      )}
    </div>
  );
}

const KINDS = ['part', 'fluid', 'outside', 'supplies', 'fee', 'core', 'labour'] as const;

const splitEnd = (text: string) => /^(.*\S)\s+([\d.,]+\s*(?:h|L|l|m)?)$/.exec(text.trim());

/** The open line at the end: its words, and a quantity at their end if there is one ("Gear oil 1.1 L"). */
function NewLine() {
  const { change } = useJob();
  const writing = useWriting();
  const [kind, setKind] = useState<BookLine['kind']>('part');
  return (
    <div className="book-add">
      <select
        aria-label={t('jobBook.addKind')}
        value={kind}
        onChange={(event) => setKind(KINDS.find((one) => one === event.target.value) ?? 'part')}
      >
        {KINDS.map((one) => (
          <option key={one} value={one}>
            {t(`sheet.kind-${one}`)}
          </option>
        ))}
      </select>
      <JobCell
        className="book-open"
        label={t('jobBook.addLine')}
        placeholder={t('jobBook.addLine')}
        value=""
        read={(text, now) => {
          if (text.trim() === '') return null;
          const split = splitEnd(text);
          const read = readQuantity(split?.[2] ?? '1', writing);
          if (unreadWords(split?.[2] ?? '', writing, '') !== '') return null;
          const words = read === null ? text.trim() : (split?.[1] ?? text.trim());
          const line = newLine(kind, words, read?.quantity ?? 1000, read?.unit ?? '');
          return { ...now, lines: [...now.lines, line] };
        }}
        wrong={(text) => unreadWords(splitEnd(text)?.[2] ?? '', writing, t('stock.needed'))}
      />
      {change === null ? null : <span className="aloud">{t('jobBook.addLine')}</span>}
    </div>
  );
}
