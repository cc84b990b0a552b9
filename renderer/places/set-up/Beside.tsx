import { useRef, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { t } from '../../words/t.ts';
import { BringBack } from './BringBack.tsx';
import { DemoGarage } from './DemoGarage.tsx';
import type { Change, SetUpDraft } from './draft.ts';
import { InvoicePreview } from './InvoicePreview.tsx';
import { readLogo } from './logo.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
}

/** Beside the page: the invoice as it will print, the garage's mark, and the two other ways in. */
export function Beside({ draft, change }: Props) {
  const file = useRef<HTMLInputElement>(null);
  const [wrong, setWrong] = useState(false);
  const take = async (picked: File | undefined) => {
    if (picked === undefined) return;
    const logo = await readLogo(picked);
    setWrong(logo === null);
    if (logo !== null) change({ logo });
  };
  return (
    <aside className="set-up-beside" aria-label={t('start.yourInvoice')}>
      <h2>
        {t('start.yourInvoice')} <span className="set-up-as-printed">{t('start.asItPrints')}</span>
      </h2>
      <InvoicePreview draft={draft} />
      <div className="set-up-mark">
        <input
          ref={file}
          className="aloud"
          type="file"
          accept="image/png,image/jpeg"
          aria-label={t('start.markFile')}
          tabIndex={-1}
          onChange={(event) => {
            void take(event.target.files?.[0]);
            event.target.value = '';
          }}
        />
        <Button onClick={() => file.current?.click()}>
          {t(draft.logo === null ? 'start.mark' : 'start.otherMark')}
        </Button>
        {draft.logo === null ? null : <Button onClick={() => change({ logo: null })}>{t('start.noMark')}</Button>}
        {wrong ? (
          <p className="wrong-words" role="alert">
            {t('start.markWrong')}
          </p>
        ) : null}
      </div>
      <DemoGarage />
      <BringBack />
    </aside>
  );
}
