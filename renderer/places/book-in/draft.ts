import { readVin } from '../../../core/car/vin.ts';
import type { InputOf } from '../../../core/contract/index.ts';
import type { DistanceUnit } from '../../../core/measure/distance.ts';
import { wallToInstant } from '../../../core/time/instant.ts';
import type { Strokes } from '../../parts/SignaturePad.tsx';
import { readAmount, type Writing } from '../../words/figures.ts';
import { t, type WordKey } from '../../words/t.ts';
import { EMPTY_WALK, type WalkDraft, walkWords } from './mark-draft.ts';

type Book = InputOf<'order.book'>;
export type Doubt = 'none' | 'as-typed' | 'clock-replaced' | 'owner-told';

/** What stands on the page, as typed. */
export interface Draft {
  readonly customerId: string | null;
  readonly phone: string;
  readonly name: string;
  readonly tellBy: string;
  readonly carId: string | null;
  readonly plate: string;
  readonly words: string;
  readonly year: string;
  readonly unit: DistanceUnit;
  readonly vin: string;
  readonly mileage: string;
  readonly doubt: Doubt;
  /** Who pays, where it is not the customer; then a customer of its own. */
  readonly payer: { readonly id: string; readonly name: string } | null;
  readonly complaint: string;
  readonly when: readonly string[];
  readonly here: boolean;
  /** It was left here without meeting anybody, its key in the box: nobody signs, and nothing was said. */
  readonly night: boolean;
  readonly keys: string;
  readonly keysWhere: string;
  readonly wheelLockKey: string;
  readonly fuel: string;
  readonly marks: string;
  readonly walk: WalkDraft;
  /** Marks of the last visit that are still so. */
  readonly kept: readonly string[];
  readonly valuables: string;
  readonly drive: 'yes' | 'no' | 'not-asked';
  readonly driveLimit: string;
  readonly oldParts: 'unasked' | 'show' | 'return' | 'dispose';
  readonly bayId: string;
  readonly day: string;
  readonly from: string;
  readonly hours: string;
  /** Who does it; '' nobody yet. */
  readonly personId: string;
  readonly promise: string;
  readonly promiseWords: string;
  readonly ownMost: string;
  readonly po: string;
  readonly storageTold: boolean;
  /** What a day was said to cost, and after how many free working days; empty: no price was told. */
  readonly storagePerDay: string;
  readonly storageFree: string;
  /** A yes to look, up to this sum, tax in; empty: no yes is recorded now. */
  readonly lookUpTo: string;
  readonly lookWay: LookWay;
  /** Who said it: '' the customer, else somebody they named. */
  readonly lookBy: string;
  readonly deposit: string;
  readonly depositWay: 'cash' | 'card' | 'transfer';
  readonly strokes: Strokes | null;
  readonly onPaper: boolean;
}
export type LookWay = 'person' | 'phone' | 'signed';
export type Change = (change: Partial<Draft>) => void;
export type Errors = Partial<Record<keyof Draft, string>>;

export const emptyDraft = (unit: DistanceUnit): Draft => ({
  ...{ customerId: null, phone: '', name: '', tellBy: '' },
  ...{ carId: null, plate: '', words: '', year: '', unit, vin: '', mileage: '', doubt: 'none', payer: null },
  ...{ complaint: '', when: [], here: true, night: false, walk: EMPTY_WALK },
  ...{ keys: '', keysWhere: '', wheelLockKey: '', fuel: '', marks: '', kept: [], valuables: '' },
  ...{ drive: 'not-asked', driveLimit: '', oldParts: 'unasked' },
  ...{ bayId: '', day: '', from: '', hours: '1', personId: '', promise: '', promiseWords: '', ownMost: '', po: '' },
  ...{ storageTold: false, storagePerDay: '', storageFree: '' },
  ...{ lookUpTo: '', lookWay: 'person', lookBy: '', deposit: '', depositWay: 'card' },
  ...{ strokes: null, onPaper: false },
});

/** A mileage as typed, also with its thousands parted; null where it is no whole figure ("61480.5"). */
export function readMileageText(text: string): number | null {
  const bare = text.trim();
  const whole = /^\d{1,7}$/.test(bare) || /^\d{1,3}(?:[\s,.']\d{3}){1,2}$/.test(bare);
  const figure = Number(bare.replace(/\D/g, ''));
  return whole && figure <= 9_999_999 ? figure : null;
}

/** Hours as typed in thousandths; null below a tenth or above a hundred. */
export function readHours(text: string): number | null {
  const bare = text.trim().replace(',', '.');
  if (!/^\d{1,3}(\.\d{1,3})?$/.test(bare)) return null;
  const [whole = '0', part = ''] = bare.split('.');
  const thousandths = Number(whole) * 1000 + Number(part.padEnd(3, '0'));
  return thousandths >= 100 && thousandths <= 100_000 ? thousandths : null;
}

/** Marks that are still so and those that were drawn, then what was only written down today. */
export const marksOf = (draft: Draft): string[] => [
  ...walkWords(draft.walk),
  ...draft.kept,
  ...draft.marks
    .split('\n')
    .map((mark) => mark.trim())
    .filter((mark) => mark !== ''),
];

/** A sum as typed, or null where the field is empty; what is no sum is below zero. */
export function sumOf(text: string, writing: Writing): number | null {
  return text.trim() === '' ? null : (readAmount(text, writing) ?? -1);
}

/** Free working days as typed, none for nothing; null where it is no whole figure from 0 to 60. */
function readFreeDays(text: string): number | null {
  const bare = text.trim();
  if (bare === '') return 0;
  return /^\d{1,2}$/.test(bare) && Number(bare) <= 60 ? Number(bare) : null;
}

/** What does not fit, by field, each as a sentence. */
export function errorsOf(draft: Draft, writing: Writing): Errors {
  const look = sumOf(draft.lookUpTo, writing);
  const deposit = sumOf(draft.deposit, writing);
  const wrong: [keyof Draft, boolean, WordKey][] = [
    ['name', draft.customerId === null && draft.name.trim() === '', 'intake.nameNeeded'],
    ['words', draft.carId === null && draft.words.trim() === '', 'intake.wordsNeeded'],
    ['year', draft.carId === null && draft.year !== '' && !/^(19|20)\d\d$/.test(draft.year), 'intake.yearWrong'],
    ['mileage', draft.mileage.trim() !== '' && readMileageText(draft.mileage) === null, 'intake.mileageWrong'],
    ['vin', draft.carId === null && readVin(draft.vin).verdict === 'refuse_character', 'intake.vinCharacter'],
    ['complaint', draft.complaint.trim() === '', 'intake.complaintNeeded'],
    ['keys', !/^\d?$/.test(draft.keys), 'intake.keysWrong'],
    ['hours', draft.bayId !== '' && !bookingFits(draft), 'intake.bookingWrong'],
    ['ownMost', (sumOf(draft.ownMost, writing) ?? 0) < 0, 'intake.ownMostWrong'],
    ['marks', marksOf(draft).length > 30 || marksOf(draft).some((mark) => mark.length > 160), 'intake.marksWrong'],
    ['walk', draft.walk.drawn.some((mark) => mark.words.trim() === ''), 'intake.markNeedsWords'],
    ['lookUpTo', look !== null && look <= 0, 'intake.ownMostWrong'],
    ['lookWay', look !== null && draft.lookWay === 'signed' && draft.strokes === null, 'intake.lookUnsigned'],
    ['lookWay', look !== null && draft.night && draft.lookWay !== 'phone', 'intake.nightLook'],
    ['phone', look !== null && draft.lookWay === 'phone' && draft.phone.trim() === '', 'intake.lookNumber'],
    ['storagePerDay', draft.storageTold && (sumOf(draft.storagePerDay, writing) ?? 1) <= 0, 'own.storageWrong'],
    ['storageFree', draft.storageTold && readFreeDays(draft.storageFree) === null, 'intake.storageFreeWrong'],
    ['deposit', deposit !== null && deposit <= 0, 'intake.ownMostWrong'],
  ];
  return Object.fromEntries(wrong.filter(([, is]) => is).map(([field, , words]) => [field, t(words)]));
}

const bookingFits = (draft: Draft) => draft.day !== '' && draft.from !== '' && readHours(draft.hours) !== null;

/** What was taken over at the door, as the shop takes it. */
export function doorOf(draft: Draft, writing: Writing): NonNullable<Book['door']> {
  const perDay = draft.storageTold ? sumOf(draft.storagePerDay, writing) : null;
  return {
    fuel: draft.fuel,
    keys: draft.keys === '' ? null : Number(draft.keys),
    keysWhere: draft.keysWhere,
    wheelLockKey: draft.wheelLockKey,
    marks: marksOf(draft),
    valuables: draft.valuables,
    testDrive: { yes: true, no: false, 'not-asked': null }[draft.drive],
    testDriveLimit: draft.driveLimit,
    oldParts: draft.oldParts,
    storageTold: draft.storageTold,
    storage: perDay === null ? null : { perDay, freeWorkingDays: readFreeDays(draft.storageFree) ?? 0 },
    strokes: draft.night ? null : draft.strokes,
    nightDrop: draft.night,
  };
}

/** The booking as the shop takes it; call only where {@link errorsOf} is empty. */
export function bookingOf(draft: Draft, writing: Writing): Book {
  return {
    customer:
      draft.customerId === null
        ? { add: { name: draft.name, phone: draft.phone, tellBy: draft.tellBy } }
        : { id: draft.customerId },
    car:
      draft.carId === null
        ? {
            add: {
              plate: draft.plate,
              vin: draft.vin,
              words: draft.words,
              year: draft.year === '' ? null : Number(draft.year),
              unit: draft.unit,
            },
          }
        : { id: draft.carId },
    payerId: draft.payer?.id ?? null,
    complaint: draft.complaint,
    when: [...draft.when],
    door: doorOf(draft, writing),
    mileage: readMileageText(draft.mileage),
    mileageDoubt: draft.doubt,
    here: draft.here,
    booking:
      draft.bayId === ''
        ? null
        : {
            bayId: draft.bayId,
            day: draft.day,
            from: draft.from,
            hours: readHours(draft.hours) ?? 1000,
            personId: draft.personId === '' ? null : draft.personId,
          },
    promiseAt: draft.promise === '' ? null : wallToInstant(draft.promise, writing.zone),
    promiseWords: draft.promiseWords,
    ownMaximum: sumOf(draft.ownMost, writing),
    poNumber: draft.po,
  };
}
