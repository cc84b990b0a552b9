import { currencyDigits, formatMoney } from '../../../core/money/currency.ts';
import type { LineKind, Tax } from '../../../core/money/line.ts';
import { type Money, money } from '../../../core/money/money.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { taxName } from '../../../core/paper/figures.ts';
import { paperWords } from '../../../core/paper/words.ts';
import { PLAIN_WRITING, rateText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { linesOf, type SetUpDraft, sum } from './draft.ts';
import { readPercent } from './percent.ts';

/** The invoice's head and a first job, at the size of the paper's own type, drawn anew at every stroke. */
export function InvoicePreview({ draft }: { readonly draft: SetUpDraft }) {
  const w = paperWords(draft.language);
  const digits = currencyDigits(draft.currency) ?? 2;
  const amount = (minor: Money) => formatMoney(minor, digits, { group: draft.group, decimal: draft.decimal });
  const hour = money(Math.max(0, sum(draft.hour, draft) ?? 0));
  const part = money(60 * 10 ** digits);
  const totals = reckoned(draft, hour, part);
  const contact = [
    linesOf(draft.address).join(', '),
    draft.phone,
    draft.email,
    draft.registration,
    draft.taxNumber === '' ? '' : w.taxNumber(draft.taxNumber),
  ].filter((one) => one.trim() !== '');
  return (
    <div className="preview" lang={draft.language}>
      <header>
        {draft.logo === null ? null : <img src={`data:image/png;base64,${draft.logo}`} alt={t('start.yourMark')} />}
        <div>
          <b className="preview-name">{draft.name.trim() || t('start.footName')}</b>
          <p>{contact.join(' · ') || t('start.previewContact')}</p>
        </div>
      </header>
      <div className="preview-title">
        <span>{w.title.invoice}</span>
        <span className="preview-number">{draft.nextInvoice}</span>
      </div>
      <div className="preview-facts">
        <p>
          <small>{w.facts.for}</small>
          <b>{t('start.previewCustomer')}</b>
          <br />
          {t('start.previewStreet')}
        </p>
        <p>
          <small>{w.facts.car}</small>
          <b>{t('start.previewCar')}</b>
          <br />
          {t('start.previewPlate')}
        </p>
        <p>
          <small>{w.facts.mileage}</small>
          {w.mileageIn(t('start.previewMileage', { unit: draft.distance }))}
        </p>
      </div>
      <table>
        <tbody>
          <tr className="preview-job">
            <td>A</td>
            <td colSpan={2}>{t('start.previewJob')}</td>
            <td>{amount(money(hour + part))}</td>
          </tr>
          <tr>
            <td />
            <td>{w.lineKind.labour}</td>
            <td>{w.hours(`1${draft.decimal}0`)}</td>
            <td>{amount(hour)}</td>
          </tr>
          <tr>
            <td />
            <td>{w.lineKind.part}</td>
            <td>1</td>
            <td>{amount(part)}</td>
          </tr>
        </tbody>
      </table>
      <dl>
        {totals.taxes.map(({ tax, base, amount: sum }) => {
          const rate = rateText(tax.ratePpm, { ...PLAIN_WRITING, decimal: draft.decimal });
          const say = draft.prices === 'inclusive' ? w.taxHeld : w.taxAdded;
          return (
            <div key={tax.id}>
              <dt>{say(taxName(tax.name, rate), rate, amount(base))}</dt>
              <dd>{amount(sum)}</dd>
            </div>
          );
        })}
        <div className="preview-pay">
          <dt>{w.toPay}</dt>
          <dd>{amount(totals.gross)}</dd>
        </div>
      </dl>
      {linesOf(draft.notices).map((notice) => (
        <p key={notice} className="preview-notice">
          {notice}
        </p>
      ))}
    </div>
  );
}

function reckoned(draft: SetUpDraft, hour: Money, part: Money) {
  const taxes: Partial<Record<LineKind, Tax[]>> = {};
  for (const { id, name, rate, kinds } of draft.taxes) {
    const ratePpm = readPercent(rate, 4);
    if (ratePpm === null || ratePpm === 0) continue;
    for (const kind of kinds) taxes[kind] = [...(taxes[kind] ?? []), { id, name, ratePpm }];
  }
  const line = { quantity: 1000, given: false };
  return reckonSheet(
    {
      jobs: [
        {
          id: 'A',
          given: false,
          lines: [
            { ...line, id: '1', kind: 'labour', unitPrice: hour },
            { ...line, id: '2', kind: 'part', unitPrice: part },
          ],
        },
      ],
      discounts: [],
      exempt: false,
    },
    { taxes, prices: draft.prices, taxRounding: 'document', supplies: { mode: 'itemise' } },
  );
}
