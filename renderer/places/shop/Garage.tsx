import { t } from '../../words/t.ts';
import { Mark } from './Mark.tsx';
import { PrintedNotices } from './PrintedNotices.tsx';
import { Setting } from './setting.tsx';

const HEAD = ['name', 'phone', 'email', 'registration', 'taxNumber'] as const;
const ADDRESS = [0, 1, 2, 3] as const;

/** The garage as it stands at the head of every paper, and what is printed under it. */
export function Garage() {
  return (
    <>
      <section>
        <h3>{t('shop.head')}</h3>
        {HEAD.map((field) => (
          <Setting
            key={field}
            label={t(`shop.${field}`)}
            show={(settings) => settings[field]}
            read={(text) => (field === 'name' && text.trim() === '' ? null : { [field]: text })}
            wrong={field === 'name' ? t('start.nameNeeded') : t('shop.wordsWrong')}
          />
        ))}
        {ADDRESS.map((at) => (
          <Setting
            key={at}
            label={t('shop.addressLine', { n: at + 1 })}
            show={({ address }) => address[at] ?? ''}
            read={(text, { address }) => ({ address: withLine(address, at, text) })}
            wrong={t('shop.wordsWrong')}
          />
        ))}
        <Mark />
      </section>
      <Notices />
      <PrintedNotices />
    </>
  );
}

/** The lines of a list with one of them put in its place; empty lines at the end go. */
function withLine(lines: readonly string[], at: number, text: string): string[] {
  const next = Array.from({ length: Math.max(lines.length, at + 1) }, (_, i) => (i === at ? text : (lines[i] ?? '')));
  while (next.at(-1)?.trim() === '') next.pop();
  return next;
}

const NOTICES = [0, 1, 2, 3, 4, 5, 6, 7] as const;

/** What is printed under quotes and invoices. */
function Notices() {
  return (
    <section>
      <h3>{t('shop.printed')}</h3>
      <p className="small ink-2">{t('shop.printedWords')}</p>
      <Setting
        label={t('shop.warranty')}
        show={(settings) => settings.warranty}
        read={(warranty) => ({ warranty })}
        wrong={t('shop.noticeWrong')}
        note={t('own.warrantyNote')}
      />
      <Setting
        label={t('own.exclusions')}
        show={(settings) => settings.warrantyExclusions}
        read={(warrantyExclusions) => ({ warrantyExclusions })}
        wrong={t('shop.noticeWrong')}
        note={t('own.exclusionsNote')}
      />
      {NOTICES.map((at) => (
        <Setting
          key={at}
          label={t('shop.notice', { n: at + 1 })}
          show={({ notices }) => notices[at] ?? ''}
          read={(text, { notices }) => ({ notices: withLine(notices, at, text) })}
          wrong={t('shop.noticeWrong')}
          {...(at === 0 ? { note: t('own.noticeNote') } : {})}
        />
      ))}
    </section>
  );
}
