import { useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { goTo, hrefOf } from '../../frame/router.ts';
import { useSession } from '../../state/session.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { AfterJob } from './AfterJob.tsx';
import type { BookJob } from './draft.ts';
import { GoesWith } from './GoesWith.tsx';
import { JobFoot } from './JobFoot.tsx';
import { LastTimes } from './LastTimes.tsx';
import { Lines } from './Lines.tsx';
import { Steps } from './Steps.tsx';
import { useJobDraft } from './use-job-draft.ts';
import { Versions } from './Versions.tsx';
import { WhatIsWrong } from './WhatIsWrong.tsx';
import { JobCell, JobHere } from './writing-job.tsx';

interface Props {
  /** The job as it is in the book, its newest version; null for a new one. */
  readonly kept: BookJob | null;
}

/** One job of the book: hours, parts and last times at the left, the procedure at the right, both written in place. */
export function BookJobPage({ kept }: Props) {
  const job = useJobDraft(kept);
  const { content, warnings, version, inUse, changed, gone } = job;
  const mayChange = useSession((session) => session.person?.role !== 'mechanic');
  const count = useAsk('jobBook.list', {}).data?.rows.length;
  const [open, setOpen] = useState<number | null>(null);
  const [said, setSaid] = useState('');

  const keep = async (as: 'draft' | 'use') => {
    const answer = await job.keep(as, job.meanwhile);
    if (answer === null) return;
    setSaid(t(as === 'draft' ? 'jobBook.keptDraft' : 'jobBook.inUseNow', { n: answer.version }));
    if (kept === null) goTo('job-book', answer.id);
  };
  const drop = () => {
    job.drop();
    setOpen(null);
    setSaid(t('jobBook.dropped'));
    if (kept === null) goTo('job-book');
  };
  const undo = () => gone !== null && job.change(() => gone.content);
  useKey('Ctrl+Z', undo, gone !== null);
  useKey('Ctrl+Enter', () => void keep('use'), mayChange);
  const onSource = () => {
    const field = document.querySelector('.book-source-cell input');
    if (field instanceof HTMLElement) field.focus();
  };
  const change: typeof job.change = (now) => {
    setSaid('');
    job.change(now);
  };

  return (
    <JobHere value={{ content, change: mayChange ? change : null, takeOut: mayChange ? job.takeOut : null }}>
      <div className="page book-page">
        <div className="book-left">
          <h1 className="aloud">{content.title === '' ? t('jobBook.newJob') : content.title}</h1>
          <JobCell
            className={content.title.length > 36 ? 'book-title long' : 'book-title'}
            autoFocus={kept === null && content.title === ''}
            wraps
            label={t('jobBook.titleCell')}
            placeholder={t('jobBook.titleHint')}
            value={content.title}
            read={(text, now) => (text.trim() === '' || text.length > 200 ? null : { ...now, title: text.trim() })}
            wrong={t('jobBook.titleNeeded')}
          />
          <div className="book-sub">
            <JobCell
              label={t('jobBook.car')}
              wraps
              placeholder={t('jobBook.carHint')}
              value={content.car}
              read={(text, now) => (text.length > 200 ? null : { ...now, car: text })}
              wrong={t('shop.wordsWrong')}
            />
            <span className="ink-2">
              {standing(version, inUse)}
              {changed && kept !== null ? `, ${t('jobBook.changed')}` : null}
            </span>
            <a href={hrefOf('job-book')}>{t('jobBook.allJobs', { n: count ?? 0 })}</a>
          </div>
          <WhatIsWrong
            warnings={warnings}
            next={changed || kept === null ? version + 1 : version}
            onStep={setOpen}
            onSource={onSource}
          />
          <Lines />
          {kept === null ? null : <LastTimes last={kept.lastTimes} bookHours={content.bookHours} />}
          <GoesWith id={kept?.id ?? null} />
          <AfterJob />
        </div>
        <div className="book-right">
          <Steps warnings={warnings} open={open} onOpen={setOpen} />
          {kept === null ? null : <Versions id={kept.id} />}
        </div>
      </div>
      <JobFoot
        kept={kept}
        job={job}
        mayChange={mayChange}
        said={said}
        onKeep={(as) => void keep(as)}
        onDrop={drop}
        onUndo={undo}
      />
    </JobHere>
  );
}

/** "Version 5, not in use yet; the bench has version 4". */
function standing(version: number, inUse: number): string {
  if (version === 0) return t('jobBook.versionNew');
  if (version === inUse) return t('jobBook.versionOf', { n: version });
  return inUse === 0
    ? t('jobBook.versionDraft', { n: version })
    : t('jobBook.versionBehind', { n: version, used: inUse });
}
