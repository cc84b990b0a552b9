import { useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { t } from '../../words/t.ts';
import { readLogo } from '../set-up/logo.ts';
import { SettingRow, saveSetting, useSaved, useShopPage } from './setting.tsx';

/** The garage's own mark at the head of papers: a small picture, kept with the settings. */
export function Mark() {
  const page = useShopPage();
  const file = useRef<HTMLInputElement>(null);
  const [wrong, say] = useSaved();
  const { logoPng } = page.settings;
  const save = async (logo: string | null) =>
    say(await saveSetting(page, { show: () => '', read: () => ({ logoPng: logo }) })('', true));
  const take = async (picked: File | undefined) => {
    if (picked === undefined) return;
    const logo = await readLogo(picked);
    if (logo === null) say({ ok: false, words: t('start.markWrong') });
    else await save(logo);
  };
  return (
    <SettingRow label={t('start.yourMark')}>
      {logoPng === null ? null : (
        <img className="shop-mark" src={`data:image/png;base64,${logoPng}`} alt={t('start.yourMark')} />
      )}
      {page.mayChange ? (
        <p className="shop-verify">
          <input
            ref={file}
            type="file"
            hidden
            accept="image/png,image/jpeg"
            aria-label={t('start.markFile')}
            onChange={(event) => {
              void take(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
          <Button small onClick={() => file.current?.click()}>
            {t(logoPng === null ? 'start.mark' : 'start.otherMark')}
          </Button>
          {logoPng === null ? null : (
            <Button small onClick={() => void save(null)}>
              {t('start.noMark')}
            </Button>
          )}
        </p>
      ) : null}
      {wrong}
    </SettingRow>
  );
}
