import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t, tMaybe } from '../../words/t.ts';
import { copyText } from './copy-text.ts';
import { type About, isTalk, type Way, wayOptions } from './ways.ts';
import './contact.css';

type Text = OutputOf<'message.draft'>;

interface Props {
  readonly about: Exclude<About, 'other'>;
  readonly orderId?: string;
  readonly reminderId?: string;
  /** Once it is written down how it went. */
  readonly onRecorded: (way: Way) => void;
}

/** A text in the shop's own wording with its figures: copied or opened in the mail program, then written down as sent. */
export function Draft({ about, orderId, reminderId, onRecorded }: Props) {
  const writing = useWriting();
  const { data, error, loading } = useAsk('message.draft', {
    about,
    orderId: orderId ?? null,
    reminderId: reminderId ?? null,
  });
  if (data === undefined)
    return error ? <p role="alert">{errorSentence(error, writing)}</p> : loading ? <Loading rows={4} /> : null;
  return <Written about={about} draft={data} orderId={orderId ?? null} onRecorded={onRecorded} />;
}

interface WrittenProps {
  readonly about: About;
  readonly draft: Text;
  readonly orderId: string | null;
  readonly onRecorded: (way: Way) => void;
}

function Written({ about, draft, orderId, onRecorded }: WrittenProps) {
  const record = useDo('message.record');
  const [text, setText] = useState(draft.text);
  const [said, setSaid] = useState('');
  const [way, setWay] = useState<Way | null>(null);
  const copy = async () => {
    setSaid(t((await copyText(text)) ? 'contact.copied' : 'contact.notCopied'));
    setWay((now) => now ?? 'message');
  };
  const mail = `mailto:${encodeURIComponent(draft.email)}?subject=${encodeURIComponent(draft.subject)}&body=${encodeURIComponent(text)}`;
  const keep = async () => {
    if (way === null || text.trim() === '') return;
    const { customerId } = draft;
    const answer = await record.run({ customerId, orderId, about, way, reached: isTalk(way), words: text });
    if (answer.ok) onRecorded(way);
  };
  return (
    <div className="contact-draft">
      <p className="small ink-2">
        {t('contact.to', {
          to: [draft.name, draft.phone, draft.email, draft.tellBy].filter((one) => one !== '').join(', '),
        })}
      </p>
      {draft.missing.length === 0 ? null : (
        <p className="small in-heed semi">
          {t('contact.missing', {
            what: draft.missing.map((one) => tMaybe(`contact.figure-${one}`) ?? one).join(', '),
          })}
        </p>
      )}
      <Field label={draft.subject} value={text} onChange={setText} lines={8} maxLength={4000} />
      <div className="contact-acts">
        <Button small onClick={() => void copy()}>
          {t('contact.copy')}
        </Button>
        {draft.email === '' ? null : (
          <a className="button less" href={mail} onClick={() => setWay('mail')}>
            {t('contact.mail')}
          </a>
        )}
        <span role="status" className="small ink-2">
          {said}
        </span>
      </div>
      <Choice label={t('contact.wentBy')} value={way} options={wayOptions()} onChange={setWay} />
      <div>
        <Button
          disabled={record.busy}
          onClick={() => void keep()}
          {...(way === null ? { held: t('contact.wayNeeded') } : {})}
        >
          {t('contact.keep')}
        </Button>
      </div>
      <NotSaved error={record.error} onAgain={() => void record.again()} />
    </div>
  );
}
