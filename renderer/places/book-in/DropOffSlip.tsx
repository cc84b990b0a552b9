import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { NotSaved } from '../../parts/Notice.tsx';
import { ask } from '../../state/call.ts';
import { useSession } from '../../state/session.ts';
import type { CallError } from '../../state/transport.ts';
import { t } from '../../words/t.ts';

/** Makes the slip for whoever left the car and hands it over as a file; the error where it could not be made. */
export async function saveSlip(orderId: string): Promise<CallError | null> {
  const answer = await ask('dropOff.pdf', { orderId });
  if (!answer.ok) return answer.error;
  savePdf(answer.output.name, answer.output.base64);
  return null;
}

/** The drop-off slip of an order, again or for the first time. */
export function DropOffSlip({ orderId }: { readonly orderId: string }) {
  const [error, setError] = useState<CallError | null>(null);
  const blind = useSession((session) => session.person?.role === 'mechanic');
  if (blind) return null;
  return (
    <>
      <p>
        <button type="button" className="link" onClick={() => void saveSlip(orderId).then(setError)}>
          {t('intake.slip')}
        </button>
      </p>
      <NotSaved error={error} />
    </>
  );
}
