import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { CheckListForm } from './CheckListForm.tsx';
import { type CheckList, draftOf, EMPTY_LIST } from './check-list-draft.ts';

/** The shop's own lists of what is looked at, round the car and before it leaves. */
export function CheckLists() {
  const rows = useAsk('checkList.list', {}).data?.rows.filter((list) => !list.takenOut) ?? [];
  const add = useDo('checkList.add');
  const [open, setOpen] = useState(false);
  return (
    <>
      <section>
        <p className="small ink-2">{t('tools.listsWords')}</p>
      </section>
      {rows.map((list) => (
        <ListPart key={list.id} list={list} />
      ))}
      <section>
        {open ? (
          <CheckListForm
            begin={EMPTY_LIST}
            busy={add.busy}
            onLeave={() => setOpen(false)}
            onKeep={async (fields) => {
              if ((await add.run(fields)).ok) setOpen(false);
            }}
          />
        ) : (
          <Button onClick={() => setOpen(true)}>{t('tools.listAdd')}</Button>
        )}
        <NotSaved error={add.error} />
      </section>
    </>
  );
}

function ListPart({ list }: { readonly list: CheckList }) {
  const writing = useWriting();
  const change = useDo('checkList.change');
  const [open, setOpen] = useState(false);
  const { id, revision, title } = list;
  const takeOut = async () => {
    if ((await change.run({ id, revision, change: { takenOut: true } })).ok) setOpen(false);
  };
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      {open ? (
        <CheckListForm
          begin={draftOf(list, writing.decimal)}
          busy={change.busy}
          onLeave={() => setOpen(false)}
          onKeep={async (fields) => {
            if ((await change.run({ id, revision, change: fields })).ok) setOpen(false);
          }}
          onTakeOut={() => void takeOut()}
        />
      ) : (
        <>
          <p>
            {t(`tools.kind-${list.kind}`)}, {t('leave.items', { n: list.items.length })}
          </p>
          <p className="small ink-2">{list.items.map((item) => item.words).join(', ')}</p>
          <Button small label={t('tools.changeOf', { title })} onClick={() => setOpen(true)}>
            {t('tools.change')}
          </Button>
        </>
      )}
      <NotSaved error={change.error} />
    </section>
  );
}
