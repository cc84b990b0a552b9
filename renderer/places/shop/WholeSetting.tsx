import type { ReactNode } from 'react';
import { t } from '../../words/t.ts';
import { readWhole } from './read-whole.ts';
import { Setting, type SettingChange, type Settings } from './setting.tsx';

interface Props {
  readonly label: string;
  readonly least: number;
  readonly most: number;
  readonly show: (settings: Settings) => number | undefined;
  /** What the figure changes; null where it does not go with the others. */
  readonly change: (figure: number, settings: Settings) => SettingChange | null;
  readonly note: ReactNode;
}

/** A setting that is a whole figure within both edges. */
export function WholeSetting({ label, least, most, show, change, note }: Props) {
  return (
    <Setting
      label={label}
      show={(settings) => String(show(settings) ?? '')}
      read={(text, settings) => {
        const figure = readWhole(text, least, most);
        return figure === null ? null : change(figure, settings);
      }}
      wrong={t('shop.wholeWrong', { least, most })}
      note={note}
    />
  );
}
