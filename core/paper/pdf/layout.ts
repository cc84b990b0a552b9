import type { CreditNotePaper, InvoicePaper, PaperDocument, QuotePaper } from '../document.ts';
import { type Block, block, moved, rule, SIZE, stacked, words } from './block.ts';
import { closeBlock, noticeBlocks } from './close.ts';
import { flow, heightOf, type Page } from './flow.ts';
import { FOOT_HEIGHT, FOOT_LINE, foot, fullHead, shortHead } from './head.ts';
import { columnHeads, continuedHead, type JobColumns, jobBlocks, jobColumns } from './jobs.ts';
import { receiptBlocks } from './receipt.ts';
import { saidBlocks } from './said.ts';
import { MARGIN, PAGE, paragraph, type Setting, settingOf, space } from './setting.ts';
import type { Shaper } from './shape.ts';
import { SUMS_WIDTH, sumsBlock } from './sums.ts';
import type { Span } from './text.ts';

/** A whole paper as pages of text and rules, measured with the fonts, ready to draw. Sizes in points. */
export interface PaperLayout {
  readonly width: number;
  readonly height: number;
  readonly pages: readonly Page[];
}

/** Lays a paper out. Characters that no font has stand in `shaper.missing` afterwards: do not draw it then. */
export function layoutPaper(document: PaperDocument, shaper: Shaper): PaperLayout {
  const [width, height] = PAGE[document.size];
  const setting = settingOf(document, shaper);
  const jobs = document.kind === 'receipt' ? [] : document.jobs;
  const offered = document.kind === 'quote' ? document.offered : [];
  const columns = jobColumns(setting, [...jobs, ...offered]);
  const pages = flow([...fullHead(setting), ...middle(document, shaper, columns)], {
    margin: MARGIN,
    bottom: height - MARGIN - FOOT_HEIGHT,
    pageHead: (mark) => [
      shortHead(setting),
      ...(mark ? [columnHeads(setting, columns)] : []),
      ...(mark && !mark.heads ? [continuedHead(setting, mark)] : []),
    ],
  });
  return {
    width,
    height,
    pages: pages.map((page, index) => ({
      items: [...page.items, ...moved(foot(setting, index + 1, pages.length), MARGIN, height - MARGIN - FOOT_LINE)],
    })),
  };
}

function middle(document: PaperDocument, shaper: Shaper, columns: JobColumns): readonly Block[] {
  if (document.kind === 'receipt') {
    const setting = settingOf(document, shaper);
    return [...receiptBlocks(setting), ...noticeBlocks(setting)];
  }
  const setting = settingOf(document, shaper);
  return [
    ...story(setting),
    columnHeads(setting, columns),
    ...document.jobs.flatMap((job) => jobBlocks(setting, job, columns)),
    ...end(setting),
    ...(document.kind === 'quote' ? offeredJobs({ ...setting, document }, columns) : []),
    ...noticeBlocks(setting),
    ...closeBlock(setting),
  ];
}

/** What the customer says and what was found; on a credit note, what it corrects and why. */
function story(setting: Setting<QuotePaper | InvoicePaper | CreditNotePaper>): readonly Block[] {
  const { document, words: w, shaper, width } = setting;
  const spans: Span[] = [];
  if (document.kind === 'credit-note') {
    const { number, date } = document.corrects;
    spans.push({ text: `${w.corrects(String(number), setting.date(date))}. `, style: 'bold' });
    spans.push({ text: `${w.reason}: ${document.reason}`, style: 'body' });
  } else {
    if (document.complaint !== '')
      spans.push({ text: `${w.quotes[0]}${document.complaint}${w.quotes[1]} `, style: 'quoted' });
    if (document.found !== '') spans.push({ text: document.found, style: 'body' });
  }
  if (spans.length === 0) return [space(10)];
  return [space(9), ...paragraph(shaper, spans, { x: 0, width, size: SIZE.found, leading: 1.4 }), space(6)];
}

/** The sums, kept together at the right; beside them, as far as they reach, what was said and reached. */
function end(setting: Setting<QuotePaper | InvoicePaper | CreditNotePaper>): readonly Block[] {
  const { document, width } = setting;
  const sums = sumsBlock(setting);
  const opening = (height: number): Block => block(height, [rule(0, 0, width, 1.125)], { keep: true, lead: true });
  const right = moved(sums.items, width - SUMS_WIDTH, 0);
  if (document.kind === 'credit-note') return [opening(8), block(sums.height, right)];
  const said = saidBlocks({ ...setting, document }, width - SUMS_WIDTH - 30);
  let beside = 0;
  while (beside < said.length && (heightOf(said.slice(0, beside)) < sums.height || said[beside - 1]?.keep)) beside += 1;
  const left = stacked(said.slice(0, beside));
  return [
    opening(8),
    block(Math.max(left.height, sums.height), [...left.items, ...right]),
    ...said.slice(beside),
    space(8),
  ];
}

function offeredJobs(setting: Setting<QuotePaper>, columns: JobColumns): readonly Block[] {
  const { document, shaper, width, words: w } = setting;
  if (document.offered.length === 0) return [];
  const heading = paragraph(shaper, words(w.offered, 'head'), { x: 0, width, size: SIZE.section, after: 3 });
  return [
    ...heading.map((one) => ({ ...one, keep: true })),
    ...document.offered.flatMap((job) => jobBlocks(setting, job, columns)),
    space(8),
  ];
}
