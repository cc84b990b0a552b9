import { create } from 'zustand';
import { forgetAll } from './asks.ts';
import { askWho, type CallAnswer, type CallError, type Entered, sendEnter, sendLeave, type Who } from './transport.ts';

interface Session {
  /** undefined until the door has said who works here. */
  readonly person: Entered | null | undefined;
  readonly practice: boolean;
  readonly folder: string;
  readonly error: CallError | null;
}

/** Who works at this window. */
export const useSession = create<Session>(() => ({ person: undefined, practice: false, folder: '', error: null }));

/** Asks the door who works here. */
export async function readSession(): Promise<void> {
  const answer = (await askWho()) as CallAnswer<Who>;
  if (answer.ok) useSession.setState({ ...answer.output, error: null });
  else useSession.setState({ error: answer.error });
}

/** Takes a person (by id) with their code to this window. */
export async function enter(personId: string, code: string): Promise<CallAnswer<unknown>> {
  const answer = await sendEnter(personId, code);
  if (answer.ok) {
    await readSession();
    forgetAll();
  }
  return answer;
}

/** Leaves the window to whoever comes next. */
export async function leave(): Promise<void> {
  await sendLeave();
  useSession.setState({ person: null });
  forgetAll();
}
