import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { ask } from '../../state/call.ts';
import type { CallError } from '../../state/transport.ts';

/** Opens a file of a run; a file that is gone is said. */
export function useStatementFile(runId: string) {
  const [error, setError] = useState<CallError | null>(null);
  const fetch = async (name: string) => {
    const answer = await ask('statement.file', { runId, name });
    setError(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return { error, open: (name: string) => void fetch(name) };
}
