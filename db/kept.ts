import type { Compilable, CompiledQuery } from 'kysely';
import type { Tx } from './context.ts';

type Value = string | number | null;
type Values = Readonly<Record<string, Value | readonly Value[]>>;

/** Stands in a question for a value that is not known yet: which one, and of a list which place. */
class Slot {
  readonly name: string;
  readonly place: number | null;

  constructor(name: string, place: number | null) {
    this.name = name;
    this.place = place;
  }

  /** A question is written once for all values, so it cannot depend on one. */
  [Symbol.toPrimitive](): never {
    throw new Error(`the question looks at its value "${this.name}" instead of handing it on`);
  }
}

interface Written<R> {
  readonly query: CompiledQuery<R>;
  readonly fill: readonly ((values: Values) => unknown)[];
}

/** What a question's text depends on: how long each list is. */
const shapeOf = (values: Values) =>
  Object.values(values)
    .map((value) => (Array.isArray(value) ? value.length : ''))
    .join();

function write<V extends Values, R>(ask: (tx: Tx, values: V) => Compilable<R>, tx: Tx, values: V): Written<R> {
  const slots = Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      Array.isArray(value) ? value.map((_, place) => new Slot(name, place)) : new Slot(name, null),
    ]),
  );
  // Slots stand for values of any type; the caller's types hold what goes into them.
  const query = ask(tx, slots as unknown as V).compile();
  const fill = query.parameters.map((parameter) => {
    if (!(parameter instanceof Slot)) return () => parameter;
    const { name, place } = parameter;
    return place === null ? (of: Values) => of[name] : (of: Values) => (of[name] as readonly Value[])[place];
  });
  return { query, fill };
}

/**
 * A question whose text is made once and kept, for those that are asked all day: making it with Kysely takes as long as
 * the answer. It is given the transaction and the values, which it may only hand on (never look at); lists may be of any
 * length that is not 0.
 */
export function kept<V extends Values, R>(
  ask: (tx: Tx, values: V) => Compilable<R>,
): (tx: Tx, values: V) => Promise<R[]> {
  const written = new Map<string, Written<R>>();
  return async (tx, values) => {
    const shape = shapeOf(values);
    let found = written.get(shape);
    if (!found) {
      found = write(ask, tx, values);
      written.set(shape, found);
    }
    const { query, fill } = found;
    const parameters = fill.map((value) => value(values));
    return (await tx.executeQuery<R>({ ...query, parameters })).rows;
  };
}
