import type { TorqueStep } from './bolt-places.ts';

type Stage = Pick<TorqueStep['stages'][number], 'entered' | 'torque' | 'degrees'>;

/** To a tenth, without a nought after the point. */
const tenth = (figure: number): string => String(Number(figure.toFixed(1)));
/** As it was entered, else to the nearest whole one from 20 up, to a tenth below. */
const other = (figure: number): string => (figure >= 20 ? figure.toFixed(0) : tenth(figure));

const NBSP = '\u00a0';

/** Both units of a torque; the one that was entered as it was entered, the other to what a wrench shows. */
export function bothUnitWords(
  torque: { Nm: number; lbfft: number },
  entered: Stage['entered'] | null,
): [string, string] {
  const own = entered ?? {};
  return [
    `${'Nm' in own ? own.Nm : other(torque.Nm)}${NBSP}N·m`,
    `${'lbfft' in own ? own.lbfft : other(torque.lbfft)}${NBSP}lbf·ft`,
  ];
}

/** A round in its two lines: "60 N·m", "44 lbf·ft"; an angle has one. The unit that the source gives stands first. */
export function stageWords({ entered, torque, degrees }: Stage): [string, string] {
  if (torque === null) return [`${degrees ?? 0}°`, ''];
  const [metres, feet] = bothUnitWords(torque, entered);
  return 'Nm' in entered ? [metres, feet] : [feet, metres];
}
