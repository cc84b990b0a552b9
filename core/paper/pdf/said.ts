import { timeShown } from '../../time/time-shown.ts';
import type { InvoicePaper, PaperDeclined, PaperMoment, QuotePaper } from '../document.ts';
import { type Block, SIZE, words } from './block.ts';
import { paragraph, type Setting, space } from './setting.ts';
import type { Span } from './text.ts';

const SIZE_SAID = 9.75;

/** What was agreed and reached, as dated lists: each line a block, headings kept with their first line. */
export function saidBlocks(setting: Setting<QuotePaper | InvoicePaper>, width: number): readonly Block[] {
  const { document, words: w, amount } = setting;
  const blocks: Block[] = [];
  const list = (title: string, entries: readonly (readonly Span[])[]): void => {
    if (entries.length === 0) return;
    if (blocks.length > 0) blocks.push(space(5));
    const heading = paragraph(setting.shaper, words(title, 'head'), { x: 0, width, size: SIZE.section, leading: 1.3 });
    blocks.push(...heading.map((one) => ({ ...one, keep: true })));
    for (const entry of entries)
      blocks.push(...paragraph(setting.shaper, entry, { x: 0, width, size: SIZE_SAID, leading: 1.34, after: 1 }));
  };
  const speakers = new Set(document.yes.map((yes) => yes.name));
  const onlySpeaker = speakers.size === 1 ? ([...speakers][0] ?? '') : '';
  list(
    w.saidYes(onlySpeaker),
    document.yes.map((yes) => words(w.yes(yes, when(setting, yes.at), amount(yes.upTo), onlySpeaker === ''))),
  );
  list(
    w.saidNo,
    document.declined.map((one) => declined(setting, one)),
  );
  if (document.kind === 'invoice') {
    list(
      w.tightened,
      document.tightened.map((one) => words(`${one.what}: ${one.figure}`)),
    );
    list(
      w.letPass,
      document.overrides.map((one) => [
        { text: `${one.what}: `, style: 'bold' },
        { text: w.letPassBy(one.reason, one.by), style: 'body' },
      ]),
    );
  }
  return blocks;
}

function when({ shortDate }: Setting, at: PaperMoment): string {
  return at.time === '' ? shortDate(at.date) : `${shortDate(at.date)}, ${timeShown(at.time)}`;
}

/** What is unsafe says so first, in bold: the warning does not hang on colour. */
function declined({ words: w, amount, shortDate }: Setting, one: PaperDeclined): readonly Span[] {
  const told = one.risk === '' ? '' : `. ${one.risk}`;
  return [
    ...(one.unsafe ? [{ text: `${w.unsafe} `, style: 'bold' } as const] : []),
    { text: `${shortDate(one.date)}, ${one.title}, ${amount(one.amount)}${told}`, style: 'body' },
  ];
}
