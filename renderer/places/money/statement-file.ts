import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { ask } from '../../state/call.ts';
import type { CallError } from '../../state/transport.ts';
import { useDo } from '../../state/use-do.ts';

/** Opens a file of a run to be printed or sent, and notes that with each statement in it; a file that is gone is said. */
export function useStatementFile(runId: string) {
  const [error, setError] = useState<CallError | null>(null);
  const noted = useDo('statement.noted');
  const fetch = async (name: string) => {
    const answer = await ask('statement.file', { runId, name });
    setError(answer.ok ? null : answer.error);
    if (!answer.ok) return;
    savePdf(answer.output.name, answer.output.base64);
    const noting = await noted.run({ runId, name, what: 'made' });
    if (!noting.ok) setError(noting.error);
  };
  return { error, open: (name: string) => void fetch(name) };
}
