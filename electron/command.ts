import { readFileSync } from 'node:fs';
import type { Readable } from 'node:stream';
import { parseArgs } from 'node:util';
import type { Answer } from '../core/contract/errors.ts';
import type { ShopCopy } from '../db/file/backup.ts';
import { ShopFileError } from '../db/file/errors.ts';
import { problemsOf } from '../db/problem.ts';
import type { ShopWarning } from '../db/warnings.ts';
import { type BatchLine, Calls, callLine, readBatch } from './calls.ts';
import { Codes } from './codes.ts';
import { contractAsSchema } from './contract.ts';
import type { BroughtBack } from './copies.ts';
import type { Counter } from './counter.ts';
import { shopFolder } from './folder.ts';
import { HELP } from './help.ts';
import { exportKind, importFile, Refused, WrongFile } from './in-and-out.ts';
import { sayProblem } from './problem-words.ts';
import { sayVerified } from './verified-words.ts';
import { verifyWithPapers } from './verify-papers.ts';
import { ASK_FOR_LAST_INVOICE, sayBroughtBack, sayCopies, sayError, sayFault, sayWarning } from './words.ts';

/** What the command line needs of the machine. */
export interface Surroundings {
  readonly env: NodeJS.ProcessEnv;
  readonly input: Readable & { isTTY?: boolean };
  out(line: string): void;
  err(sentence: string): void;
  /** Opens the shop, or goes to the process that holds it. */
  openCounter(folder: string, practice: boolean): Promise<OpenCounter>;
  /** Makes a checked copy. */
  backUp(folder: string, to: string | undefined): Promise<ShopCopy>;
  /** Puts a copy in place; `lastInvoice` is the last number that stands on paper, null where nobody knows one. */
  restore(folder: string, from: string, lastInvoice: number | null): Promise<BroughtBack>;
  /** The copies in the shop's own backups, newest first. */
  copiesOf(folder: string): readonly ShopCopy[];
}

export interface OpenCounter {
  readonly counter: Counter;
  /** What opening found to warn of; nothing where the call is passed on. */
  readonly warnings: readonly ShopWarning[];
  close(): Promise<void>;
}

const FLAGS = {
  shop: { type: 'string' },
  practice: { type: 'boolean' },
  as: { type: 'string' },
  at: { type: 'string' },
  request: { type: 'string' },
  batch: { type: 'string' },
  stop: { type: 'boolean' },
  'last-invoice': { type: 'string' },
  papers: { type: 'boolean' },
  try: { type: 'boolean' },
  columns: { type: 'string' },
  dates: { type: 'string' },
  decimal: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;
type Flags = { [K in keyof typeof FLAGS]?: (typeof FLAGS)[K]['type'] extends 'string' ? string : boolean };

class WrongCommand extends Error {}

/** Node's own refusal of an unknown flag is a TypeError with a code. */
const isWrongCommand = (fault: unknown): fault is Error =>
  fault instanceof WrongCommand ||
  (fault instanceof TypeError && 'code' in fault && String(fault.code).startsWith('ERR_PARSE_ARGS'));

/** Runs one command. Returns the exit code: 0 done, 1 the shop said no, 2 the command itself was wrong. */
export async function runCommand(args: readonly string[], around: Surroundings): Promise<0 | 1 | 2> {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: FLAGS, allowPositionals: true });
    const [command, ...rest] = positionals;
    if (values.help || command === undefined || command === 'help') {
      around.out(HELP);
      return values.help || command === 'help' ? 0 : 2;
    }
    const folder = shopFolder(values.shop, around.env);
    try {
      return await run(command, rest, folder, values, around);
    } catch (fault) {
      if (isWrongCommand(fault)) throw fault;
      around.err(sayFault(fault, folder));
      if (fault instanceof ShopFileError && ['damaged', 'missing'].includes(fault.code))
        around.err(sayCopies(around.copiesOf(folder)));
      return 2;
    }
  } catch (fault) {
    if (!isWrongCommand(fault)) throw fault;
    around.err(`${fault.message}\n"--help" lists everything.`);
    return 2;
  }
}

async function run(
  command: string,
  rest: readonly string[],
  folder: string,
  flags: Flags,
  around: Surroundings,
): Promise<0 | 1 | 2> {
  const [first, second, ...more] = rest;
  if (more.length > 0) throw new WrongCommand(`That is one word too many: ${more[0]}`);
  switch (command) {
    case 'contract':
      around.out(JSON.stringify(contractAsSchema(), null, 2));
      return 0;
    case 'call':
      return call(folder, await linesOf(first, second, flags, around), flags, around);
    case 'verify': {
      if (flags.papers) return inOrOut(folder, flags, around, (ask) => verifyWithPapers(ask, around));
      const as = flags.as === undefined ? {} : { as: flags.as };
      const line = callLine.parse({ operation: 'care.verify', ...as });
      return call(folder, [{ call: line }], flags, around, (output) => {
        const { sound, sentences } = sayVerified(output);
        for (const sentence of sentences) around.err(sentence);
        return sound;
      });
    }
    case 'backup': {
      const copy = await around.backUp(folder, first);
      const { path, trail, bytes, sha256 } = copy;
      around.out(JSON.stringify({ ok: true, output: { copy: path, trail, bytes, sha256 } }));
      around.err(`A checked copy of the shop is in ${path}.`);
      return 0;
    }
    case 'restore': {
      if (first === undefined) throw new WrongCommand('Say which copy: restore FROM');
      const lastInvoice = lastInvoiceOf(flags);
      const { unnoted, ...back } = await around.restore(folder, first, lastInvoice);
      around.out(JSON.stringify({ ok: unnoted === undefined, output: { shop: folder, ...back } }));
      around.err(sayBroughtBack({ ...back, unnoted }, folder));
      if (lastInvoice === null && back.numbers !== null) around.err(ASK_FOR_LAST_INVOICE);
      return unnoted === undefined ? 0 : 1;
    }
    case 'import':
      if (first === undefined) throw new WrongCommand('Say which file: import FILE');
      return inOrOut(folder, flags, around, (ask) => importFile(first, flags, ask, around));
    case 'export':
      if (first === undefined) throw new WrongCommand('Say what: export KIND');
      return inOrOut(folder, flags, around, (ask) => exportKind(first, second, ask, around));
    default:
      throw new WrongCommand(`There is no command ${command}.`);
  }
}

/** Something that takes many calls, as one person; false is a bad end. */
async function inOrOut(
  folder: string,
  flags: Flags,
  around: Surroundings,
  run: (ask: (operation: string, input: unknown) => Promise<Answer>) => Promise<unknown>,
): Promise<0 | 1> {
  const { counter, warnings, close } = await around.openCounter(folder, flags.practice ?? false);
  for (const warning of warnings) around.err(sayWarning(warning));
  try {
    const calls = new Calls(counter, new Codes(around.env.SHOP_CODE, around.input, around.err));
    const good = await run((operation, input) =>
      calls.make({ operation, input, ...(flags.as === undefined ? {} : { as: flags.as }) }),
    );
    return good === false ? 1 : 0;
  } catch (fault) {
    if (fault instanceof WrongFile) throw new WrongCommand(fault.message);
    if (!(fault instanceof Refused)) throw fault;
    around.out(JSON.stringify({ ok: false, error: fault.error }));
    around.err(sayError(fault.error));
    return 1;
  } finally {
    await close();
  }
}

/** The last invoice number on paper, as the flag gives it; null where it is not given. */
function lastInvoiceOf(flags: Flags): number | null {
  const given = flags['last-invoice'];
  if (given === undefined) return null;
  const number = Number(given);
  if (!/^\d{1,12}$/.test(given) || number < 1)
    throw new WrongCommand('--last-invoice takes the number as it is printed.');
  return number;
}

/** One call, and the line of the batch that it stands on. */
type Numbered = Omit<BatchLine, 'number'> & Partial<Pick<BatchLine, 'number'>>;

/** The calls that the words after `call` mean. */
async function linesOf(
  operation: string | undefined,
  json: string | undefined,
  flags: Flags,
  around: Surroundings,
): Promise<readonly Numbered[]> {
  if (flags.batch !== undefined) {
    if (operation !== undefined) throw new WrongCommand('A batch names its operations itself.');
    return readBatch(flags.batch === '-' ? await readAll(around.input) : readText(flags.batch));
  }
  if (operation === undefined) throw new WrongCommand('Say which operation: call OPERATION JSON');
  let input: unknown;
  try {
    input = JSON.parse(json === '-' ? await readAll(around.input) : (json ?? '{}'));
  } catch {
    throw new WrongCommand('The input is not JSON.');
  }
  const { as, at, request } = flags;
  const read = callLine.safeParse({ operation, input, as, at: at === undefined ? undefined : Number(at), request });
  if (!read.success)
    throw new WrongCommand(
      problemsOf(read.error.issues)
        .map((p) => `--${p.path} ${sayProblem(p.problem, p.with)}.`)
        .join(' '),
    );
  return [{ call: read.data }];
}

async function call(
  folder: string,
  lines: readonly Numbered[],
  flags: Flags,
  around: Surroundings,
  isGood: (output: unknown) => boolean = () => true,
): Promise<0 | 1> {
  const { counter, warnings, close } = await around.openCounter(folder, flags.practice ?? false);
  for (const warning of warnings) around.err(sayWarning(warning));
  try {
    const calls = new Calls(counter, new Codes(around.env.SHOP_CODE, around.input, around.err));
    const refused: number[] = [];
    for (const [index, { number, call: line }] of lines.entries()) {
      const answer = 'ok' in line ? line : await calls.make(line);
      around.out(JSON.stringify(number === undefined ? answer : { line: number, ...answer }));
      if (answer.ok) {
        if (!isGood(answer.output)) refused.push(number ?? 0);
        continue;
      }
      refused.push(number ?? 0);
      around.err(`${number === undefined ? '' : `Line ${number}: `}${sayError(answer.error)}`);
      if (!flags.stop) continue;
      if (index < lines.length - 1)
        around.err(`Stopped there; ${lines.length - 1 - index} lines after it were not called.`);
      break;
    }
    if (flags.batch !== undefined && !flags.stop && refused.length > 0)
      around.err(`${lines.length} calls, ${refused.length} refused: line ${refused.join(', ')}.`);
    return refused.length === 0 ? 0 : 1;
  } finally {
    await close();
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    throw new WrongCommand(`There is no file ${file} to read.`);
  }
}

async function readAll(input: Readable): Promise<string> {
  let text = '';
  for await (const part of input) text += String(part);
  return text;
}
