import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { refresh } from '../../state/asks.ts';
import { ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallAnswer } from '../../state/transport.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { problemAt } from '../stock/problem-at.ts';

/** Makes a checked copy now: into the shop's own folder, or with its papers into a folder on a stick. */
export function MakeCopy() {
  const writing = useWriting();
  const [to, setTo] = useState('');
  const [busy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<CallAnswer<OutputOf<'care.copy'>> | null>(null);
  const go = async () => {
    setBusy(true);
    setAnswer(null);
    setAnswer(await ask('care.copy', { to: to.trim() }));
    setBusy(false);
    // The list of copies stands beside; an ask announces nothing by itself.
    refresh();
  };
  const error = answer !== null && !answer.ok ? answer.error : null;
  const wrong = error === null ? null : (problemAt(error, 'to', 'shop') ?? errorSentence(error, writing));
  return (
    <form
      className="shop-copy"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field
        label={t('shop.copyTo')}
        value={to}
        onChange={(text) => {
          setTo(text);
          setAnswer(null);
        }}
        error={wrong}
        note={t('shop.copyToNote')}
        maxLength={400}
      />
      <Button type="submit" kind="go" disabled={busy}>
        {t('shop.copyNow')}
      </Button>
      <p role="status">
        {busy ? t('shop.copying') : answer?.ok ? t('shop.copied', { path: answer.output.path }) : null}
      </p>
    </form>
  );
}
