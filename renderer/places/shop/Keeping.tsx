import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { readWhole } from './read-whole.ts';
import { Setting } from './setting.tsx';

const MOST_YEARS = 50;
const MOST_DAYS = 365;

/** How long papers are kept before what is in them may go, and within how many days somebody who asks has an answer. */
export function Keeping() {
  return (
    <section>
      <h3>{t('privacy.keeping')}</h3>
      <Setting
        label={t('privacy.years')}
        show={({ retentionYears }) => String(retentionYears.years)}
        read={(text, now) => {
          const years = readWhole(text, 0, MOST_YEARS);
          return years === null ? null : { retentionYears: { ...now.retentionYears, years } };
        }}
        wrong={t('shop.wholeWrong', { least: 0, most: MOST_YEARS })}
        note={t('privacy.yearsWords')}
      />
      <LawNote
        of={(now) => now.retentionYears}
        change={(now, part) => ({ retentionYears: { ...now.retentionYears, ...part } })}
      />
      <Setting
        label={t('privacy.days')}
        show={({ privacyDays }) => String(privacyDays)}
        read={(text) => {
          const privacyDays = readWhole(text, 1, MOST_DAYS);
          return privacyDays === null ? null : { privacyDays };
        }}
        wrong={t('shop.wholeWrong', { least: 1, most: MOST_DAYS })}
        note={t('privacy.daysWords')}
      />
    </section>
  );
}
