import type { WorkSheetDocument, WorkSheetStep } from '../core/paper/work-sheet.ts';
import { civilDateOf, instantToWall } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import type { BookContent } from './order/book-content.ts';
import { currencyOf } from './order/document.ts';
import type { Loaded } from './order/load.ts';
import { letterOf } from './order/reckon.ts';
import { stepsOf } from './order/steps.ts';
import { settingsOf } from './people.ts';

type Book = { readonly version: number; readonly content: BookContent };

function sheetOf(context: Context, { version, content }: Book): Omit<WorkSheetDocument, 'visit' | 'people' | 'steps'> {
  const settings = settingsOf(context);
  return {
    ...{ practice: context.practice, language: settings.language, dateForm: settings.dateForm, size: settings.paper },
    currency: currencyOf(settings),
    garage: {
      ...{ name: settings.name, address: settings.address, phone: settings.phone, email: settings.email },
      ...{ registration: settings.registration, taxNumber: settings.taxNumber },
      logo: null,
    },
    printed: instantToWall(context.now, settings.zone),
    writtenAt: context.now,
    ...{ title: content.title, version, source: content.sourceOfFigures, cautions: content.cautions },
  };
}

const toDo = (content: BookContent): WorkSheetStep[] => content.steps.map((step) => ({ ...step, done: '', made: 0 }));

/** The bench copy of a job of the book, for no visit. */
export function bookWorkSheet(context: Context, book: Book): WorkSheetDocument {
  const people = Array.from({ length: book.content.people }, () => ({ name: '', hours: null }));
  return { ...sheetOf(context, book), visit: null, people, steps: toDo(book.content) };
}

/** The bench copy of a job on an order: its car, its yes, whose hours it is, what is done already. */
export function visitWorkSheet(context: Context, loaded: Loaded, jobId: string, book: Book): WorkSheetDocument {
  const { order, car, people } = loaded;
  const settings = settingsOf(context);
  const job = loaded.jobs.find((one) => one.id === jobId);
  const yes = loaded.decided.findLast((row) => row.job_id === jobId && row.answer === 'yes');
  const saidAt = loaded.decisions.find((row) => row.id === yes?.decision_id)?.at;
  const hours = loaded.lines
    .filter((line) => line.job_id === jobId && line.kind === 'labour')
    .flatMap((line) => JSON.parse(line.people) as { personId: string; hours: number }[])
    .map((one) => ({ name: people.get(one.personId)?.name ?? '', hours: one.hours }));
  return {
    ...sheetOf(context, book),
    visit: {
      ...{ order: order.number, letter: letterOf(job?.place ?? 0), bay: loaded.booking?.bay ?? '' },
      ...{ plate: car.plate, vin: car.vin, car: car.year === null ? car.words : `${car.words}, ${car.year}` },
      yesOn: saidAt === undefined ? '' : civilDateOf(saidAt, settings.zone),
      mileage: { unit: car.unit, in: order.mileage_in, out: null },
    },
    title: job?.title ?? book.content.title,
    people: hours.length > 0 ? hours : Array.from({ length: book.content.people }, () => ({ name: '', hours: null })),
    steps: stepsOf(loaded, jobId).map(({ step, last, made }) => ({
      ...step,
      made,
      done: last?.state === 'done' || last?.state === 'not-needed' ? (people.get(last.person_id)?.name ?? '') : '',
    })),
  };
}
