import { Page } from '../frame/Page.tsx';
import { hrefOf } from '../frame/router.ts';
import { Loading } from '../parts/Loading.tsx';
import { NotSaved } from '../parts/Notice.tsx';
import { useSession } from '../state/session.ts';
import { useAsk } from '../state/use-ask.ts';
import { t } from '../words/t.ts';
import type { PlaceProps } from './index.ts';
import { Owed, Taken } from './money/Owed.tsx';
import { Papers } from './money/Papers.tsx';
import { Statements } from './money/Statements.tsx';
import { ToSend } from './money/ToSend.tsx';
import './money/money.css';

const PAGES = ['owed', 'papers', 'to-send', 'statements'] as const;

/** The place Money: what is owed and what was taken today, every paper, and what waits to be sent. */
export default function Money({ path }: PlaceProps) {
  const blind = useSession((session) => session.person?.role === 'mechanic');
  const money = useAsk('money.get', blind ? null : {});
  const toSend = useAsk('paper.toSend', blind ? null : {});
  if (blind)
    return (
      <Page title={t('money.title')}>
        <p>{t('money.deskOnly')}</p>
      </Page>
    );
  const page = PAGES.find((name) => name === path[0]) ?? 'owed';
  const unpaid = money.data?.unpaid ?? [];
  const past = unpaid.filter((row) => row.daysPastDue > 0).length;
  const sentence =
    unpaid.length === 0
      ? t('money.allPaid')
      : `${t('money.unpaid', { n: unpaid.length })} ${past === 0 ? t('money.nonePast') : t('money.pastDue', { n: past })}`;
  return (
    <Page title={t('money.title')} words={money.data === undefined ? undefined : sentence}>
      <nav className="money-nav" aria-label={t('money.pages')}>
        {PAGES.map((name) => (
          <a key={name} href={hrefOf('money', name)} aria-current={name === page ? 'page' : undefined}>
            {t(`money.page-${name}`)}
            {name === 'to-send' && toSend.data !== undefined ? ` ${toSend.data.rows.length}` : null}
          </a>
        ))}
      </nav>
      {page === 'papers' ? <Papers /> : null}
      {page === 'statements' ? <Statements /> : null}
      {page === 'to-send' ? <ToSend asked={toSend} /> : null}
      {page === 'owed' ? (
        <>
          <NotSaved error={money.error} />
          {money.loading ? <Loading rows={8} /> : null}
          {money.data === undefined ? null : (
            <div className="columns money-columns">
              <Owed money={money.data} />
              <aside>
                <Taken money={money.data} />
              </aside>
            </div>
          )}
        </>
      ) : null}
    </Page>
  );
}
