import { useRef, useState } from 'react';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useRowKeys } from '../../parts/row-keys.ts';
import { WordMark } from '../../parts/WordMark.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

/** Every job of the book, by title. */
export function BookList() {
  const writing = useWriting();
  const mayChange = useSession((session) => session.person?.role !== 'mechanic');
  const [text, setText] = useState('');
  const list = useRef<HTMLTableSectionElement>(null);
  useRowKeys(list, 'a');
  const asked = useAsk('jobBook.list', {});
  const all = asked.data?.rows ?? [];
  const sought = text.trim().toLowerCase();
  const rows = all.filter((row) => `${row.title} ${row.car}`.toLowerCase().includes(sought));
  const add = mayChange ? (
    <Button kind="go" onClick={() => goTo('job-book', 'new')}>
      {t('jobBook.newJob')}
    </Button>
  ) : null;
  const empty = asked.data !== undefined && all.length === 0;
  return (
    <Page title={t('jobBook.title')} words={t('jobBook.words')} actions={empty ? undefined : add}>
      <div className="book-find">
        <Field label={t('jobBook.find')} value={text} onChange={setText} maxLength={60} />
      </div>
      <NotSaved error={asked.error} />
      {asked.loading ? <Loading rows={6} /> : null}
      {empty ? <Empty action={add}>{t('jobBook.none')}</Empty> : null}
      {all.length > 0 && rows.length === 0 ? <Empty>{t('jobBook.noneFound')}</Empty> : null}
      {rows.length === 0 ? null : (
        <table className="book-table">
          <thead>
            <tr>
              <th>{t('jobBook.job')}</th>
              <th>{t('jobBook.car')}</th>
              <th className="figure">{t('jobBook.hours')}</th>
              <th className="figure">{t('jobBook.steps')}</th>
              <th className="figure">{t('jobBook.version')}</th>
            </tr>
          </thead>
          <tbody ref={list}>
            {rows.map((row) => (
              <tr key={row.id}>
                <td>
                  <a className="semi" href={hrefOf('job-book', row.id)}>
                    {row.title}
                  </a>{' '}
                  {row.warnings > 0 ? (
                    <WordMark kind="heed">{t('jobBook.toMend', { n: row.warnings })}</WordMark>
                  ) : null}
                </td>
                <td className="ink-2">{row.car}</td>
                <td className="figure">{quantityText(row.bookHours, 'h', writing)}</td>
                <td className="figure">{row.steps}</td>
                <td className="figure">
                  {row.version === 0 ? null : row.version}
                  {row.draft === null ? null : (
                    <span className="ink-2">
                      {row.version === 0 ? '' : ', '}
                      {t('jobBook.draftOf', { n: row.draft })}
                    </span>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Page>
  );
}
