import { useMemo, useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { Mark } from '../../frame/Mark.tsx';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useShop, WritingDraft } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { PLAIN_WRITING } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import { Beside } from './Beside.tsx';
import { emptySetUp, errorsOf, type SetUpDraft, setUpOf } from './draft.ts';
import { MoneyRow } from './MoneyRow.tsx';
import { PapersRow } from './PapersRow.tsx';
import { PeopleRow } from './PeopleRow.tsx';
import { refusedAt } from './refused.ts';
import { WhereRow } from './WhereRow.tsx';
import { WhoRow } from './WhoRow.tsx';
import { YesRow } from './YesRow.tsx';
import './set-up.css';

/** First start on one page: where, who, money, yes, people, papers; beside it the invoice. Ctrl Enter opens the garage. */
export function SetUp() {
  const shop = useShop();
  const setUp = useDo('shop.setUp');
  const [draft, setDraft] = useState<SetUpDraft>(() =>
    emptySetUp(new Intl.DateTimeFormat().resolvedOptions().timeZone),
  );
  const [tried, setTried] = useState(false);
  const change = (part: Partial<SetUpDraft>) => {
    setUp.clear();
    setDraft((before) => ({ ...before, ...part }));
  };
  const { error } = setUp;
  const refused = error?.code === 'bad-input' ? refusedAt(error.fields, draft) : null;
  const errors = { ...(tried ? errorsOf(draft) : {}), ...refused?.errors };

  const go = async () => {
    setTried(true);
    if (setUp.busy) return;
    if (Object.keys(errorsOf(draft)).length > 0) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('.talk [aria-invalid="true"]')?.focus());
      return;
    }
    await setUp.run(setUpOf(draft));
  };
  useKey('Ctrl+Enter', () => void go());

  const { dateForm } = draft;
  const writing = useMemo(() => ({ ...PLAIN_WRITING, dateForm }), [dateForm]);
  const wrongs = Object.keys(errors).length;
  return (
    <main className="set-up">
      <div className="set-up-top">
        <Mark />
        <b>{t('frame.program')}</b>
        <span>{t('start.stays')}</span>
      </div>
      <div className="set-up-both">
        <div className="page">
          <div className="page-head">
            <h1>{t('start.title')}</h1>
            <p>{t('start.words')}</p>
          </div>
          <WhereRow draft={draft} change={change} errors={errors} />
          <WhoRow draft={draft} change={change} errors={errors} />
          <WritingDraft value={writing}>
            <MoneyRow draft={draft} change={change} errors={errors} />
            <YesRow draft={draft} change={change} errors={errors} />
          </WritingDraft>
          <PeopleRow draft={draft} change={change} errors={errors} />
          <PapersRow draft={draft} change={change} errors={errors} />
          <Talk head={t('start.kept')}>
            <p>
              <b className="set-up-folder">{shop?.folder}</b>
              <br />
              <span className="small ink-2">
                <b className="in-heed">{t('start.secondPlaceHead')}</b> {t('start.secondPlace')}{' '}
                {shop?.practice ? t('start.practice') : null}
              </span>
            </p>
          </Talk>
        </div>
        <Beside draft={draft} change={change} />
      </div>
      {error === null ? null : (
        <Notice what={t('start.notOpened')}>
          {refused === null ? errorSentence(error) : refused.elsewhere.join(' ') || t('errors.bad-input')}
        </Notice>
      )}
      <div className="place-foot">
        <p aria-live="polite">
          <b>{footWords(draft)}</b>
          <br />
          {wrongs > 0 ? (
            <span className="in-stop">{t('start.wrongFields', { n: wrongs })}</span>
          ) : (
            <span className="ink-2">{openWords(draft)}</span>
          )}
        </p>
        <Button kind="go" keys="Ctrl+Enter" onClick={() => void go()} disabled={setUp.busy}>
          {t('start.go')}
        </Button>
      </div>
    </main>
  );
}

function footWords(draft: SetUpDraft): string {
  const names = draft.people.map((person) => person.name.trim()).filter((name) => name !== '');
  return t('start.foot', {
    name: draft.name.trim() || t('start.footName'),
    people: names.length === 0 ? t('start.nobody') : listWords(names),
    n: draft.nextInvoice,
  });
}

/** What may be left for later, named. */
function openWords(draft: SetUpDraft): string {
  const taxes = draft.taxes.filter((tax) => tax.rate.trim() !== '');
  const open = [
    draft.address.trim() === '' ? t('start.openAddress') : '',
    taxes.length === 0 ? t('start.openTax') : '',
    taxes.some((tax) => tax.source.trim() === '' || tax.checkedOn === '') ? t('start.openSource') : '',
    draft.overCheckedOn === '' ? t('start.openRule') : '',
    draft.notices.trim() === '' ? t('start.openNotices') : '',
    draft.logo === null ? t('start.openMark') : '',
  ].filter((what) => what !== '');
  return open.length === 0 ? t('start.nothingOpen') : t('start.stillOpen', { what: listWords(open) });
}
