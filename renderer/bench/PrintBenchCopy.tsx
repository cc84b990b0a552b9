import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { NotSaved } from '../parts/Notice.tsx';
import { ask } from '../state/call.ts';
import type { CallError } from '../state/transport.ts';
import { t } from '../words/t.ts';
import { savePdf } from './save-pdf.ts';

interface Props {
  /** A job on an order, or a version of a job of the book. */
  readonly of: InputOf<'workSheet.pdf'>;
  readonly small?: boolean;
}

/** The bench copy as a PDF, to work on when the power is out. */
export function PrintBenchCopy({ of, small = false }: Props) {
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<CallError | null>(null);
  const print = async () => {
    setBusy(true);
    const answer = await ask('workSheet.pdf', of);
    setBusy(false);
    setError(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <>
      <Button small={small} disabled={busy} onClick={() => void print()}>
        {t('jobBook.printCopy')}
      </Button>
      <NotSaved error={error} />
    </>
  );
}
