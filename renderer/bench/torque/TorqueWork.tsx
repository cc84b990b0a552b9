import { Button } from '../../parts/Button.tsx';
import { Wrong } from '../../sheet/Wrong.tsx';
import { tap, useTaps } from '../../state/taps.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { BoltDrawing } from './BoltDrawing.tsx';
import type { TorqueStep } from './bolt-places.ts';
import { ManyTight } from './ManyTight.tsx';
import { Reckoning } from './Reckoning.tsx';
import { RoundRecord } from './RoundRecord.tsx';
import { Rounds } from './Rounds.tsx';
import { bothUnitWords, stageWords } from './stage-words.ts';
import { type TorqueView, torqueView, waitingMade } from './torque-view.ts';
import { useWrench, WrenchChoice } from './WrenchChoice.tsx';

interface Props {
  readonly jobId: string;
  readonly step: number;
  /** Why nothing may be tightened now; null where it may. */
  readonly held: string | null;
}

/** A torque step: the bolts in their order with the one in hand, its figure in both units, one big button, back one. */
export function TorqueWork({ jobId, step, held }: Props) {
  const wrenchId = useWrench((wrench) => wrench.id);
  const taps = useTaps((state) => state.taps);
  const asked = useAsk('torque.get', { jobId, step, wrenchId });
  // While another wrench is being asked for, the step stays in view as the first one shows it.
  const plain = useAsk('torque.get', { jobId, step, wrenchId: null });
  const data = asked.data ?? plain.data;
  if (data === undefined) return <Wrong error={asked.error} />;
  return <Torque data={data} view={torqueView(data, waitingMade(taps, jobId, step))} held={held} wrenchId={wrenchId} />;
}

interface TorqueProps {
  readonly data: TorqueStep;
  readonly view: TorqueView;
  readonly held: string | null;
  readonly wrenchId: string | null;
}

function Torque({ data, view, held, wrenchId }: TorqueProps) {
  const { jobId, step, group } = data;
  const { due, made } = view;
  const stage = data.stages[due?.stage ?? data.stages.length - 1];
  const figures: [string, string] = stage === undefined ? ['', ''] : stageWords(stage);
  const left = data.touches.length - made;
  const make = (count: number, when: { at?: number } = {}) =>
    void tap('torque.make', { jobId, step, touch: made, count, wrenchId, ...when }, made + count);
  const back = () => void tap('torque.back', { jobId, step }, made - 1);
  const rounds = data.stages.length + (group.checkRound ? 1 : 0);
  const round = due === null ? rounds : due.check ? rounds : due.stage + 1;
  return (
    <div className="torque">
      <BoltDrawing group={group} view={view} figures={figures} />
      <div className="torque-say">
        <p className="ink-2">
          {group.what === '' ? '' : `${group.what}. `}
          {group.thread === null ? '' : `${threadWords(group.thread)}. `}
          {t('bench.round', { round, n: rounds })}
          {group.sides > 1 && due !== null ? ` ${t('bench.side', { side: due.side, n: group.sides })}` : ''}
        </p>
        {due?.check ? <p className="semi">{t('bench.checkRound')}</p> : null}
        <p className="torque-figure">{figures[0]}</p>
        <p className="torque-other">{figures[1]}</p>
        {stage?.setting == null ? null : (
          <p className="semi">
            {t('bench.setWrench', { figures: bothUnitWords(stage.setting, null).join(', ') })}
            {group.extension === null
              ? ''
              : ` ${t('bench.withExtension', { length: group.extension.length, angle: group.extension.angle })}`}
          </p>
        )}
        {stage?.outsideWrench ? <p className="in-stop semi">{t('bench.outsideWrench')}</p> : null}
        {rounds === 1 ? null : <Rounds data={data} view={view} />}
        {due === null ? (
          <p className="semi">{t('parts.allTight', { n: group.count * group.sides })}</p>
        ) : (
          <Button kind="go" held={held} onClick={() => make(1)}>
            {t(due.check ? 'bench.boltChecked' : 'bench.boltTight', { bolt: view.numbers.get(due.hole) ?? due.hole })}
          </Button>
        )}
        <div className="torque-more">
          {made === 0 || held !== null ? null : <Button onClick={back}>{t('bench.backOne')}</Button>}
          {left < 2 || held !== null ? null : (
            <ManyTight left={left} inRound={view.round.length - view.roundMade} onMany={make} />
          )}
        </div>
      </div>
      <div className="torque-under">
        <WrenchChoice used={data.touches.findLast((touch) => touch.made !== null)?.made?.wrench ?? ''} />
        <RoundRecord data={data} />
        <Reckoning data={data} />
      </div>
    </div>
  );
}

function threadWords(thread: NonNullable<TorqueStep['group']['thread']>): string {
  return `${thread.words === '' ? `M${thread.diameter}` : thread.words}, ${t(`bench.thread-${thread.nut}`)}`;
}
