import { useEffect, useState } from 'react';
import { MESSAGE_WORDS, type MessageAbout } from '../../../core/paper/message-words.ts';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { saveSetting, useSaved, useShopPage } from './setting.tsx';

const ABOUTS: readonly MessageAbout[] = ['ready', 'found', 'partLate', 'reminder'];
const MOST = 2000;

/** The shop's own texts for customers; an empty one is the program's, shown in its place. */
export function Wording() {
  return (
    <section>
      <h3>{t('terms.wording')}</h3>
      <p className="small ink-2">{t('terms.wordingWords')}</p>
      {ABOUTS.map((about) => (
        <Text key={about} about={about} />
      ))}
    </section>
  );
}

function Text({ about }: { readonly about: MessageAbout }) {
  const page = useShopPage();
  const [wrong, say] = useSaved();
  const own = MESSAGE_WORDS[page.settings.language].text[about];
  const value = page.settings.messages[about];
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const leave = async () => {
    if (text === value) return;
    const how = {
      show: ({ messages }: typeof page.settings) => messages[about],
      read: (typed: string, { messages }: typeof page.settings) =>
        typed.length > MOST ? null : { messages: { ...messages, [about]: typed.trim() } },
      wrong: t('terms.wordingWrong'),
    };
    say(await saveSetting(page, how)(text, false));
  };
  const names = [...new Set(own.match(/\{\w+\}/g))].join(' ');
  return (
    <div className="shop-wording">
      <Field
        label={t(`terms.wording-${about}`)}
        value={text}
        placeholder={own}
        onChange={setText}
        onLeave={() => void leave()}
        readOnly={!page.mayChange}
        lines={6}
        note={t('terms.names', { names })}
      />
      {page.mayChange && text === '' ? (
        <button type="button" className="link small" onClick={() => setText(own)}>
          {t('terms.wordingBegin')}
        </button>
      ) : null}
      {wrong}
    </div>
  );
}
