import { z } from 'zod';
import type { Field, Mapping } from '../../core/bring-in/fields.ts';
import { type CarDraft, type CustomerDraft, readRow, type VisitDraft } from '../../core/bring-in/row.ts';
import type { TableRow } from '../../core/bring-in/table.ts';
import { readVin } from '../../core/car/vin.ts';
import { carFields, customerFields } from '../../core/contract/desk.ts';
import type { Problem } from '../../core/contract/problems.ts';
import { amount, civilDate, mileage, words } from '../../core/contract/scalars.ts';
import { currencyDigits } from '../../core/money/currency.ts';
import type { Context } from '../context.ts';
import { canonical, sha256 } from '../digest.ts';
import { foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { settingsOf } from '../people.ts';
import { problemsOf } from '../problem.ts';
import { carKeys, customerKeys, visitKey } from './identity.ts';
import { type HashedDraft, type Known, noteCustomer, readKnown } from './known.ts';

interface RowProblem {
  readonly field: Field;
  readonly problem: string;
  readonly with?: Record<string, string | number>;
}

/** Something that a row makes, or that it only names (`wasHere`). */
interface FromRow {
  readonly line: number;
  readonly hash: string;
  readonly id: string;
  readonly fileKey: string | null;
}
export interface Plan {
  readonly customers: (FromRow & { readonly fields: z.output<typeof customerFields> })[];
  readonly cars: (FromRow & { readonly fields: z.output<typeof carFields> })[];
  readonly owners: (FromRow & { readonly carId: string; readonly customerId: string })[];
  readonly visits: (FromRow & { readonly carId: string; readonly draft: VisitDraft })[];
  readonly links: (FromRow & { readonly table: 'customer' | 'car' })[];
  readonly would: { line: number; makes: { what: 'customer' | 'car' | 'visit' | 'link'; name: string }[] }[];
  readonly bad: { line: number; problems: RowProblem[] }[];
  known: number;
}

const visitFields = z.strictObject({
  on: civilDate,
  mileage: mileage.nullable(),
  words: words(4000),
  amount: amount.nullable(),
});

// Which column a field of the contract comes from.
const CUSTOMER: Readonly<Record<string, Field>> = {
  name: 'customer-name',
  phone: 'customer-phone',
  phone2: 'customer-phone2',
  email: 'customer-email',
  address: 'customer-street',
  taxNumber: 'customer-tax-number',
  note: 'customer-note',
};
const CAR: Readonly<Record<string, Field>> = {
  plate: 'car-plate',
  vin: 'car-vin',
  words: 'car-model',
  year: 'car-year',
  note: 'car-note',
};
const VISIT: Readonly<Record<string, Field>> = {
  on: 'visit-on',
  mileage: 'visit-mileage',
  words: 'visit-words',
  amount: 'visit-amount',
};

/** A row that cannot be brought in. */
class BadRow extends Error {
  readonly problems: RowProblem[];
  constructor(problems: RowProblem[]) {
    super('bad row');
    this.problems = problems;
  }
}
const bad = (field: Field, problem: Problem) => new BadRow([{ field, problem }]);

/** Works out what a piece of a file would make, against all that is here. Writes nothing. */
export async function workOut(context: Context, mapping: Mapping, rows: readonly TableRow[]): Promise<Plan> {
  const { currency, distance } = settingsOf(context);
  const digits = currencyDigits(currency) ?? 2;
  const drafts: HashedDraft[] = rows.map((row) => {
    const draft = readRow(row.cells, mapping, digits);
    return { ...draft, hash: sha256(canonical([draft.customer, draft.car, draft.visit])) };
  });
  const known = await readKnown(context, drafts);
  const plan: Plan = { customers: [], cars: [], owners: [], visits: [], links: [], would: [], bad: [], known: 0 };
  const inPiece = new Set<string>();
  drafts.forEach((draft, at) => {
    const line = rows[at]?.line ?? 0;
    try {
      if (draft.problems.length > 0) throw new BadRow([...draft.problems]);
      const makes =
        known.hashes.has(draft.hash) || inPiece.has(draft.hash)
          ? []
          : new RowReader(plan, known, line, draft, distance).read();
      inPiece.add(draft.hash);
      if (makes.length === 0) plan.known += 1;
      else plan.would.push({ line, makes });
    } catch (fault) {
      if (!(fault instanceof BadRow)) throw fault;
      plan.bad.push({ line, problems: fault.problems });
    }
  });
  return plan;
}

/** One row against all that is known. What is wrong is found before anything is planned. */
class RowReader {
  readonly #plan: Plan;
  readonly #known: Known;
  readonly #line: number;
  readonly #draft: HashedDraft;
  readonly #unit: 'km' | 'mi';
  readonly #makes: Plan['would'][number]['makes'] = [];

  constructor(plan: Plan, known: Known, line: number, draft: HashedDraft, unit: 'km' | 'mi') {
    this.#plan = plan;
    this.#known = known;
    this.#line = line;
    this.#draft = draft;
    this.#unit = unit;
  }

  read(): Plan['would'][number]['makes'] {
    const { customer, car, visit } = this.#draft;
    if (visit !== null) checked(visitFields, visit, VISIT);
    const whose = customer === null ? null : this.#findCustomer(customer);
    const which = car === null ? null : this.#findCar(car);
    const newCustomer = customer !== null && whose === null ? this.#customerFields(customer) : null;
    if (car === null) {
      this.#customerId(customer, whose, newCustomer);
      return this.#makes;
    }
    if (which === null) {
      const fields = this.#carFields(car);
      const ownerId = this.#customerId(customer, whose, newCustomer);
      this.#visit(this.#newCar(car, fields, ownerId), visit);
      return this.#makes;
    }
    const here = this.#known.cars.get(which);
    const other = customer !== null && here?.ownerId != null && here.ownerId !== whose;
    if (other && visit === null) throw bad('car-plate', 'belongs-to-another');
    if (!other) {
      const ownerId = this.#customerId(customer, whose, newCustomer);
      if (ownerId !== null && here?.ownerId === null) this.#owner(here, ownerId);
    }
    this.#link('car', which, car.key, this.#known.carByFileKey);
    this.#visit(which, visit);
    return this.#makes;
  }

  #findCustomer(customer: CustomerDraft): string | null {
    const byKey = this.#known.customerByFileKey.get(customer.key);
    if (byKey !== undefined) return byKey;
    if (customer.name === '') throw bad(...onlyKey(customer.key, 'customer-key', 'customer-name'));
    const keys = customerKeys(customer, { address: false });
    if (keys.length > 0) return firstOf(keys, this.#known.customerByKey);
    const named = [...(this.#known.named.get(foldText(customer.name)) ?? [])];
    if (named.length > 1) throw bad('customer-name', 'several-of-the-name');
    return named[0] ?? null;
  }

  #findCar(car: CarDraft): string | null {
    const id = this.#known.carByFileKey.get(car.key) ?? firstOf(carKeys(car), this.#known.carByKey);
    if (id === null) {
      if (car.plate === '' && car.vin === '' && car.words === '')
        throw bad(...onlyKey(car.key, 'car-key', 'car-plate'));
      return null;
    }
    const vin = this.#known.cars.get(id)?.vin ?? '';
    if (car.vin !== '' && vin !== '' && vin !== car.vin) throw bad('car-plate', 'belongs-to-another');
    return id;
  }

  #customerFields({ key: _, ...customer }: CustomerDraft) {
    return checked(customerFields, customer, CUSTOMER);
  }

  #carFields({ key: _, ...car }: CarDraft) {
    if (car.vin !== '' && readVin(car.vin).verdict === 'refuse_character') throw bad('car-vin', 'vin-character');
    return checked(carFields, { ...car, words: car.words || '—', unit: this.#unit }, CAR);
  }

  /** The row's customer: found, or made now; null where it names none. */
  #customerId(
    customer: CustomerDraft | null,
    found: string | null,
    fields: Plan['customers'][number]['fields'] | null,
  ): string | null {
    if (customer === null) return null;
    if (found !== null) {
      this.#link('customer', found, customer.key, this.#known.customerByFileKey);
      return found;
    }
    if (fields === null) return null;
    const made = this.#made(customer.key);
    this.#plan.customers.push({ ...made, fields });
    const keys = customerKeys(customer, { address: true });
    noteCustomer(this.#known, made.id, customer.name, keys);
    if (customer.key !== '') this.#known.customerByFileKey.set(customer.key, made.id);
    this.#makes.push({ what: 'customer', name: customer.key || (keys[0] ?? foldText(customer.name)) });
    return made.id;
  }

  #newCar(car: CarDraft, fields: Plan['cars'][number]['fields'], ownerId: string | null): string {
    const made = this.#made(car.key);
    this.#plan.cars.push({ ...made, fields });
    const here = { id: made.id, vin: car.vin, ownerId: null };
    this.#known.cars.set(made.id, here);
    for (const key of carKeys(car)) this.#known.carByKey.set(key, made.id);
    if (car.key !== '') this.#known.carByFileKey.set(car.key, made.id);
    if (ownerId !== null) this.#owner(here, ownerId);
    this.#makes.push({ what: 'car', name: carName(car) ?? made.hash });
    return made.id;
  }

  #owner(car: { readonly id: string; ownerId: string | null }, customerId: string): void {
    car.ownerId = customerId;
    this.#plan.owners.push({ ...this.#made(''), carId: car.id, customerId });
    this.#makes.push({ what: 'link', name: this.#draft.hash });
  }

  #visit(carId: string, draft: VisitDraft | null): void {
    if (draft === null) return;
    const key = visitKey(draft);
    const visits = this.#known.visits.get(carId) ?? new Set();
    if (visits.has(key)) return;
    this.#known.visits.set(carId, visits.add(key));
    this.#plan.visits.push({ ...this.#made(''), carId, draft });
    const { car } = this.#draft;
    this.#makes.push({ what: 'visit', name: `${(car && carName(car)) ?? carId}|${key}` });
  }

  /** Keeps what the file calls something that was here before, for files that name it so. */
  #link(table: 'customer' | 'car', id: string, fileKey: string, byKey: Map<string, string>): void {
    if (fileKey === '' || byKey.get(fileKey) === id) return;
    byKey.set(fileKey, id);
    this.#plan.links.push({ ...this.#made(fileKey), id, table });
    this.#makes.push({ what: 'link', name: fileKey });
  }

  #made(fileKey: string): FromRow {
    return { line: this.#line, hash: this.#draft.hash, id: newId(), fileKey: fileKey === '' ? null : fileKey };
  }
}

const carName = (car: CarDraft): string | undefined => car.key || carKeys(car)[0];

const onlyKey = (key: string, named: Field, needed: Field): [Field, Problem] =>
  key === '' ? [needed, 'missing'] : [named, 'not-known-here'];

function firstOf(keys: readonly string[], known: ReadonlyMap<string, string>): string | null {
  for (const key of keys) {
    const id = known.get(key);
    if (id !== undefined) return id;
  }
  return null;
}

/** Parsed as the contract wants it. Throws BadRow with the column of every field that does not fit. */
function checked<S extends z.ZodType>(schema: S, value: unknown, fields: Readonly<Record<string, Field>>): z.output<S> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw new BadRow(
    problemsOf(result.error.issues).map(({ path, problem, with: figures }) => ({
      field: fields[path.split('.')[0] ?? ''] ?? 'customer-name',
      problem,
      ...(figures ? { with: figures } : {}),
    })),
  );
}
