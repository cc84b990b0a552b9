import { useEffect, useRef, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { begun, type DemoPerson } from '../../state/begun.ts';
import { type CallAnswer, type CallError, sendBegin } from '../../state/transport.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';

type Demo =
  | { readonly stage: 'none' | 'stopped' }
  | { readonly stage: 'playing'; readonly step: 'scenes' | 'orders'; readonly done: number; readonly of: number }
  | { readonly stage: 'made'; readonly people: readonly DemoPerson[] }
  | { readonly stage: 'failed'; readonly why: string };
type Playing = Extract<Demo, { stage: 'playing' }>;

/** How often the playing is asked how far it is, in milliseconds. */
const LOOK = 250;
const BEGINNING: Playing = { stage: 'playing', step: 'scenes', done: 0, of: 0 };

/** A made-up garage is played into a folder of its own, with its count, and opened; it may be stopped. */
export function DemoGarage() {
  const [demo, setDemo] = useState<Demo>({ stage: 'none' });
  const [error, setError] = useState<CallError | null>(null);
  const here = useRef(true);
  useEffect(() => {
    here.current = true;
    return () => {
      here.current = false;
    };
  }, []);

  const tell = async (what: 'play' | 'stop' | 'demo' | 'open-demo') => {
    const answer = (await sendBegin({ what })) as CallAnswer<Demo>;
    if (!here.current) return null;
    setError(answer.ok ? null : answer.error);
    if (answer.ok) setDemo(answer.output);
    return answer.ok ? answer.output : null;
  };
  const play = async () => {
    setDemo(BEGINNING);
    let now = await tell('play');
    while (now?.stage === 'playing') {
      await new Promise((later) => setTimeout(later, LOOK));
      now = here.current ? await tell('demo') : null;
    }
    if (now?.stage !== 'made') return;
    const { people } = now;
    // The window leaves this page as soon as another shop stands there.
    const opened = await sendBegin({ what: 'open-demo' });
    if (opened.ok) await begun({ people });
    else if (here.current) setError(opened.error);
  };
  return (
    <section aria-label={t('start.demo')}>
      <h3>{t('start.demo')}</h3>
      <p>{t('start.demoWords')}</p>
      {demo.stage === 'playing' ? (
        <div className="set-up-way">
          <Progress {...demo} />
          <Button small onClick={() => void tell('stop')}>
            {t('start.demoStop')}
          </Button>
        </div>
      ) : (
        <Button onClick={() => void play()} disabled={demo.stage === 'made'}>
          {t('start.demoGo')}
        </Button>
      )}
      {demo.stage === 'stopped' ? <p role="status">{t('start.demoStopped')}</p> : null}
      {demo.stage === 'failed' || error !== null ? (
        <p className="wrong-words" role="alert">
          {demo.stage === 'failed' ? demo.why : error === null ? '' : errorSentence(error)}
        </p>
      ) : null}
    </section>
  );
}

function Progress({ step, done, of }: Playing) {
  const words = of === 0 ? t('start.demoBegins') : t(`start.demo-${step}`, { done, of });
  return (
    <div className="set-up-progress">
      <p role="status">{words}</p>
      <progress aria-label={t('start.demoGo')} max={Math.max(1, of)} value={of === 0 ? undefined : done} />
    </div>
  );
}
