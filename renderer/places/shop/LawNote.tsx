import { t } from '../../words/t.ts';
import { Setting, SettingDay, type Settings } from './setting.tsx';

interface Note {
  readonly source: string;
  readonly checkedOn: string | null;
}

interface Props {
  readonly of: (settings: Settings) => Note | null;
  readonly change: (settings: Settings, part: Partial<Note>) => Partial<Settings>;
}

/** Where a setting that touches law was read, and when somebody looked last. */
export function LawNote({ of, change }: Props) {
  return (
    <>
      <Setting
        label={t('terms.source')}
        show={(now) => of(now)?.source ?? ''}
        read={(source, now) => change(now, { source })}
        wrong={t('shop.wordsWrong')}
        note={t('own.sourceNote')}
      />
      <SettingDay
        label={t('terms.checkedOn')}
        show={(now) => of(now)?.checkedOn ?? ''}
        read={(text, now) => change(now, { checkedOn: text === '' ? null : text })}
        note={t('own.checkedOnNote')}
      />
    </>
  );
}
