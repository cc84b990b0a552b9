import { Choices } from '../../parts/Choice.tsx';
import { act } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { rateText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { weekdayName } from '../../words/times.ts';
import { readPercent } from '../set-up/percent.ts';
import { cellSaver } from './cell-saver.ts';
import { readShop, Setting, SettingRow, type Settings, type ShopRow, useSaved, useShopPage } from './setting.tsx';

const DAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** On which days the garage works, and how much of the hours it promises. */
export function Hours() {
  const page = useShopPage();
  const writing = useWriting();
  const [wrong, say] = useSaved();
  const { workingWeekdays } = page.settings;
  const save = async (days: readonly string[]) => {
    const saving = cellSaver<ShopRow, Pick<Settings, 'workingWeekdays'>>({
      row: page.shop,
      show: () => '',
      read: () => ({ workingWeekdays: days.map(Number).toSorted((a, b) => a - b) }),
      wrong: '',
      send: (row, settings) => act('shop.change', { revision: row.revision, settings }),
      fresh: readShop,
    });
    say(await saving('', true));
  };
  return (
    <>
      <SettingRow label={t('terms.workingDays')} note={t('terms.workingDaysWords')}>
        <Choices
          label={t('terms.workingDays')}
          quiet
          values={workingWeekdays.map(String)}
          options={DAYS.map((day) => ({
            value: `${day}`,
            words: weekdayName(day, writing),
            held: !page.mayChange,
          }))}
          onChange={(days) => void save(days)}
        />
        {wrong}
      </SettingRow>
      <Setting
        label={t('terms.plannedShare')}
        show={({ plannedShareBp }) => rateText(plannedShareBp * 100, writing)}
        read={(text) => {
          const plannedShareBp = readPercent(text, 2);
          return plannedShareBp === null ? null : { plannedShareBp };
        }}
        wrong={t('terms.shareWrong')}
        note={t('terms.plannedShareWords')}
      />
    </>
  );
}
