import { useState } from 'react';
import { savePdf } from '../../../bench/save-pdf.ts';
import { Button } from '../../../parts/Button.tsx';
import { Wrong } from '../../../sheet/Wrong.tsx';
import { ask } from '../../../state/call.ts';
import type { CallError } from '../../../state/transport.ts';
import { t } from '../../../words/t.ts';

/** What was seen, as a paper for the customer, made when it is wanted. */
export function CheckPaper({ id }: { readonly id: string }) {
  const [error, setError] = useState<CallError | null>(null);
  const print = async () => {
    const answer = await ask('check.paper', { id });
    setError(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <>
      <Button onClick={() => void print()}>{t('leave.paper')}</Button>
      <Wrong error={error} />
    </>
  );
}
