import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { bookJobContent } from '../../core/contract/procedure.ts';
import type { WorkSheetDocument } from '../../core/paper/work-sheet.ts';
import { COMMON } from './papers.ts';

const content = bookJobContent.parse(STARTING_JOBS[0]);

/** The bench copy of the swap, for an invented visit. */
export const SWAP_SHEET: WorkSheetDocument = {
  ...{ practice: false, language: 'en', size: 'Letter', currency: COMMON.currency, garage: COMMON.garage },
  printed: { date: '2026-11-18', time: '11:35' },
  writtenAt: Date.parse('2026-11-18T11:35Z'),
  visit: {
    ...{ order: 1187, letter: 'B', plate: 'KTB 4471', car: 'Corvane R, 2016', vin: '9ZCGT6R32GL005187' },
    ...{ bay: 'Bay 1, two-post lift', yesOn: '2026-11-18', mileage: { unit: 'mi', in: 61_480, out: null } },
  },
  ...{ title: content.title, version: 4, source: content.sourceOfFigures, cautions: content.cautions },
  people: [
    { name: 'Runa', hours: 3600 },
    { name: 'Piet', hours: 2600 },
  ],
  steps: content.steps.map((step) => ({ ...step, done: '', made: 0 })),
};
