import { useState } from 'react';
import { checkProcedure } from '../../../core/bench/procedure-check.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { useKey } from '../../frame/keys.ts';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { UndoLine } from '../../parts/UndoLine.tsx';
import { useSession } from '../../state/session.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { type BookJob, type Content, draftNow, dropDraft, EMPTY_JOB, keepDraft, useDraft } from './draft.ts';
import { LastTimes } from './LastTimes.tsx';
import { Lines } from './Lines.tsx';
import { PutOn } from './PutOn.tsx';
import { Steps } from './Steps.tsx';
import { WhatIsWrong } from './WhatIsWrong.tsx';
import { JobCell, JobHere } from './writing-job.tsx';

/** The key of the draft of a job that is not in the book yet. */
const NEW = 'new';

interface Props {
  /** The job as it is in the book; null for a new one. */
  readonly kept: BookJob | null;
}

/** One job of the book: hours, parts and last times at the left, the procedure at the right, both written in place. */
export function BookJobPage({ kept }: Props) {
  const key = kept?.id ?? NEW;
  const draft = useDraft(key);
  const mayChange = useSession((session) => session.person?.role !== 'mechanic');
  const count = useAsk('jobBook.list', {}).data?.rows.length;
  const save = useDo('jobBook.save');
  const [open, setOpen] = useState<number | null>(null);
  const [putting, setPutting] = useState(false);
  const [said, setSaid] = useState('');
  const version = kept?.version ?? 0;
  const content = draft?.content ?? kept?.content ?? EMPTY_JOB;
  const warnings = checkProcedure(content);
  const mend = mends(warnings);
  const keeps = mends(warnings.filter((warning) => warning.keepsFromBench));
  const changed = draft !== undefined;
  const meanwhile = draft !== undefined && draft.basedOn !== version;

  const [gone, setGone] = useState<{ readonly words: string; readonly content: Content } | null>(null);
  const change = (now: (content: Content) => Content) => {
    const standing = draftNow(key) ?? { basedOn: version, content };
    keepDraft(key, { ...standing, content: now(standing.content) });
    setSaid('');
    setGone(null);
  };
  const takeOut = (words: string, now: (content: Content) => Content) => {
    const before = draftNow(key)?.content ?? content;
    change(now);
    setGone({ words, content: before });
  };
  const keep = async (over = false) => {
    // What is still being typed goes into the draft first.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    await new Promise((later) => setTimeout(later, 0));
    const now = draftNow(key);
    if (now === undefined || now.content.title.trim() === '') return;
    const basedOn = over ? version : now.basedOn;
    const answer = await save.run({ id: kept?.id ?? null, basedOn, content: now.content });
    if (!answer.ok) return;
    dropDraft(key);
    setGone(null);
    setSaid(t('jobBook.kept', { n: answer.output.version }));
    if (kept === null) goTo('job-book', answer.output.id);
  };
  const drop = () => {
    dropDraft(key);
    save.clear();
    setOpen(null);
    setGone(null);
    setSaid(t('jobBook.dropped'));
    if (kept === null) goTo('job-book');
  };
  useKey('Ctrl+Z', () => gone !== null && change(() => gone.content), gone !== null);
  useKey('Ctrl+Enter', () => void keep(), mayChange);
  const onSource = () => {
    const field = document.querySelector('.book-source-cell input');
    if (field instanceof HTMLElement) field.focus();
  };
  const untitled = content.title.trim() === '' ? t('jobBook.titleNeeded') : null;

  return (
    <JobHere value={{ content, change: mayChange ? change : null, takeOut: mayChange ? takeOut : null }}>
      <div className="page book-page">
        <div className="book-left">
          <h1 className="aloud">{content.title === '' ? t('jobBook.newJob') : content.title}</h1>
          <JobCell
            className={content.title.length > 36 ? 'book-title long' : 'book-title'}
            autoFocus={kept === null && content.title === ''}
            label={t('jobBook.titleCell')}
            placeholder={t('jobBook.titleHint')}
            value={content.title}
            read={(text, now) => (text.trim() === '' || text.length > 200 ? null : { ...now, title: text.trim() })}
            wrong={t('jobBook.titleNeeded')}
          />
          <div className="book-sub">
            <JobCell
              label={t('jobBook.car')}
              placeholder={t('jobBook.carHint')}
              value={content.car}
              read={(text, now) => (text.length > 200 ? null : { ...now, car: text })}
              wrong={t('shop.wordsWrong')}
            />
            <span className="ink-2">
              {kept === null ? t('jobBook.versionNew') : t('jobBook.versionOf', { n: version })}
              {changed && kept !== null ? `, ${t('jobBook.changed')}` : null}
            </span>
            <a href={hrefOf('job-book')}>{t('jobBook.allJobs', { n: count ?? 0 })}</a>
          </div>
          <WhatIsWrong warnings={warnings} onStep={setOpen} onSource={onSource} />
          <Lines />
          {kept === null ? null : <LastTimes last={kept.lastTimes} bookHours={content.bookHours} />}
        </div>
        <div className="book-right">
          <Steps warnings={warnings} open={open} onOpen={setOpen} />
        </div>
      </div>
      <section className="foot" aria-label={t('jobBook.keepsVersion')}>
        <div className="foot-words">
          {putting && kept !== null ? (
            <PutOn bookJobId={kept.id} onClose={() => setPutting(false)} />
          ) : (
            <>
              {gone === null ? (
                <b>{t('jobBook.keepsVersion')}</b>
              ) : (
                <UndoLine gone={gone.words} last onUndo={() => change(() => gone.content)}>
                  {t('jobBook.wasTakenOut')}
                </UndoLine>
              )}
              <span role="status">{said}</span>
              {meanwhile ? <span className="in-stop"> {t('jobBook.meanwhile', { n: version })}</span> : null}
              {meanwhile ? null : <NotSaved error={save.error} onAgain={() => void save.again()} />}
            </>
          )}
        </div>
        {mayChange ? (
          <div className="foot-actions">
            {kept === null || putting ? null : (
              <Button
                held={changed ? t('jobBook.putOnHeld') : keeps > 0 ? t('jobBook.toMend', { n: keeps }) : null}
                onClick={() => setPutting(true)}
              >
                {t('jobBook.putOn')}
              </Button>
            )}
            {changed ? <Button onClick={drop}>{t('jobBook.drop')}</Button> : null}
            {changed || kept === null ? (
              <Button
                kind="go"
                keys="Ctrl Enter"
                held={untitled}
                disabled={save.busy}
                onClick={() => void keep(meanwhile)}
              >
                {meanwhile
                  ? t('jobBook.keepOver')
                  : kept === null
                    ? t('jobBook.keepNew')
                    : t('jobBook.keep', { n: version + 1 })}
              </Button>
            ) : null}
            {changed && mend > 0 ? <span className="in-heed small">{t('jobBook.toMend', { n: mend })}</span> : null}
          </div>
        ) : null}
      </section>
    </JobHere>
  );
}

/** One mend for all torques without a source, one for each other warning. */
function mends(warnings: OutputOf<'jobBook.get'>['warnings']): number {
  const sourceless = warnings.filter((warning) => warning.rule === 'torque-without-source').length;
  return warnings.length - sourceless + (sourceless > 0 ? 1 : 0);
}
