import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import { useFold, useUnfolded } from '../parts/unfolded.ts';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { type Paper, paperName } from './paper-name.ts';

interface Props {
  readonly order: Order;
  readonly paper: Paper;
}

/** Whether and how a paper was sent; said by the person, since nobody can know whether it was read. */
export function Sent({ order, paper }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const { open, unfold, fold, opener } = useFold();
  const last = paper.sent.at(-1);
  return (
    <div className="sent">
      <p className={last === undefined ? 'small semi' : 'small ink-2'}>
        {last === undefined
          ? t('papers.notSent')
          : t('papers.sentHow', { when: nearText(last.at, writing, now), how: last.how })}{' '}
        {open ? null : (
          <button
            ref={opener}
            type="button"
            className="link small"
            aria-expanded={false}
            aria-label={`${t(last === undefined ? 'sheet.markSent' : 'papers.againSent')}: ${paperName(paper)}`}
            onClick={unfold}
          >
            {t(last === undefined ? 'sheet.markSent' : 'papers.againSent')}
          </button>
        )}
      </p>
      {open ? <HowSent order={order} paper={paper} onDone={fold} /> : null}
    </div>
  );
}

function HowSent({ order, paper, onDone }: Props & { readonly onDone: () => void }) {
  const form = useUnfolded<HTMLFieldSetElement>(onDone);
  const sent = useDo('paper.sent');
  const shop = useShop()?.settings?.name ?? '';
  const [other, setOther] = useState('');
  const { email, phone } = order.customer;
  const say = async (how: string) => {
    const answer = await sent.run({ id: paper.id, how });
    if (answer.ok) onDone();
  };
  const ways = [
    t('papers.sent-printed'),
    ...(email === '' ? [] : [t('papers.sent-mail', { to: email })]),
    ...(phone === '' ? [] : [t('papers.sent-message', { to: phone })]),
    t('papers.sent-post'),
  ];
  const subject = t('papers.mailSubject', { paper: paperName(paper), shop });
  return (
    <fieldset ref={form} className="how-sent">
      <legend className="small">{t('papers.howSent')}</legend>
      {ways.map((how) => (
        <Button key={how} small disabled={sent.busy} onClick={() => void say(how)}>
          {how}
        </Button>
      ))}
      <SmallForm verb={t('sheet.markSent')} onSend={() => say(other)} busy={sent.busy || other.trim() === ''}>
        <Field label={t('papers.howOther')} value={other} onChange={setOther} maxLength={120} />
      </SmallForm>
      {email === '' ? null : (
        <a className="link" href={`mailto:${email}?subject=${encodeURIComponent(subject)}`}>
          {t('papers.writeMail')}
        </a>
      )}
      <Wrong error={sent.error} />
    </fieldset>
  );
}
