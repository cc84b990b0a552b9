import { useDeferredValue, useRef, useState } from 'react';
import { Page } from '../../frame/Page.tsx';
import { hrefOf } from '../../frame/router.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { useRowKeys } from '../../parts/row-keys.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import '../customers/list.css';

/** Every car that was ever here, by plate. */
export function CarList() {
  const [text, setText] = useState('');
  const writing = useWriting();
  const list = useRef<HTMLUListElement>(null);
  useRowKeys(list, 'a');
  const { data, error } = useAsk('car.list', { text: useDeferredValue(text), most: 200 });
  return (
    <Page title={t('cars.title')}>
      <div className="list-find">
        <Field label={t('cars.find')} value={text} onChange={setText} maxLength={60} />
      </div>
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {data?.rows.length === 0 ? <Empty>{t('cars.none')}</Empty> : null}
      <ul className="list-rows" ref={list}>
        {(data?.rows ?? []).map((row) => (
          <li key={row.id}>
            <a href={hrefOf('cars', row.id)}>
              <span>{row.plate === '' ? null : <Plate plate={row.plate} />}</span>
              <b>{row.words}</b>
              <span>{row.owner || t('cars.noOwner')}</span>
              <span className="figure">
                {row.lastVisit === null ? t('cars.never') : dayText(row.lastVisit, writing, Date.now())}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </Page>
  );
}
