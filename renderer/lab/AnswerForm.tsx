import { useState } from 'react';
import { civilDateOf } from '../../core/time/instant.ts';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { NotSaved } from '../parts/Notice.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';
import { type AnswerDraft, draftOf, readAnswer, type Sample, USUAL } from './lab-series.ts';
import { metalName } from './metal-name.ts';

/** The lab's answer as it stands on its paper: its words first, then the figures. */
export function AnswerForm({ row, close }: { readonly row: Sample; readonly close: () => void }) {
  const writing = useWriting();
  const keep = useDo('sample.result');
  const [on, setOn] = useState(() => row.resultOn ?? civilDateOf(Date.now(), writing.zone));
  const [remark, setRemark] = useState(row.remark);
  const [draft, setDraft] = useState<AnswerDraft>(() => draftOf(row.result, writing.decimal));
  const [tried, setTried] = useState(false);
  const { result, wrong } = readAnswer(draft, writing);
  const go = async () => {
    setTried(true);
    if (result === null || on === '') return;
    if ((await keep.run({ id: row.id, revision: row.revision, on, remark: remark.trim(), result })).ok) close();
  };
  const error = (name: string, text = '') =>
    tried && wrong.has(name) ? unreadWords(text, writing, t('lab.figureWrong')) : null;
  const set = (change: Partial<AnswerDraft>) => setDraft({ ...draft, ...change });
  return (
    <form
      className="lab-answer"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field label={t('lab.on')} type="date" past value={on} onChange={setOn} />
      <Field label={t('lab.remarkField')} value={remark} onChange={setRemark} lines={2} maxLength={2000} />
      <div className="lab-figures">
        {USUAL.map((element) => (
          <div key={element}>
            <Field
              label={t('lab.ppmOf', { metal: metalName(element) })}
              value={draft.ppm[element] ?? ''}
              onChange={(text) => set({ ppm: { ...draft.ppm, [element]: text } })}
              inputMode="decimal"
              figure
              error={error(`ppm-${element}`, draft.ppm[element])}
            />
            <Field
              label={t('lab.limitOf')}
              value={draft.limit[element] ?? ''}
              onChange={(text) => set({ limit: { ...draft.limit, [element]: text } })}
              inputMode="decimal"
              figure
              error={error(`limit-${element}`, draft.limit[element])}
            />
          </div>
        ))}
      </div>
      <div className="side-by-side">
        <Field
          label={t('lab.others')}
          value={draft.others}
          onChange={(others) => set({ others })}
          error={tried && wrong.has('others') ? t('lab.othersWrong') : null}
        />
        <Field
          label={t('lab.viscosity')}
          value={draft.viscosity}
          onChange={(viscosity) => set({ viscosity })}
          inputMode="decimal"
          figure
          error={error('viscosity', draft.viscosity)}
        />
        <Field
          label={t('lab.water')}
          value={draft.water}
          onChange={(water) => set({ water })}
          inputMode="decimal"
          figure
          error={error('water', draft.water)}
        />
      </div>
      <div className="car-acts">
        <Button type="submit" disabled={keep.busy}>
          {t('lab.keep')}
        </Button>
        <Button onClick={close}>{t('lab.leave')}</Button>
      </div>
      <NotSaved error={keep.error} />
    </form>
  );
}
