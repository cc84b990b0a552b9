import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { PaperLink } from '../../parts/PaperLink.tsx';
import { useWriting } from '../../state/shop.ts';
import type { Asked } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { paperName } from './paper-name.ts';

type ToSendRow = OutputOf<'paper.toSend'>['rows'][number];

/** Issued, and nobody has said that it was sent: oldest first. */
export function ToSend({ asked }: { readonly asked: Asked<OutputOf<'paper.toSend'>> }) {
  const rows = asked.data?.rows ?? [];
  return (
    <section aria-label={t('money.page-to-send')}>
      <p className="ink-2 money-words">{t('money.toSendWords')}</p>
      <NotSaved error={asked.error} />
      {asked.loading ? <Loading rows={6} /> : null}
      {asked.data !== undefined && rows.length === 0 ? <Empty>{t('money.toSendNone')}</Empty> : null}
      <ul className="to-send">
        {rows.map((row) => (
          <li key={row.id}>
            <Row row={row} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Row({ row }: { readonly row: ToSendRow }) {
  const writing = useWriting();
  const sent = useDo('paper.sent');
  const [how, setHow] = useState(row.email === '' ? t('money.byHand') : t('money.byEmail', { to: row.email }));
  const [wrong, setWrong] = useState<string | null>(null);
  const name = paperName(row);
  const go = async () => {
    if (how.trim() === '') return setWrong(t('money.howNeeded'));
    setWrong(null);
    await sent.run({ id: row.id, how });
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <div>
        <PaperLink paperId={row.id}>{name}</PaperLink>
        <br />
        <span className="small ink-2">{civilText(row.issuedOn, writing)}</span>
      </div>
      <div>
        <a href={hrefOf('orders', row.orderId)}>{row.customer}</a>
        <br />
        <span className="small ink-2">
          {[row.tellBy, row.email, row.phone].filter((text) => text !== '').join(', ')}
        </span>
      </div>
      <b className="figure">{amountText(row.gross, writing)}</b>
      <Field label={t('money.how')} value={how} onChange={setHow} error={wrong} maxLength={120} />
      <Button type="submit" disabled={sent.busy} label={t('money.wasSentOf', { name })}>
        {t('money.wasSent')}
      </Button>
      <NotSaved error={sent.error} onAgain={() => void sent.again()} />
    </form>
  );
}
