import { type ReactNode, useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity, type Marks, parseQuantity } from '../../../core/measure/quantity.ts';
import { convert } from '../../../core/measure/unit.ts';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { DateCell } from '../../parts/DateCell.tsx';
import { Field } from '../../parts/Field.tsx';
import { act, ask } from '../../state/call.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { problemAt } from '../stock/problem-at.ts';
import { cellSaver } from './cell-saver.ts';
import { saidOfList } from './list-error.ts';
import { useShopPage } from './setting.tsx';

type Wrench = OutputOf<'wrench.list'>['rows'][number];
type Change = Partial<Pick<Wrench, 'name' | 'least' | 'most' | 'lever' | 'dueOn'>>;
type Unit = 'N·m' | 'lbf·ft';

/** Thousandths of a newton metre in the shop's unit, to a tenth. */
const spanText = (thousandths: number, unit: Unit, { decimal }: Marks): string =>
  formatQuantity(Math.round(convert('torque', thousandths / 1000, 'N·m', unit) * 10) * 100, decimal);

const number = (text: string, marks: Marks): number | null => {
  const thousandths = parseQuantity(text, marks);
  return thousandths === null || thousandths < 0 ? null : thousandths / 1000;
};
/** What is typed in the shop's unit as thousandths of a newton metre; null where it does not fit. */
function readSpan(text: string, unit: Unit, marks: Marks): number | null {
  const figure = number(text, marks);
  return figure === null ? null : Math.round(convert('torque', figure, unit, 'N·m') * 1000);
}
/** Millimetres as thousandths; 0 means that nobody measured it. */
function readLever(text: string, marks: Marks): { lever: number | null } | null {
  if (text.trim() === '') return { lever: null };
  const figure = number(text, marks);
  return figure === null || figure === 0 ? null : { lever: Math.round(figure * 1000) };
}
const leverText = ({ lever }: Pick<Wrench, 'lever'>, { decimal }: Marks): string =>
  lever === null ? '' : formatQuantity(lever, decimal);

/** The torque wrenches of the shop, each with its span, its lever and when its calibration is due. */
export function Wrenches() {
  const rows = useAsk('wrench.list', {}).data?.rows ?? [];
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  return (
    <>
      <p className="small ink-2">{t('shop.wrenchesWords')}</p>
      {rows.map((wrench) => (
        <WrenchPart key={wrench.id} wrench={wrench} mayChange={desk} />
      ))}
      {desk ? <NewWrench /> : null}
    </>
  );
}

async function readWrench(id: string) {
  const answer = await ask('wrench.list', {});
  if (!answer.ok) return answer;
  const output = answer.output.rows.find((row) => row.id === id);
  return output === undefined
    ? ({ ok: false, error: { code: 'not-found', what: 'wrench', id } } as const)
    : ({ ok: true, output } as const);
}

function WrenchPart({ wrench, mayChange }: { readonly wrench: Wrench; readonly mayChange: boolean }) {
  const { torque: unit } = useShopPage().settings;
  const writing = useWriting();
  const change = useDo('wrench.change');
  const cell = (
    label: string,
    show: (row: Wrench) => string,
    read: (text: string) => Change | null,
    Kind: typeof Cell | typeof DateCell = Cell,
  ): ReactNode => (
    <div className="field">
      <span className="small ink-2">{label}</span>
      <Kind
        label={`${label}, ${wrench.name}`}
        value={show(wrench)}
        readOnly={!mayChange}
        save={cellSaver<Wrench, Change>({
          row: wrench,
          show,
          read,
          wrong:
            Kind === DateCell ? t('shop.wrenchWrong') : (text) => unreadWords(text, writing, t('shop.wrenchWrong')),
          send: (row, now) => act('wrench.change', { id: row.id, revision: row.revision, change: now }),
          fresh: () => readWrench(wrench.id),
          say: saidOfList,
        })}
      />
    </div>
  );
  const span = (name: 'least' | 'most') =>
    cell(
      t(`shop.wrench-${name}`, { unit }),
      (row) => spanText(row[name], unit, writing),
      (text) => {
        const figure = readSpan(text, unit, writing);
        return figure === null ? null : { [name]: figure };
      },
    );
  return (
    <section aria-label={wrench.name}>
      <h3>
        {wrench.name} {wrench.overdue ? <span className="in-heed">{t('shop.wrenchOverdue')}</span> : null}
      </h3>
      <div className="shop-person">
        {cell(
          t('shop.wrenchName'),
          (row) => row.name,
          (name) => (name.trim() === '' ? null : { name }),
        )}
        {span('least')}
        {span('most')}
        {cell(
          t('shop.wrenchLever'),
          (row) => leverText(row, writing),
          (text) => readLever(text, writing),
        )}
        {cell(
          t('shop.wrenchDue'),
          (row) => row.dueOn ?? '',
          (text) => ({ dueOn: text === '' ? null : text }),
          DateCell,
        )}
        {mayChange ? (
          <Button
            small
            label={t('shop.wrenchOutOf', { name: wrench.name })}
            disabled={change.busy}
            onClick={() => void change.run({ id: wrench.id, revision: wrench.revision, change: { takenOut: true } })}
          >
            {t('shop.wrenchOut')}
          </Button>
        ) : null}
      </div>
    </section>
  );
}

const EMPTY = { name: '', least: '', most: '', lever: '', dueOn: '' };

function NewWrench() {
  const { torque: unit } = useShopPage().settings;
  const writing = useWriting();
  const add = useDo('wrench.add');
  const [draft, setDraft] = useState(EMPTY);
  const [asked, setAsked] = useState(false);
  const change = (now: Partial<typeof EMPTY>) => setDraft((was) => ({ ...was, ...now }));
  const least = draft.least.trim() === '' ? 0 : readSpan(draft.least, unit, writing);
  const most = readSpan(draft.most, unit, writing);
  const lever = readLever(draft.lever, writing);
  const go = async () => {
    setAsked(true);
    if (draft.name.trim() === '' || least === null || most === null || lever === null) return;
    const dueOn = draft.dueOn === '' ? null : draft.dueOn;
    const answer = await add.run({ name: draft.name, least, most, ...lever, dueOn });
    if (!answer.ok) return;
    setDraft(EMPTY);
    setAsked(false);
  };
  const wrong = (name: keyof typeof EMPTY, fits: boolean) =>
    asked && !fits ? unreadWords(draft[name], writing, t('shop.wrenchWrong')) : problemAt(add.error, name, 'shop');
  const field = (name: keyof typeof EMPTY, label: string, fits = true, date = false) => (
    <Field
      label={label}
      value={draft[name]}
      onChange={(text) => change({ [name]: text })}
      error={wrong(name, fits)}
      {...(date ? { type: 'date' as const } : {})}
      {...(name === 'name' || date ? {} : { inputMode: 'decimal' as const })}
    />
  );
  return (
    <section>
      <h3>{t('shop.wrenchAdd')}</h3>
      <form
        className="shop-person"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        {field('name', t('shop.wrenchName'), draft.name.trim() !== '')}
        {field('least', t('shop.wrench-least', { unit }), least !== null)}
        {field('most', t('shop.wrench-most', { unit }), most !== null)}
        {field('lever', t('shop.wrenchLever'), lever !== null)}
        {field('dueOn', t('shop.wrenchDue'), true, true)}
        <Button type="submit" disabled={add.busy}>
          {t('shop.wrenchAdd')}
        </Button>
      </form>
      {add.error === null || add.error.code === 'bad-input' ? null : (
        <p className="wrong-words" role="alert">
          {errorSentence(add.error, writing)}
        </p>
      )}
    </section>
  );
}
