import { stageText } from '../../../core/bench/stage.ts';
import type { Step } from './draft.ts';

export type Torque = NonNullable<Step['torque']>;
type Stage = Torque['stages'][number];

/** Rounds that a group may have. */
export const ROUNDS_MOST = 6;
/** Holes on one side. */
export const HOLES_MOST = 64;

const number = (text: string): number => Number(text.replace(',', '.'));
const parts = (text: string): string[] =>
  text
    .split(/;|,\s+|,(?=\D)/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

/**
 * Rounds as typed: "30, 60, 85" in N·m, "22 lbf·ft", "40 N·m (30 lbf·ft)" where the source prints both, "90°". Null where
 * one is no figure, or there are none or more than six.
 */
export function readStages(text: string): Stage[] | null {
  const stages = parts(text).map(readStage);
  const good = stages.filter((stage) => stage !== null);
  return good.length !== stages.length || good.length === 0 || good.length > ROUNDS_MOST ? null : good;
}

const FIGURE = String.raw`(\d{1,4}(?:[.,]\d{1,2})?)`;
const FEET = '(?:lbf·ft|lbf ?ft|ft·lbf)';
const ANGLE = new RegExp(`^${FIGURE}\\s*(?:°|deg)$`, 'i');
const FEET_ALONE = new RegExp(`^${FIGURE}\\s*${FEET}$`, 'i');
const METRES = new RegExp(`^${FIGURE}\\s*(?:N·m|Nm)?(?:\\s*\\(${FIGURE}\\s*${FEET}\\))?$`, 'i');

function readStage(text: string): Stage | null {
  const within = (figure: number, most: number) => figure > 0 && figure <= most;
  const angle = number(ANGLE.exec(text)?.[1] ?? '0');
  if (angle !== 0) return within(angle, 720) ? { degrees: angle } : null;
  const feet = number(FEET_ALONE.exec(text)?.[1] ?? '0');
  if (feet !== 0) return within(feet, 3700) ? { lbfft: feet } : null;
  const match = METRES.exec(text);
  const Nm = number(match?.[1] ?? '0');
  if (!within(Nm, 5000)) return null;
  if (match?.[2] === undefined) return { Nm };
  const lbfft = number(match[2]);
  return within(lbfft, 3700) ? { Nm, lbfft } : null;
}

/** A round as it is typed: "30 N·m". */
export const roundText = (stage: Stage): string => stageText(stage);

/**
 * The rounds with what was typed into one of them: one figure takes its place, a list takes the place of it and all that
 * follow, nothing takes it out. Null where it does not fit, or where it is the only one and would go.
 */
export function withRound(stages: readonly Stage[], round: number, text: string): Stage[] | null {
  if (text.trim() === '') return stages.length < 2 ? null : stages.filter((_, at) => at !== round);
  const typed = readStages(text);
  if (typed === null) return null;
  const rest = typed.length > 1 ? [] : stages.slice(round + 1);
  const all = [...stages.slice(0, round), ...typed, ...rest];
  return all.length > ROUNDS_MOST ? null : all;
}

/** "M12 x 1.75, dry" or "1/2 UNF, 12.7 mm, oiled". Null where there is no diameter. */
export function readThread(text: string): NonNullable<Torque['thread']> | null {
  const match = /^(\S.{0,39}?)(?:,\s*(\d{1,3}(?:[.,]\d{1,3})?)\s*mm)?(?:,?\s+(dry|oiled|lubricated))?$/i.exec(
    text.trim(),
  );
  const words = match?.[1]?.trim() ?? '';
  const metric = /^M\s?(\d{1,3}(?:[.,]\d{1,2})?)/i.exec(words)?.[1];
  const diameter = number(match?.[2] ?? metric ?? '0');
  if (!(diameter > 0 && diameter <= 200)) return null;
  return { words, diameter, nut: /oiled|lubricated/i.test(match?.[3] ?? '') ? 'lubricated' : 'dry' };
}
export function threadText(thread: Torque['thread']): string {
  if (thread === null) return '';
  const known = readThread(thread.words)?.diameter === thread.diameter;
  return [thread.words, known ? '' : `${thread.diameter} mm`, thread.nut === 'dry' ? 'dry' : 'oiled']
    .filter((part) => part !== '')
    .join(', ');
}

/** "150 mm", "150 mm at 90°", "150 mm at 90°, lever 400 mm". Null where it does not fit. */
export function readExtension(text: string): NonNullable<Torque['extension']> | null {
  const match =
    /^(\d{1,4}(?:[.,]\d)?)\s*mm(?:\s+at\s+(\d{1,3}(?:[.,]\d)?)\s*°?)?(?:,?\s+lever\s+(\d{1,4}(?:[.,]\d)?)\s*mm)?$/i.exec(
      text.trim(),
    );
  if (match?.[1] === undefined) return null;
  const extension = {
    length: number(match[1]),
    angle: number(match[2] ?? '0'),
    lever: match[3] === undefined ? null : number(match[3]),
  };
  const good =
    extension.length > 0 &&
    extension.length <= 2000 &&
    extension.angle <= 180 &&
    (extension.lever === null || (extension.lever > 0 && extension.lever <= 3000));
  return good ? extension : null;
}
export function extensionText(extension: Torque['extension']): string {
  if (extension === null) return '';
  const { length, angle, lever } = extension;
  return `${length} mm${angle === 0 ? '' : ` at ${angle}°`}${lever === null ? '' : `, lever ${lever} mm`}`;
}

/** The group with its holes in another pattern, as few of them as the pattern takes. */
export function inPattern(torque: Torque, pattern: Torque['pattern']): Torque {
  const count = pattern === 'pairs' ? Math.min(HOLES_MOST, torque.count + (torque.count % 2)) : torque.count;
  const evenly = Array.from({ length: count }, (_, at) => Math.round((at * 3600) / count) / 10);
  return { ...torque, pattern, count, degrees: pattern === 'angles' ? evenly : [], rows: [] };
}

/** Degrees from the top, one a hole: "0, 55, 130". Null where one is none, stands twice, or is a whole turn. */
export function withDegrees(torque: Torque, text: string): Torque | null {
  const degrees = text
    .split(/[;,\s]+/)
    .filter((part) => part !== '')
    .map((part) => (/^\d{1,3}(?:\.\d{1,2})?°?$/.test(part) ? Number(part.replace('°', '')) : Number.NaN));
  const good = degrees.every((one) => one < 360) && new Set(degrees).size === degrees.length;
  if (!good || degrees.length === 0 || degrees.length > HOLES_MOST) return null;
  return { ...torque, degrees, count: degrees.length };
}

/** Holes in each row from the top: "4, 4". Null where one is none or they are too many. */
export function withRows(torque: Torque, text: string): Torque | null {
  const rows = text
    .split(/[;,\s]+/)
    .filter((part) => part !== '')
    .map((part) => (/^\d{1,2}$/.test(part) ? Number(part) : 0));
  const count = rows.reduce((all, row) => all + row, 0);
  if (rows.length === 0 || rows.length > 16 || rows.includes(0) || count > HOLES_MOST) return null;
  return { ...torque, rows, count };
}

/** Holes on one side as typed, where they lie evenly or anywhere; null where the pattern does not take so many. */
export function withCount(torque: Torque, text: string): Torque | null {
  const count = /^\d{1,2}$/.test(text.trim()) ? Number(text) : 0;
  if (count < 1 || count > HOLES_MOST || (torque.pattern === 'pairs' && count % 2 === 1)) return null;
  return { ...torque, count };
}
