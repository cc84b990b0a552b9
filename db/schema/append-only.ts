/** Triggers that hold tables whose rows never change and never go, by the database as well as by code. */
export const appendOnly = (names: readonly string[]): string =>
  names
    .map(
      (table) => `
CREATE TRIGGER ${table}_no_update BEFORE UPDATE ON ${table} BEGIN SELECT raise(ABORT, '${table} is append-only'); END;
CREATE TRIGGER ${table}_no_delete BEFORE DELETE ON ${table} BEGIN SELECT raise(ABORT, '${table} is append-only'); END;`,
    )
    .join('\n');
