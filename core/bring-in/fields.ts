import { type DecimalMark, guessDecimal, unclearSum } from './sum.ts';

/** What a column of a file may hold. */
export const FIELDS = [
  'customer-key',
  'customer-first-name',
  'customer-name',
  'customer-phone',
  'customer-phone2',
  'customer-email',
  'customer-street',
  'customer-postcode',
  'customer-town',
  'customer-country',
  'customer-tax-number',
  'customer-note',
  'car-key',
  'car-plate',
  'car-vin',
  'car-make',
  'car-model',
  'car-year',
  'car-note',
  'visit-on',
  'visit-mileage',
  'visit-words',
  'visit-amount',
] as const;
export type Field = (typeof FIELDS)[number];

/** Year, month and day in the order in which a file writes them. */
export const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

/** What each column of a file holds, null for what is left out, and how it writes dates and sums. */
export interface Mapping {
  readonly columns: readonly (Field | null)[];
  readonly dates: DateOrder;
  /** What parts the decimals of its sums; null where nobody said: then each is read by itself. */
  readonly decimal: DecimalMark | null;
}

/**
 * Names of columns in English, German, French and Spanish, without accents and signs. From memory; the person sees what was
 * guessed and puts it right.
 */
const NAMED: readonly (readonly [Field, RegExp])[] = [
  [
    'customer-key',
    /^(customer|client|kunden?|kd|cliente)(id|no|number|nr|nummer|key|ref)$|^(n|no|num|numero)(client|cliente)$/,
  ],
  ['customer-first-name', /^(first|given|fore)name$|^vorname$|^prenom$|^nombre$/],
  [
    'customer-name',
    /^(sur|last|family|full|customer|company)?name$|^(nach|familien|kunden)name$|^(customer|client|kunde|firma|company|owner|halter|nom|apellidos?)$/,
  ],
  [
    'customer-phone2',
    /^((tele)?phone|telefon|tel)2$|^(mobile|mobil|cell|handy|movil)((tele)?phone|telefon|number|nummer|nr)?$|^(second|other)phone$|^portable$/,
  ],
  ['customer-phone', /^(tele)?phone(number|no|1)?$|^tel(efon)?(nummer|nr|1)?$|^telefono$|^ruf(nummer)?$/],
  ['customer-email', /^e?mail(address|adresse)?$|^courriel$|^correo(electronico)?$/],
  [
    'customer-street',
    /^(street|address|addressline1|address1|strasse|strassehausnummer|anschrift|adresse|rue|calle|direccion)$/,
  ],
  ['customer-postcode', /^(post(al)?code|zip(code)?|plz|postleitzahl|codepostal|codigopostal|cp)$/],
  ['customer-town', /^(town|city|place|ort|stadt|wohnort|ville|ciudad|poblacion)$/],
  ['customer-country', /^(country|land|pays|pais)$/],
  ['customer-tax-number', /^(tax|vat)(number|no|id)$|^(ust|umsatzsteuer)(id|idnr|nr)?$|^steuernummer$/],
  ['customer-note', /^(customer)?(notes?|remarks?|comments?)$|^(notiz(en)?|bemerkung(en)?|hinweis)$/],
  ['car-key', /^(car|vehicle|fahrzeug)(id|no|nr|nummer|key|ref)$/],
  [
    'car-plate',
    /^(number|licen[cs]e|registration)?plate(number)?$|^reg(istration)?(no|number)?$|^(amtliches)?kennzeichen$|^(plaque|immatriculation|matricula)$/,
  ],
  ['car-vin', /^vin(number)?$|^(chassis|frame)(no|number)?$|^fahrgestell(nummer|nr)$|^fin$|^bastidor$/],
  ['car-make', /^(car)?(make|manufacturer|maker)$|^(marke|hersteller|marque|marca)$/],
  ['car-model', /^(car)?(model|type|car|vehicle|words)$|^(modell|typ|fahrzeug|modele|modelo|vehiculo|voiture)$/],
  ['car-year', /^(model|build)?year$|^(baujahr|erstzulassung|ez|annee|ano)$/],
  ['car-note', /^(car|vehicle)notes?$|^fahrzeug(notiz|bemerkung)$/],
  ['visit-on', /^(visit|order|invoice|service|job)?(date|day|on)$|^(rechnungs|auftrags|besuchs)?datum$|^fecha$/],
  [
    'visit-mileage',
    /^(mileage|odometer|km|miles|kilometerstand|kmstand|tachostand|laufleistung|kilometrage|kilometros)(in)?$/,
  ],
  [
    'visit-words',
    /^(work|done|job|jobs|description|complaint|arbeit(en)?|leistung|beschreibung|text|travaux|trabajos?)$/,
  ],
  ['visit-amount', /^(amount|total|sum|gross|price|betrag|summe|gesamt|brutto|montant|importe)$/],
];

/** A name of a column as it is compared: small letters and figures only. */
const bare = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .normalize('NFD')
    .replace(/[^a-z0-9]/g, '');

/** How many rows are looked at for what no name tells. */
const LOOKED_AT = 200;

/**
 * What each column seems to hold: by its name, else by what stands in it; in what order its dates are written, and what
 * parts the decimals of its sums. `digits`: those of the shop's currency.
 */
export function guessMapping(
  names: readonly string[],
  rows: readonly { readonly cells: readonly string[] }[],
  digits: number,
): Mapping {
  const taken = new Set<Field>();
  const take = (field: Field | undefined): Field | null => {
    if (field === undefined || taken.has(field)) return null;
    taken.add(field);
    return field;
  };
  const some = rows.slice(0, LOOKED_AT);
  const cellsOf = (at: number) => some.map((row) => row.cells[at]?.trim() ?? '').filter((cell) => cell !== '');
  const byName = names.map((name) =>
    take(FIELDS.find((field) => field === name) ?? NAMED.find(([, pattern]) => pattern.test(bare(name)))?.[0]),
  );
  const columns = byName.map((field, at) => field ?? take(byContent(cellsOf(at))));
  const dates = guessDateOrder(cellsOfField(columns, rows, 'visit-on'));
  return { columns, dates, decimal: guessDecimal(cellsOfField(columns, rows, 'visit-amount'), digits) };
}

const cellsOfField = (
  columns: Mapping['columns'],
  rows: readonly { readonly cells: readonly string[] }[],
  field: Field,
): string[] => columns.flatMap((held, at) => (held === field ? rows.map((row) => row.cells[at] ?? '') : []));

/** The sums of a file, as they stand there; the first with two readings as long as the mapping does not say which. */
export function sumsOf(
  { columns, decimal }: Mapping,
  rows: readonly { readonly cells: readonly string[] }[],
  digits: number,
): { readonly sums: readonly string[]; readonly unclear: string | null } {
  const sums = cellsOfField(columns, rows, 'visit-amount').filter((cell) => cell.trim() !== '');
  return { sums, unclear: unclearSum(sums, digits, decimal) };
}

function byContent(cells: readonly string[]): Field | undefined {
  const all = (pattern: RegExp) => cells.length > 0 && cells.every((cell) => pattern.test(cell));
  if (all(/^[^\s@]+@[^\s@]+\.[^\s@]+$/)) return 'customer-email';
  if (all(/^[A-HJ-NPR-Z0-9]{17}$/i)) return 'car-vin';
  return undefined;
}

/** The order of year, month and day: by a number over twelve; where none tells, the day first if parted by dots, else the month. */
export function guessDateOrder(cells: readonly string[]): DateOrder {
  const parts = cells
    .map((cell) => /^\s*(\d{1,4})([-./])(\d{1,2})\2(\d{1,4})/.exec(cell))
    .filter((each) => each !== null);
  if (parts.length === 0 || parts.some(([, first = '']) => first.length === 4)) return 'ymd';
  if (parts.some(([, first]) => Number(first) > 12)) return 'dmy';
  if (parts.some(([, , , second]) => Number(second) > 12)) return 'mdy';
  return parts.some(([, , mark]) => mark === '/') ? 'mdy' : 'dmy';
}
