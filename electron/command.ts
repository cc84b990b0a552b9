import { readFileSync } from 'node:fs';
import type { Readable } from 'node:stream';
import { parseArgs } from 'node:util';
import type { Answer } from '../core/contract/errors.ts';
import { type CallLine, Calls, callLine, readBatch } from './calls.ts';
import { Codes } from './codes.ts';
import { contractAsSchema } from './contract.ts';
import type { Counter } from './counter.ts';
import { shopFolder } from './folder.ts';
import { HELP, sayError, sayFault } from './words.ts';

/** What the command line needs of the machine. */
export interface Surroundings {
  readonly env: NodeJS.ProcessEnv;
  readonly input: Readable & { isTTY?: boolean };
  out(line: string): void;
  err(sentence: string): void;
  /** Opens the shop, or goes to the process that holds it. */
  openCounter(folder: string, practice: boolean): Promise<{ counter: Counter; close(): Promise<void> }>;
  /** Makes a checked copy. Returns its place. */
  backUp(folder: string, to: string | undefined): Promise<string>;
  /** Puts a copy in place. Returns where the shop as it was is kept, or null where there was none. */
  restore(folder: string, from: string): Promise<string | null>;
}

const FLAGS = {
  shop: { type: 'string' },
  practice: { type: 'boolean' },
  as: { type: 'string' },
  at: { type: 'string' },
  request: { type: 'string' },
  batch: { type: 'string' },
  stop: { type: 'boolean' },
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
      const as = flags.as === undefined ? {} : { as: flags.as };
      return call(folder, [callLine.parse({ operation: 'care.verify', ...as })], flags, around);
    }
    case 'backup': {
      const copy = await around.backUp(folder, first);
      around.out(JSON.stringify({ ok: true, output: { copy } }));
      around.err(`A checked copy of the shop is in ${copy}.`);
      return 0;
    }
    case 'restore': {
      if (first === undefined) throw new WrongCommand('Say which copy: restore FROM');
      const kept = await around.restore(folder, first);
      around.out(JSON.stringify({ ok: true, output: { shop: folder, kept } }));
      around.err(`The copy is in place in ${folder}.${kept === null ? '' : ` The shop as it was is kept in ${kept}.`}`);
      return 0;
    }
    default:
      throw new WrongCommand(`There is no command ${command}.`);
  }
}

/** The calls that the words after `call` mean. */
async function linesOf(
  operation: string | undefined,
  json: string | undefined,
  flags: Flags,
  around: Surroundings,
): Promise<(CallLine | Answer)[]> {
  if (flags.batch !== undefined) {
    if (operation !== undefined) throw new WrongCommand('A batch names its operations itself.');
    return readBatch(readText(flags.batch));
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
    throw new WrongCommand(read.error.issues.map((i) => `${i.path.join('.')}: ${i.message}`).join('; '));
  return [read.data];
}

async function call(
  folder: string,
  lines: readonly (CallLine | Answer)[],
  flags: Flags,
  around: Surroundings,
): Promise<0 | 1> {
  const { counter, close } = await around.openCounter(folder, flags.practice ?? false);
  try {
    const calls = new Calls(counter, new Codes(around.env.SHOP_CODE, around.input, around.err));
    let exit: 0 | 1 = 0;
    for (const line of lines) {
      const answer = 'ok' in line ? line : await calls.make(line);
      around.out(JSON.stringify(answer));
      if (answer.ok) continue;
      exit = 1;
      around.err(sayError(answer.error));
      if (flags.stop) break;
    }
    return exit;
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
