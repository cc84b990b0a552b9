import { useWriting } from '../../state/shop.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { timeText } from '../../words/times.ts';
import type { TorqueStep } from './bolt-places.ts';

type Touch = TorqueStep['touches'][number];

/** What is written down of each round: who, when, with which wrench; what was tapped in one minute says so. */
export function RoundRecord({ data }: { readonly data: TorqueStep }) {
  const writing = useWriting();
  const rounds = Map.groupBy(data.touches, ({ side, stage, check }) => `${side} ${stage} ${check}`);
  const shown = [...rounds.values()].filter((round) => round[0]?.made != null);
  if (shown.length === 0) return null;
  return (
    <ul className="round-record small">
      {shown.map((round) => {
        const made = round.flatMap((touch) => (touch.made === null ? [] : [touch.made]));
        const from = timeText(Math.min(...made.map((one) => one.at)), writing);
        const to = timeText(Math.max(...made.map((one) => one.at)), writing);
        const wrenches = [...new Set(made.map((one) => one.wrench).filter((name) => name !== ''))];
        const together = made.filter((one) => one.together).length;
        const late = [...new Set(made.map((one) => one.lateBy).filter((name) => name !== ''))];
        return (
          <li key={roundName(round, data)}>
            {t('bench.roundRecord', {
              round: roundName(round, data),
              n: made.length,
              of: round.length,
              when: from === to ? from : `${from}\u2013${to}`,
              who: listWords([...new Set(made.map((one) => one.by))]),
            })}
            {wrenches.length === 0 ? '' : `, ${listWords(wrenches)}`}
            {made.some((one) => one.overdue) ? <b className="in-stop"> {t('bench.overdueUsed')}</b> : null}
            {together > 1 ? <b className="in-heed"> {t('bench.together', { n: together })}</b> : null}
            {late.length === 0 ? null : <b> {t('bench.lateBy', { name: listWords(late) })}</b>}
          </li>
        );
      })}
    </ul>
  );
}

function roundName(round: readonly Touch[], { group, stages }: TorqueStep): string {
  const [first] = round;
  if (first === undefined) return '';
  const name = first.check
    ? t('bench.checkShort')
    : t('bench.roundOf', { round: first.stage + 1, n: stages.length + (group.checkRound ? 1 : 0) });
  return group.sides > 1 ? `${t('bench.sideOf', { side: first.side })}, ${name}` : name;
}
