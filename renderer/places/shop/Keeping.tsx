import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { WholeSetting } from './WholeSetting.tsx';

const MOST_YEARS = 50;
const MOST_DAYS = 365;

/** How long papers are kept before what is in them may go, and within how many days somebody who asks has an answer. */
export function Keeping() {
  return (
    <section>
      <h3>{t('privacy.keeping')}</h3>
      <WholeSetting
        label={t('privacy.years')}
        least={0}
        most={MOST_YEARS}
        show={({ retentionYears }) => retentionYears.years}
        change={(years, now) => ({ retentionYears: { ...now.retentionYears, years } })}
        note={t('privacy.yearsWords')}
      />
      <LawNote
        of={(now) => now.retentionYears}
        change={(now, part) => ({ retentionYears: { ...now.retentionYears, ...part } })}
      />
      <WholeSetting
        label={t('privacy.days')}
        least={1}
        most={MOST_DAYS}
        show={({ privacyDays }) => privacyDays}
        change={(privacyDays) => ({ privacyDays })}
        note={t('privacy.daysWords')}
      />
    </section>
  );
}
