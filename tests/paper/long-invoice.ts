import type { InvoicePaper } from '../../core/paper/document.ts';
import { INVOICE, job, labour, line } from './papers.ts';

/** An invoice of many jobs, long words and long lists: three pages on Letter. */
export const LONG_INVOICE: InvoicePaper = {
  ...INVOICE,
  number: 1240,
  practice: true,
  billTo: [
    'Gesellschaft für Feuerwehrfahrzeuginstandhaltungsvorratsbeschaffung Nordhafen',
    'Unterhalb-der-alten-Schleusenwärterhäuser 112',
    'Port Ansel',
  ],
  purchaseOrder: 'PO-77120-B',
  jobs: Array.from({ length: 10 }, (_, index) =>
    job(
      String.fromCharCode(65 + index),
      index === 4
        ? 'Timing cover off and on again, with everything in front of it that has to come away first, and the seals that never survive it'
        : `Axle ${index + 1}: bearings and seals`,
      index === 6 ? 59760 : 61880,
      [
        labour(2500, 32000),
        line(
          index === 3
            ? 'Bearing kit with an extraordinarily long name that will need a second and even a third line in its column'
            : 'Bearing kit',
          2000,
          11200,
          22400,
          { partNumber: `BK-${2000 + index}`, condition: 'new', note: index === 2 ? 'left side only' : '' },
        ),
        line('Shaft seal', 4000, 1340, 5360, {
          partNumber: 'SS-40-52-7-AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
        }),
        line('Hub nut', 2000, 1060, index === 6 ? 0 : 2120, { condition: 'new', given: index === 6 }),
      ],
    ),
  ),
  overrides: [{ what: 'Mileage out', reason: 'The dash was out for repair', by: 'Ottoline Brack' }],
  notices: Array.from(
    { length: 3 },
    () =>
      'Valuables left in a car are not insured by us. Cars not fetched within ten days of the invoice stand in the yard at the storage price shown at the desk.',
  ),
};
