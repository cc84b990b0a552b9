import { t } from '../../words/t.ts';
import type { TorqueStep } from './bolt-places.ts';
import { stageWords } from './stage-words.ts';
import type { TorqueView } from './torque-view.ts';

/** The rounds beside one another: what is done struck, the one in hand brass, both units in each. */
export function Rounds({ data, view }: { readonly data: TorqueStep; readonly view: TorqueView }) {
  const { due } = view;
  const at = due === null ? data.stages.length + 1 : due.check ? data.stages.length : due.stage;
  const rounds = data.stages.map((stage, round) => ({ round, words: stageWords(stage) }));
  const look = (round: number) => (round < at ? 'done' : round === at ? 'on' : '');
  return (
    <ol className="rounds">
      {rounds.map(({ round, words: [first, second] }) => (
        <li key={round} className={look(round)} aria-current={look(round) === 'on' || undefined}>
          <b>{first}</b>
          {second}
        </li>
      ))}
      {data.group.checkRound ? (
        <li className={look(data.stages.length)} aria-current={look(data.stages.length) === 'on' || undefined}>
          <b>{t('bench.checkShort')}</b>
          {t('bench.checkCircle')}
        </li>
      ) : null}
    </ol>
  );
}
