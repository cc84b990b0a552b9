import type { PrintedNotice } from '../../../core/contract/shop-terms.ts';
import { t } from '../../words/t.ts';
import { Setting } from './setting.tsx';

const KINDS = ['oldParts', 'labourBasis', 'storage', 'testDrive'] as const satisfies readonly PrintedNotice[];

/** Sentences that a local rule wants printed, each on the papers where it belongs. */
export function PrintedNotices() {
  return (
    <section>
      <h3>{t('own.notices')}</h3>
      <p className="small ink-2">{t('own.noticesWords')}</p>
      {KINDS.map((kind) => (
        <Setting
          key={kind}
          label={t(`own.notice-${kind}`)}
          show={({ printed }) => printed[kind]}
          read={(text, { printed }) => ({ printed: { ...printed, [kind]: text } })}
          wrong={t('shop.noticeWrong')}
          note={t(`own.notice-${kind}-note`)}
        />
      ))}
    </section>
  );
}
