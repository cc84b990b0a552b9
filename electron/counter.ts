import type { Answer } from '../core/contract/errors.ts';
import type { CallOptions, Shop } from './dispatch.ts';
import type { PassedOn } from './passing-on.ts';

/** Where the command line's calls are answered: by the shop opened here, or by the process that holds it. */
export interface Counter {
  call(operation: string, input: unknown, personId: string | null, options: CallOptions): Promise<Answer>;
  enter(person: string, code: string): Promise<Answer>;
}

const DEVICE = 'command line';

export function counterOf(shop: Shop): Counter {
  return {
    call: (operation, input, personId, options) => shop.call(operation, input, { personId, device: DEVICE }, options),
    enter: (person, code) => shop.enter(person, code),
  };
}

/** A counter at the holder's door, one session for each person, since a session works for whoever entered last. */
export function counterThrough(letIn: (device: string) => Promise<PassedOn>): Counter {
  const nobody = letIn(DEVICE);
  const people = new Map<string, PassedOn>();
  return {
    async call(operation, input, personId, options) {
      const session = (personId === null ? undefined : people.get(personId)) ?? (await nobody);
      return session.post('/call', { operation, input, ...options });
    },
    async enter(person, code) {
      const session = await letIn(DEVICE);
      const entered = await session.post('/enter', { person, code });
      if (entered.ok) people.set(personIdOf(entered.output), session);
      return entered;
    },
  };
}

/** The id out of what entering answers. */
export function personIdOf(output: unknown): string {
  if (typeof output === 'object' && output !== null && 'personId' in output && typeof output.personId === 'string') {
    return output.personId;
  }
  throw new Error('Entering gave no person.');
}
