import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { Button } from '../../parts/Button.tsx';
import { Wrong } from '../../sheet/Wrong.tsx';
import { ask } from '../../state/call.ts';
import type { CallError } from '../../state/transport.ts';
import { t } from '../../words/t.ts';

/** The photos that are to be printed, as a paper for the customer. */
export function PhotoPaper({ orderId }: { readonly orderId: string }) {
  const [error, setError] = useState<CallError | null>(null);
  const print = async () => {
    const answer = await ask('photo.paper', { orderId });
    setError(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <p>
      <Button onClick={() => void print()}>{t('bay.photoPaper')}</Button>
      <Wrong error={error} />
    </p>
  );
}
