import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { Cell, type CellSaved } from '../../parts/Cell.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { cellSaver } from './cell-saver.ts';

export type ShopRow = OutputOf<'shop.get'>;
export type Settings = NonNullable<ShopRow['settings']>;
export type SettingChange = InputOf<'shop.change'>['settings'];

/** The shop that the page was drawn from, and whether whoever works here may change it. */
export interface ShopPage {
  readonly shop: ShopRow;
  readonly settings: Settings;
  readonly mayChange: boolean;
}
const Here = createContext<ShopPage | null>(null);
export const ShopHere = Here.Provider;

/** The shop of this page. Throws outside of {@link ShopHere}. */
export function useShopPage(): ShopPage {
  const page = useContext(Here);
  if (page === null) throw new Error('a setting outside of a page of Shop');
  return page;
}

export const readShop = () => ask('shop.get', {});

/** Saves one setting on the revision it was read at, whatever else of the settings was changed meanwhile. */
export function saveSetting(
  page: ShopPage,
  how: {
    readonly show: (settings: Settings) => string;
    readonly read: (text: string, settings: Settings) => SettingChange | null;
    readonly wrong?: string;
  },
) {
  const settingsOf = (row: ShopRow) => row.settings ?? page.settings;
  return cellSaver<ShopRow, SettingChange>({
    row: page.shop,
    show: (row) => how.show(settingsOf(row)),
    read: (text, row) => how.read(text, settingsOf(row)),
    wrong: how.wrong ?? t('shop.wrong'),
    send: (row, settings) => act('shop.change', { revision: row.revision, settings }),
    fresh: readShop,
    say: (error) => (error.code === 'bad-input' ? (how.wrong ?? t('shop.wrong')) : null),
  });
}

interface SettingProps {
  readonly label: string;
  readonly show: (settings: Settings) => string;
  readonly read: (text: string, settings: Settings) => SettingChange | null;
  /** What would fit, as a sentence. */
  readonly wrong?: string;
  readonly note?: ReactNode;
  readonly figure?: boolean;
  readonly placeholder?: string;
}

/** One setting as a cell that saves on leaving it. */
export function Setting({ label, show, read, wrong, note, figure = false, placeholder }: SettingProps) {
  const page = useShopPage();
  return (
    <SettingRow label={label} note={note}>
      <Cell
        label={label}
        value={show(page.settings)}
        readOnly={!page.mayChange}
        figure={figure}
        {...(placeholder === undefined ? {} : { placeholder })}
        save={saveSetting(page, { show, read, ...(wrong === undefined ? {} : { wrong }) })}
      />
    </SettingRow>
  );
}

/** A label, what it is set to, and what there is to know about it. */
export function SettingRow({
  label,
  note,
  children,
}: {
  readonly label: string;
  readonly note?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <div className="setting">
      <span className="setting-name" aria-hidden="true">
        {label}
      </span>
      <div>
        {children}
        {note === undefined ? null : <p className="small ink-2">{note}</p>}
      </div>
    </div>
  );
}

interface ChoiceProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly options: readonly { readonly value: V; readonly words: string }[];
  readonly change: (value: V, settings: Settings) => SettingChange;
  readonly note?: ReactNode;
}

/** One setting of a few, all in sight; saved at once. */
export function SettingChoice<V extends string>({ label, value, options, change, note }: ChoiceProps<V>) {
  const page = useShopPage();
  const [wrong, say] = useSaved();
  const save = async (next: V) => {
    const saving = saveSetting(page, { show: () => '', read: (_text, settings) => change(next, settings) });
    say(await saving('', true));
  };
  return (
    <SettingRow label={label} note={note}>
      <Choice
        label={label}
        quiet
        value={value}
        options={options.map((option) => ({ ...option, held: !page.mayChange && option.value !== value }))}
        onChange={(next) => void save(next)}
      />
      {wrong}
    </SettingRow>
  );
}

/** The day that something was checked on, as a setting; none is allowed. */
export function SettingDay({ label, show, read, note }: Omit<SettingProps, 'wrong' | 'figure' | 'placeholder'>) {
  const page = useShopPage();
  const value = show(page.settings);
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const [wrong, say] = useSaved();
  const leave = async () => {
    if (text !== value) say(await saveSetting(page, { show, read, wrong: t('shop.dayWrong') })(text, false));
  };
  return (
    <div className="setting setting-day">
      <Field
        label={label}
        type="date"
        past
        value={text}
        readOnly={!page.mayChange}
        onChange={setText}
        onLeave={() => void leave()}
        note={note}
      />
      {wrong}
    </div>
  );
}

/** What became of something that is saved at once: its sentence where it was not. */
export function useSaved(): [ReactNode, (saved: CellSaved) => void] {
  const writing = useWriting();
  const [saved, setSaved] = useState<CellSaved>({ ok: true });
  if (saved.ok) return [null, setSaved];
  const words =
    saved.words ?? (saved.error === undefined ? t('errors.changed-meanwhile') : errorSentence(saved.error, writing));
  return [
    <p key="wrong" className="wrong-words" role="alert">
      {words}
    </p>,
    setSaved,
  ];
}
