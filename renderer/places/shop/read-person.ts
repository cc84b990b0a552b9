import { readShop } from './setting.tsx';

/** A person as the shop has them now. */
export async function readPerson(id: string) {
  const answer = await readShop();
  if (!answer.ok) return answer;
  const output = answer.output.people.find((person) => person.id === id);
  return output === undefined
    ? ({ ok: false, error: { code: 'not-found', what: 'person', id } } as const)
    : ({ ok: true, output } as const);
}
