import type { InputOf } from '../../../core/contract/index.ts';
import { currencyDigits, parseMoney } from '../../../core/money/currency.ts';
import type { LineKind } from '../../../core/money/line.ts';
import { t } from '../../words/t.ts';
import { USAGES, type Usage } from './countries.ts';
import { readPercent } from './percent.ts';

export interface TaxDraft {
  readonly id: string;
  readonly name: string;
  readonly rate: string;
  readonly kinds: readonly LineKind[];
  readonly source: string;
  readonly checkedOn: string;
}
export interface PersonDraft {
  readonly id: string;
  readonly name: string;
  readonly role: 'owner' | 'desk' | 'mechanic';
  readonly code: string;
}

type Overrun = InputOf<'shop.setUp'>['settings']['overrun'];

/** The page as typed. */
export interface SetUpDraft extends Omit<Usage, 'code'> {
  readonly country: string;
  readonly zone: string;
  readonly name: string;
  readonly phone: string;
  readonly email: string;
  readonly address: string;
  readonly registration: string;
  readonly taxNumber: string;
  readonly hour: string;
  readonly nextInvoice: string;
  readonly nextOrder: string;
  readonly nextQuote: string;
  readonly nextCreditNote: string;
  readonly nextReceipt: string;
  /** PNG as base64; null for none. */
  readonly logo: string | null;
  readonly language: 'en' | 'de';
  /** Sentences printed on papers, a line each. */
  readonly notices: string;
  readonly taxes: readonly TaxDraft[];
  readonly overrun: Overrun['mode'];
  readonly overPercent: string;
  readonly overSum: string;
  readonly overCap: string;
  readonly overBase: Overrun['base'];
  readonly overEdge: Overrun['edge'];
  readonly overSource: string;
  readonly overCheckedOn: string;
  readonly people: readonly PersonDraft[];
  readonly bays: string;
}
export type Change = (change: Partial<SetUpDraft>) => void;
export type Errors = Readonly<Record<string, string>>;

export const newTax = (id: string): TaxDraft => ({ id, name: '', rate: '', kinds: [], source: '', checkedOn: '' });

/** The strictest rule for the yes, no tax, the machine's own time zone. */
export function emptySetUp(zone: string): SetUpDraft {
  const { code, ...usage } = USAGES[0] as Usage;
  return {
    ...usage,
    country: code,
    zone,
    ...{ name: '', phone: '', email: '', address: '', registration: '', taxNumber: '' },
    ...{ hour: '', taxes: [newTax('tax-1')], logo: null, language: 'en', notices: '' },
    ...{ nextInvoice: '1', nextOrder: '1', nextQuote: '1', nextCreditNote: '1', nextReceipt: '1' },
    ...{ overrun: 'none', overPercent: '', overSum: '', overCap: '', overBase: 'gross', overEdge: 'inside' },
    ...{ overSource: '', overCheckedOn: '' },
    people: [{ id: 'person-1', name: '', role: 'owner', code: '' }],
    bays: t('start.baysUsual'),
  };
}

export const NUMBERS = ['nextOrder', 'nextQuote', 'nextInvoice', 'nextCreditNote', 'nextReceipt'] as const;
const MOST_NOTICES = 8;
const LONGEST_NOTICE = 600;

export const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
/** Taxes and people that were typed; a row left empty is none, but the first person is always one. */
export const typedTaxes = (draft: SetUpDraft) => draft.taxes.filter((tax) => `${tax.name}${tax.rate}`.trim() !== '');
export const typedPeople = (draft: SetUpDraft) =>
  draft.people.filter((person, at) => at === 0 || `${person.name}${person.code}`.trim() !== '');
/** A sum as typed in the currency of the draft, or null. */
export const sum = (text: string, draft: SetUpDraft) =>
  parseMoney(text, currencyDigits(draft.currency) ?? 2, draft.decimal);
const isZone = (zone: string) => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
};

/** What does not fit, by field (and its row's id), each as a sentence. */
export function errorsOf(draft: SetUpDraft): Errors {
  const errors: Record<string, string> = {};
  if (draft.name.trim() === '') errors.name = t('start.nameNeeded');
  if (!isZone(draft.zone)) errors.zone = t('start.zoneWrong');
  if (currencyDigits(draft.currency) === null) errors.currency = t('start.currencyWrong');
  if ((sum(draft.hour, draft) ?? -1) < 0) errors.hour = t('start.hourWrong');
  for (const number of NUMBERS)
    if (!/^[1-9]\d{0,8}$/.test(draft[number].trim())) errors[number] = t('start.numberWrong');
  const notices = linesOf(draft.notices);
  if (notices.length > MOST_NOTICES || notices.some((line) => line.length > LONGEST_NOTICE))
    errors.notices = t('start.noticesWrong', { lines: MOST_NOTICES, signs: LONGEST_NOTICE });
  for (const tax of typedTaxes(draft)) {
    if (tax.name.trim() === '') errors[`${tax.id} name`] = t('start.taxNameNeeded');
    if (readPercent(tax.rate, 4) === null) errors[`${tax.id} rate`] = t('start.taxRateWrong');
    if (tax.kinds.length === 0) errors[`${tax.id} kinds`] = t('start.taxKindsNeeded');
  }
  if (draft.overrun !== 'none' && readPercent(draft.overPercent, 2) === null) errors.overPercent = t('start.overWrong');
  if ((draft.overrun === 'lesser' || draft.overrun === 'greater') && (sum(draft.overSum, draft) ?? -1) < 0)
    errors.overSum = t('start.overSumWrong');
  if (draft.overrun !== 'none' && draft.overCap.trim() !== '' && (sum(draft.overCap, draft) ?? -1) < 0)
    errors.overCap = t('start.overSumWrong');
  const people = typedPeople(draft);
  const names = people.map((person) => person.name.trim().toLowerCase());
  for (const [at, person] of people.entries()) {
    if (person.name.trim() === '') errors[`${person.id} name`] = t('start.personNeeded');
    else if (names.indexOf(names[at] ?? '') < at) errors[`${person.id} name`] = t('start.sameName');
    if (person.code.length < 4) errors[`${person.id} code`] = t('start.codeWrong');
  }
  if (!people.some((person) => person.role === 'owner')) errors.people = t('start.ownerNeeded');
  return errors;
}

/** The page as the shop takes it; call only where {@link errorsOf} is empty. */
export function setUpOf(draft: SetUpDraft): InputOf<'shop.setUp'> {
  const more = draft.overrun !== 'none';
  return {
    settings: {
      name: draft.name,
      address: linesOf(draft.address).slice(0, 4),
      phone: draft.phone,
      email: draft.email,
      registration: draft.registration,
      taxNumber: draft.taxNumber,
      logoPng: draft.logo,
      currency: draft.currency,
      decimal: draft.decimal,
      group: draft.group,
      zone: draft.zone,
      language: draft.language,
      dateForm: draft.dateForm,
      paper: draft.paper,
      distance: draft.distance,
      torque: draft.torque,
      prices: draft.prices,
      taxRounding: 'document',
      cashStep: 1,
      supplies: { mode: 'itemise' },
      overrun: {
        mode: draft.overrun,
        bp: more ? (readPercent(draft.overPercent, 2) ?? 0) : 0,
        fixed: more && draft.overrun !== 'pct' ? (sum(draft.overSum, draft) ?? 0) : 0,
        cap: more && draft.overCap.trim() !== '' ? sum(draft.overCap, draft) : null,
        base: draft.overBase,
        edge: draft.overEdge,
        source: draft.overSource,
        checkedOn: draft.overCheckedOn || null,
      },
      taxes: typedTaxes(draft).map((tax) => ({
        id: tax.id,
        name: tax.name,
        ratePpm: readPercent(tax.rate, 4) ?? 0,
        kinds: [...tax.kinds],
        source: tax.source,
        checkedOn: tax.checkedOn || null,
      })),
      quoteDays: 30,
      payDays: 0,
      followUpDays: 180,
      followUpDistance: 0,
      warranty: '',
      notices: linesOf(draft.notices),
      firstNumbers: {
        order: Number(draft.nextOrder),
        quote: Number(draft.nextQuote),
        invoice: Number(draft.nextInvoice),
        creditNote: Number(draft.nextCreditNote),
        receipt: Number(draft.nextReceipt),
      },
      planOpens: '08:00',
      planCloses: '18:00',
    },
    people: typedPeople(draft).map(({ name, role, code }) => ({ name, role, code })),
    bays: draft.bays
      .split(',')
      .map((bay) => ({ name: bay.trim().slice(0, 40), words: '' }))
      .filter((bay) => bay.name !== '')
      .slice(0, 12),
    rates: [{ name: t('start.hour'), price: sum(draft.hour, draft) ?? 0, usual: true }],
  };
}
