import { t } from '../../words/t.ts';
import { Setting, SettingDay, type Settings } from './setting.tsx';

interface Note {
  readonly source: string;
  readonly checkedOn: string | null;
}

/** Under a setting that touches law: where the owner's value is from, and the day it was last checked. */
export function LawNote({
  of,
  change,
}: {
  readonly of: (settings: Settings) => Note;
  readonly change: (settings: Settings, note: Partial<Note>) => Partial<Settings>;
}) {
  return (
    <>
      <Setting
        label={t('terms.source')}
        show={(now) => of(now).source}
        read={(source, now) => change(now, { source })}
        wrong={t('shop.wordsWrong')}
      />
      <SettingDay
        label={t('terms.checkedOn')}
        show={(now) => of(now).checkedOn ?? ''}
        read={(text, now) => change(now, { checkedOn: text === '' ? null : text })}
        note={t('terms.checkRule')}
      />
    </>
  );
}
