import { useState } from 'react';
import { checkProcedure } from '../../../core/bench/procedure-check.ts';
import { useDo } from '../../state/use-do.ts';
import { type BookJob, type Content, draftNow, dropDraft, EMPTY_JOB, keepDraft, useDraft } from './draft.ts';

/** The key of what is written of a job that is not in the book yet. */
const NEW = 'new';

/** What was taken out last, and how it was before. */
interface Gone {
  readonly words: string;
  readonly content: Content;
}

/** A job as it is being written in this window, and how it is kept in the shop: as a draft, or put to use. */
export function useJobDraft(kept: BookJob | null) {
  const key = kept?.id ?? NEW;
  const draft = useDraft(key);
  const save = useDo('jobBook.save');
  const [gone, setGone] = useState<Gone | null>(null);
  const version = kept?.version ?? 0;
  const content = draft?.content ?? kept?.content ?? EMPTY_JOB;
  const warnings = checkProcedure(content);

  const change = (now: (content: Content) => Content) => {
    const standing = draftNow(key) ?? { basedOn: version, content };
    keepDraft(key, { ...standing, content: now(standing.content) });
    setGone(null);
  };
  const takeOut = (words: string, now: (content: Content) => Content) => {
    const before = draftNow(key)?.content ?? content;
    change(now);
    setGone({ words, content: before });
  };
  /** `over`: on top of what somebody else kept meanwhile. Null where there is nothing to keep, or it may not be put to use. */
  const keep = async (as: 'draft' | 'use', over: boolean) => {
    // What is still being typed goes into the draft first.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    await new Promise((later) => setTimeout(later, 0));
    // A draft of the shop is put to use as it stands.
    const now = draftNow(key) ?? (as === 'use' && kept !== null ? { basedOn: version, content } : undefined);
    if (now === undefined || now.content.title.trim() === '') return null;
    if (as === 'use' && checkProcedure(now.content).some((warning) => warning.keepsFromBench)) return null;
    const answer = await save.run({
      id: kept?.id ?? null,
      basedOn: over ? version : now.basedOn,
      content: now.content,
      draft: as === 'draft',
    });
    if (!answer.ok) return null;
    dropDraft(key);
    setGone(null);
    return answer.output;
  };
  const drop = () => {
    dropDraft(key);
    save.clear();
    setGone(null);
  };
  return {
    ...{ content, warnings, version, save, gone, change, takeOut, keep, drop },
    inUse: kept?.inUse ?? 0,
    /** Something is written here that the shop does not have. */
    changed: draft !== undefined,
    /** Somebody kept another version since this one was begun. */
    meanwhile: draft !== undefined && draft.basedOn !== version,
  };
}
export type JobDraft = ReturnType<typeof useJobDraft>;
