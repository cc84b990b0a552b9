import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { act, ask } from '../../state/call.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { cellSaver } from './cell-saver.ts';
import { type CheckList, changedItem, FIELDS, type ItemField, itemText, wrongOf } from './check-items.ts';
import { saidOfList } from './list-error.ts';
import './check-lists.css';

/** The shop's own lists of what to look at, written where they are read. */
export function CheckLists() {
  const { data } = useAsk('checkList.list', {});
  const mayChange = useSession((session) => session.person?.role !== 'mechanic');
  return (
    <>
      <p className="ink-2">{t('checkLists.words')}</p>
      {(data?.rows ?? []).map((list) => (
        <List key={list.id} list={list} mayChange={mayChange} />
      ))}
      {mayChange ? <NewList /> : null}
    </>
  );
}

async function readList(id: string) {
  const answer = await ask('checkList.list', {});
  if (!answer.ok) return answer;
  const output = answer.output.rows.find((row) => row.id === id);
  return output === undefined
    ? ({ ok: false, error: { code: 'not-found', what: 'check_list', id } } as const)
    : ({ ok: true, output } as const);
}

type Change = Partial<Pick<CheckList, 'title' | 'items'>>;

/** Saves one cell of a list on the revision it was read at. */
const saver = (
  list: CheckList,
  show: (row: CheckList) => string,
  read: (text: string, row: CheckList) => Change | null,
  wrong: string,
) =>
  cellSaver<CheckList, Change>({
    ...{ row: list, show, read, wrong, say: saidOfList },
    send: (row, change) => act('checkList.change', { id: row.id, revision: row.revision, change }),
    fresh: () => readList(list.id),
  });

interface Props {
  readonly list: CheckList;
  readonly mayChange: boolean;
}

function List({ list, mayChange }: Props) {
  const change = useDo('checkList.change');
  const { id, revision, title, items, takenOut } = list;
  const turn = t(takenOut ? 'checkLists.use' : 'checkLists.leaveOff');
  const about = [t(`checkLists.kind-${list.kind}`), takenOut ? t('checkLists.notUsed') : ''];
  const takeOut = (at: number) =>
    void change.run({ id, revision, change: { items: items.filter((_, n) => n !== at) } });
  return (
    <section aria-label={title}>
      <h3>
        {title} <span className="small ink-2">{about.filter((part) => part !== '').join(', ')}</span>
      </h3>
      <div className="shop-table check-title">
        <Cell
          label={t('checkLists.titleOf', { list: title })}
          value={title}
          readOnly={!mayChange}
          save={saver(
            list,
            (row) => row.title,
            (text) => (text.trim() === '' ? null : { title: text.trim() }),
            t('checkLists.titleWrong'),
          )}
        />
        {mayChange ? (
          <Button
            small
            label={t('checkLists.turnOf', { act: turn, list: title })}
            disabled={change.busy}
            onClick={() => void change.run({ id, revision, change: { takenOut: !takenOut } })}
          >
            {turn}
          </Button>
        ) : null}
      </div>
      <div className="check-heads small ink-2" aria-hidden="true">
        {FIELDS.map((field) => (
          <span key={field}>{t(`checkLists.${field}`)}</span>
        ))}
      </div>
      <div className="shop-table check-table" role="list">
        {items
          .map((item, at) => ({ item, at, key: String(at) }))
          .map(({ item, at, key }) => (
            <div key={key} role="listitem" className="check-items">
              {FIELDS.map((field) => (
                <ItemCell key={field} list={list} mayChange={mayChange} at={at} field={field} />
              ))}
              {mayChange && items.length > 1 ? (
                <Button
                  small
                  label={t('checkLists.takeOutOf', { n: at + 1, item: item.words })}
                  disabled={change.busy}
                  onClick={() => takeOut(at)}
                >
                  {t('checkLists.takeOut')}
                </Button>
              ) : null}
            </div>
          ))}
        {mayChange && items.length < 60 ? (
          <div role="listitem">
            <Cell
              className="shop-open"
              label={t('checkLists.anotherOf', { list: title })}
              placeholder={t('checkLists.another')}
              value=""
              save={saver(
                list,
                () => '',
                (text, row) =>
                  text.trim() === ''
                    ? null
                    : { items: [...row.items, { words: text.trim(), place: '', measure: null }] },
                t('checkLists.itemWrong'),
              )}
            />
          </div>
        ) : null}
      </div>
      <NotSaved error={change.error} />
    </section>
  );
}

function ItemCell({ list, mayChange, at, field }: Props & { readonly at: number; readonly field: ItemField }) {
  const { decimal } = useWriting();
  const show = (row: CheckList) => {
    const item = row.items[at];
    return item === undefined ? '' : itemText(item, field, decimal);
  };
  const read = (text: string, row: CheckList): Change | null => {
    const item = row.items[at];
    const now = item && changedItem(item, field, text);
    return now ? { items: row.items.map((one, n) => (n === at ? now : one)) } : null;
  };
  const item = list.items[at];
  return (
    <Cell
      label={t('checkLists.cell', { field: t(`checkLists.${field}`), n: at + 1, list: list.title })}
      value={show(list)}
      readOnly={!mayChange}
      figure={field === 'least' || field === 'most'}
      save={saver(list, show, read, item === undefined ? '' : t(`checkLists.${wrongOf(item, field)}`))}
    />
  );
}

/** A new list: its title, what it is for, and its first item. */
function NewList() {
  const add = useDo('checkList.add');
  const [title, setTitle] = useState('');
  const [first, setFirst] = useState('');
  const [kind, setKind] = useState<CheckList['kind']>('walk-round');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (title.trim() === '' || first.trim() === '') return;
    const answer = await add.run({ title: title.trim(), kind, items: [{ words: first.trim() }] });
    if (!answer.ok) return;
    setTitle('');
    setFirst('');
    setTried(false);
  };
  return (
    <section>
      <h3>{t('checkLists.add')}</h3>
      <form
        className="check-new"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Field
          label={t('checkLists.title')}
          value={title}
          onChange={setTitle}
          maxLength={120}
          error={tried && title.trim() === '' ? t('checkLists.titleWrong') : null}
        />
        <Field
          label={t('checkLists.first')}
          value={first}
          onChange={setFirst}
          maxLength={120}
          error={tried && first.trim() === '' ? t('checkLists.itemWrong') : null}
        />
        <Choice
          label={t('checkLists.kind')}
          value={kind}
          options={(['walk-round', 'final'] as const).map((value) => ({ value, words: t(`checkLists.kind-${value}`) }))}
          onChange={setKind}
        />
        <div>
          <Button type="submit" disabled={add.busy}>
            {t('checkLists.add')}
          </Button>
        </div>
      </form>
      <NotSaved error={add.error} />
    </section>
  );
}
