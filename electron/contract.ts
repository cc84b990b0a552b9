import { z } from 'zod';
import { operations } from '../core/contract/index.ts';

/** Every operation as JSON Schema (draft 2020-12), in the order of the contract. */
export function contractAsSchema(): object {
  return Object.fromEntries(
    Object.entries(operations).map(([name, { kind, may, input, output }]) => [
      name,
      {
        kind,
        may,
        input: z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }),
        output: z.toJSONSchema(output, { io: 'output', unrepresentable: 'any' }),
      },
    ]),
  );
}
