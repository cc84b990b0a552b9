import { requiredEntries } from '../../../core/bench/torque.ts';
import { groupOf } from '../../../core/bench/torque-group.ts';
import { reckonStage } from '../../../core/bench/wrench.ts';
import { Tick } from '../../parts/Tick.tsx';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { BoltRing } from './BoltRing.tsx';
import { type Content, withStep } from './draft.ts';
import { Labelled } from './Labelled.tsx';
import {
  extensionText,
  HOLES_MOST,
  inPattern,
  ROUNDS_MOST,
  readExtension,
  readStages,
  readThread,
  roundText,
  type Torque,
  threadText,
  withCount,
  withDegrees,
  withRound,
  withRows,
} from './read-torque.ts';
import { otherUnit } from './torque-words.ts';
import { JobCell, useJob } from './writing-job.tsx';

const PATTERNS = ['ring', 'angles', 'pairs', 'rows', 'free'] as const;

interface Props {
  readonly n: number;
  readonly torque: Torque;
}

/** Bolts, where they are, their rounds in both units, and what the bench will make of them. */
export function TorquePart({ n, torque }: Props) {
  const { change } = useJob();
  const set = (content: Content, part: Partial<Torque> | null) =>
    part === null ? null : withStep(content, n, { torque: { ...torque, ...part } });
  const ticks = requiredEntries(groupOf(torque));
  return (
    <div className="book-torque">
      <BoltRing torque={torque} />
      <div className="book-torque-cells">
        <Rounds n={n} torque={torque} />
        <Labelled label={t('jobBook.torqueWhat')}>
          <JobCell
            label={t('jobBook.torqueWhat')}
            value={torque.what}
            read={(what, now) => (what.length > 80 ? null : set(now, { what }))}
            wrong={t('shop.wordsWrong')}
          />
        </Labelled>
        <Pick
          label={t('jobBook.pattern')}
          value={torque.pattern}
          options={PATTERNS.map((value) => ({ value, words: t(`jobBook.pattern-${value}`) }))}
          onChange={(value) =>
            change?.(
              (now) => set(now, inPattern(torque, PATTERNS.find((one) => one === value) ?? torque.pattern)) ?? now,
            )
          }
        />
        <Holes torque={torque} set={set} />
        <Labelled label={t('jobBook.sides')}>
          <JobCell
            label={t('jobBook.sides')}
            value={String(torque.sides)}
            read={(text, now) => (/^[1-4]$/.test(text.trim()) ? set(now, { sides: Number(text) }) : null)}
            wrong={t('jobBook.countWrong', { most: 4 })}
          />
        </Labelled>
        <Labelled label={t('jobBook.thread')}>
          <JobCell
            label={t('jobBook.thread')}
            placeholder={t('jobBook.threadHint')}
            value={threadText(torque.thread)}
            read={(text, now) => {
              const thread = text.trim() === '' ? null : readThread(text);
              return text.trim() !== '' && thread === null ? null : set(now, { thread });
            }}
            wrong={t('jobBook.threadWrong')}
          />
        </Labelled>
        <Labelled label={t('jobBook.extension')}>
          <JobCell
            label={t('jobBook.extension')}
            placeholder={t('jobBook.extensionHint')}
            value={extensionText(torque.extension)}
            read={(text, now) => {
              const extension = text.trim() === '' ? null : readExtension(text);
              return text.trim() !== '' && extension === null ? null : set(now, { extension });
            }}
            wrong={t('jobBook.extensionWrong')}
          />
        </Labelled>
        <Tick ticked={torque.checkRound} onTick={(checkRound) => change?.((now) => set(now, { checkRound }) ?? now)}>
          {t('jobBook.checkRound')}
        </Tick>
        <p className="small book-torque-made">
          {t('jobBook.ticks', { n: ticks })}
          <Reckoned torque={torque} />
        </p>
      </div>
    </div>
  );
}

/** A cell a round with the other unit beside it, and one open for the next. */
function Rounds({ n, torque }: Props) {
  const { change } = useJob();
  const { stages } = torque;
  const placed = stages.map((stage, round) => ({ stage, round, key: `${round} of ${stages.length}` }));
  const set = (now: Content, all: Torque['stages'] | null) =>
    all === null ? null : withStep(now, n, { torque: { ...torque, stages: all } });
  return (
    <ol className="book-rounds" aria-label={t('jobBook.rounds')}>
      {placed.map(({ stage, round, key }) => (
        <li key={key}>
          <b className="book-n" aria-hidden="true">
            {round + 1}
          </b>
          <JobCell
            label={t('jobBook.round', { n: round + 1 })}
            value={roundText(stage)}
            read={(text, now) => set(now, withRound(stages, round, text))}
            wrong={t('jobBook.stagesWrong')}
          />
          <span className="ink-2">{otherUnit(stage)}</span>
        </li>
      ))}
      {change === null || stages.length >= ROUNDS_MOST ? null : (
        <li>
          <b className="book-n ink-3" aria-hidden="true">
            {stages.length + 1}
          </b>
          <JobCell
            className="book-open"
            label={t('jobBook.nextRound')}
            placeholder={t('jobBook.stagesHint')}
            value=""
            read={(text, now) => {
              const more = readStages(text);
              return more === null || stages.length + more.length > ROUNDS_MOST ? null : set(now, [...stages, ...more]);
            }}
            wrong={t('jobBook.stagesWrong')}
          />
        </li>
      )}
    </ol>
  );
}

interface HolesProps {
  readonly torque: Torque;
  readonly set: (content: Content, part: Partial<Torque> | null) => Content | null;
}

/** How many holes there are on one side; where they are not even, where each one is. */
function Holes({ torque, set }: HolesProps) {
  if (torque.pattern === 'angles')
    return (
      <Labelled label={t('jobBook.degrees')}>
        <JobCell
          label={t('jobBook.degrees')}
          value={torque.degrees.join(', ')}
          read={(text, now) => set(now, withDegrees(torque, text))}
          wrong={t('jobBook.degreesWrong')}
        />
      </Labelled>
    );
  if (torque.pattern === 'rows')
    return (
      <Labelled label={t('jobBook.rows')}>
        <JobCell
          label={t('jobBook.rows')}
          value={(torque.rows.length === 0 ? [torque.count] : torque.rows).join(', ')}
          read={(text, now) => set(now, withRows(torque, text))}
          wrong={t('jobBook.rowsWrong')}
        />
      </Labelled>
    );
  return (
    <Labelled label={t('jobBook.count')}>
      <JobCell
        label={t('jobBook.count')}
        value={String(torque.count)}
        read={(text, now) => set(now, withCount(torque, text))}
        wrong={torque.pattern === 'pairs' ? t('jobBook.pairsWrong') : t('jobBook.countWrong', { most: HOLES_MOST })}
      />
    </Labelled>
  );
}

/** What follows from the last round: what to set with the extension, and an estimate of the clamp load with its span. */
function Reckoned({ torque }: { readonly torque: Torque }) {
  const last = torque.stages.findLast((stage) => !('degrees' in stage));
  if (last === undefined) return null;
  const { setting, clampLoad } = reckonStage(last, torque, null);
  const kilonewtons = (figure: number) => figure.toFixed(figure < 10 ? 1 : 0);
  return (
    <>
      {setting === null
        ? null
        : `. ${t('jobBook.setting', { metres: setting.Nm.toFixed(1), feet: setting.lbfft.toFixed(1) })}`}
      {torque.extension !== null && setting === null ? `. ${t('jobBook.settingAtBench')}` : ''}
      {clampLoad === null
        ? null
        : `. ${t('jobBook.clampLoad', {
            load: kilonewtons(clampLoad.load),
            least: kilonewtons(clampLoad.least),
            most: kilonewtons(clampLoad.most),
          })}`}
    </>
  );
}
