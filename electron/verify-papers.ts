import type { OutputOf } from '../core/contract/index.ts';
import { type Ask, taken } from './in-and-out.ts';
import { sayVerified } from './verified-words.ts';

/** Where answers and sentences go. */
interface Say {
  out(line: string): void;
  err(sentence: string): void;
}

/** Checks everything, then makes every paper again and compares it with its file. False where something does not agree. */
export async function verifyWithPapers(ask: Ask, say: Say): Promise<boolean> {
  const { checked, faults } = await taken<OutputOf<'care.verify'>>(ask('care.verify', {}));
  const papers: OutputOf<'care.papers'>['faults'] = [];
  let looked = 0;
  let after: string | null = null;
  do {
    const piece: OutputOf<'care.papers'> = await taken(ask('care.papers', { after }));
    looked += piece.looked;
    papers.push(...piece.faults);
    after = piece.next;
    say.err(`${looked} of ${piece.of} papers`);
  } while (after !== null);
  const all = [...faults, ...papers];
  const output = { sound: all.length === 0, checked, faults: all };
  say.out(JSON.stringify({ ok: true, output }));
  for (const sentence of sayVerified(output).sentences) say.err(sentence);
  if (papers.length > 0)
    say.err(
      `An older version of the program may have set a paper differently. To make a file anew (the old one is kept beside it): call paper.makeAnew '{"id":"${papers[0]?.row}"}'`,
    );
  return output.sound;
}
