import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';

/** Where a person's code comes from: SHOP_CODE, else standard input. Never the command line, where others can see it. */
export class Codes {
  readonly #env: string | undefined;
  readonly #input: Readable & { isTTY?: boolean };
  readonly #ask: (sentence: string) => void;
  #lines: Promise<string[]> | undefined;

  constructor(env: string | undefined, input: Readable & { isTTY?: boolean }, ask: (sentence: string) => void) {
    this.#env = env;
    this.#input = input;
    this.#ask = ask;
  }

  /** The code of this person: the line NAME=CODE, else the only line; null where there is none. */
  async of(person: string): Promise<string | null> {
    this.#lines ??= this.#read(person);
    const lines = await this.#lines;
    const named = lines.find((line) => line.startsWith(`${person}=`));
    if (named !== undefined) return named.slice(person.length + 1);
    return lines.length === 1 ? (lines[0] ?? null) : null;
  }

  async #read(person: string): Promise<string[]> {
    if (this.#env !== undefined) return splitLines(this.#env);
    if (this.#input.isTTY) return [await this.#prompt(person)];
    let text = '';
    for await (const part of this.#input) text += String(part);
    return splitLines(text);
  }

  async #prompt(person: string): Promise<string> {
    this.#ask(`Code for ${person}: `);
    // With no output given, the interface in terminal mode swallows what is typed instead of showing it.
    const reader = createInterface({ input: this.#input, terminal: true });
    try {
      return await new Promise<string>((typed) => reader.once('line', typed).once('close', () => typed('')));
    } finally {
      reader.close();
      this.#ask('\n');
    }
  }
}

const splitLines = (text: string): string[] => text.split(/\r?\n/).filter((line) => line !== '');
