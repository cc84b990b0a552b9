import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { type About, aboutOptions, isTalk, readAbout, type Way, wayOptions } from './ways.ts';

interface Props {
  readonly customerId: string;
  readonly orderId: string | null;
  readonly onDone: () => void;
}

/** What was said or written, to the customer or by them, told in a few words. */
export function WriteDown({ customerId, orderId, onDone }: Props) {
  const record = useDo('message.record');
  const [way, setWay] = useState<Way>('phone');
  const [about, setAbout] = useState<About>('other');
  const [direction, setDirection] = useState<'out' | 'in'>('out');
  const [reached, setReached] = useState(true);
  const [words, setWords] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (words.trim() === '') return;
    const spoke = direction === 'in' || (isTalk(way) && reached);
    const answer = await record.run({ customerId, orderId, about, way, direction, reached: spoke, words });
    if (answer.ok) onDone();
  };
  return (
    <form
      className="contact-draft"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Choice
        label={t('contact.who')}
        value={direction}
        options={[
          { value: 'out', words: t('contact.weTold') },
          { value: 'in', words: t('contact.theyTold') },
        ]}
        onChange={setDirection}
      />
      <Choice label={t('contact.how')} value={way} options={wayOptions()} onChange={setWay} />
      {direction === 'out' && isTalk(way) ? (
        <Tick ticked={reached} onTick={setReached}>
          {t('contact.reached')}
        </Tick>
      ) : null}
      <Pick
        label={t('contact.about')}
        value={about}
        options={aboutOptions()}
        onChange={(next) => setAbout(readAbout(next))}
      />
      <Field
        label={t('contact.words')}
        value={words}
        onChange={setWords}
        lines={2}
        maxLength={4000}
        error={tried && words.trim() === '' ? t('contact.wordsNeeded') : null}
      />
      <div className="contact-acts">
        <Button type="submit" disabled={record.busy}>
          {t('contact.keep')}
        </Button>
        <Button onClick={onDone}>{t('contact.leave')}</Button>
      </div>
      <NotSaved error={record.error} />
    </form>
  );
}
