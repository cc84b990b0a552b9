import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { ask } from '../../state/call.ts';
import type { CallError } from '../../state/transport.ts';
import { t } from '../../words/t.ts';

/** A text as a file in the downloads of this machine. */
function saveText(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** The bookings of some days as a calendar file (RFC 5545), to take along. */
export function CalendarFile({ from, to }: { readonly from: string; readonly to: string }) {
  const [error, setError] = useState<CallError | null>(null);
  const [saved, setSaved] = useState('');
  const save = async () => {
    const answer = await ask('booking.calendar', { from, to });
    setError(answer.ok ? null : answer.error);
    if (!answer.ok) return;
    const { name, text, count } = answer.output;
    saveText(name, 'text/calendar', text);
    setSaved(t('plan.calendarSaved', { n: count, name }));
  };
  return (
    <>
      <Button small onClick={() => void save()}>
        {t('plan.calendar')}
      </Button>
      <span role="status" className="small">
        {saved}
      </span>
      <NotSaved error={error} />
    </>
  );
}
