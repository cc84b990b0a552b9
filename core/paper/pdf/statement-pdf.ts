import type { StatementDocument } from '../statement.ts';
import { statementName, statementWords } from '../statement-words.ts';
import { type Block, block, type JobMark, moved, rule, setText } from './block.ts';
import { flow } from './flow.ts';
import type { PaperFonts } from './fonts.ts';
import { FOOT_HEIGHT, FOOT_LINE, garageHead, practiceMark } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { makePdf } from './make-pdf.ts';
import { MARGIN, PAGE } from './setting.ts';
import type { Shaper } from './shape.ts';
import { facts, foot, shortHead, titleRow } from './statement/head.ts';
import { carriedRow, MOVES, moveBlocks, moveHeads, sumsBlock } from './statement/moves.ts';
import { OPEN, openBlocks, openHeads } from './statement/open.ts';
import { type StatementSetting, statementSetting } from './statement/setting.ts';

const SIZE_CLOSE = 9.45;

/** A statement as the bytes of a PDF; the same statement gives the same bytes. Throws as makePdf does. */
export const statementPdf = (document: StatementDocument, fonts: PaperFonts): Promise<Uint8Array> =>
  makePdf(
    (shaper) => layoutStatement(document, shaper),
    {
      title: statementName(document),
      author: document.garage.name,
      language: document.language,
      at: document.asOfInstant,
    },
    fonts,
  );

/**
 * Several statements as one file, each from a page of its own on; the pages of each are counted alone. Throws as makePdf
 * does, RangeError where there is none.
 */
export function joinedStatementsPdf(documents: readonly StatementDocument[], fonts: PaperFonts): Promise<Uint8Array> {
  const [first] = documents;
  if (!first) throw new RangeError('No statement to join');
  const { language, until, garage, asOfInstant } = first;
  return makePdf(
    (shaper) => {
      // One file has one size of paper.
      const layouts = documents.map((document) => layoutStatement({ ...document, size: first.size }, shaper));
      const [one] = layouts;
      return { width: one?.width ?? 0, height: one?.height ?? 0, pages: layouts.flatMap(({ pages }) => pages) };
    },
    { title: `${statementWords(language).title} ${until}`, author: garage.name, language, at: asOfInstant },
    fonts,
  );
}

/** The pages of a statement before they are drawn. */
export function layoutStatement(document: StatementDocument, shaper: Shaper): PaperLayout {
  const [width, height] = PAGE[document.size];
  const setting = statementSetting(document, shaper);
  const blocks = [
    ...(document.practice ? [practiceMark(setting)] : []),
    garageHead(setting),
    titleRow(setting),
    facts(setting),
    ...moveBlocks(setting),
    ...sumsBlock(setting),
    ...openBlocks(setting),
    closeBlock(setting),
  ];
  const pages = flow(blocks, {
    margin: MARGIN,
    bottom: height - MARGIN - FOOT_HEIGHT,
    pageHead: (mark) => [shortHead(setting), ...tableAgain(setting, mark)],
  });
  return {
    width,
    height,
    pages: pages.map((page, at) => ({
      items: [...page.items, ...moved(foot(setting, at + 1, pages.length), MARGIN, height - MARGIN - FOOT_LINE)],
    })),
  };
}

/** A page that begins inside a table names its columns again, and what stood before. */
function tableAgain(setting: StatementSetting, mark: JobMark | null): readonly Block[] {
  if (mark?.letter === MOVES) return [moveHeads(setting), carriedRow(setting, mark)];
  return mark?.letter === OPEN ? [openHeads(setting)] : [];
}

/** How to pay, at the foot of the last page. */
function closeBlock({ document, said, shaper, width }: StatementSetting): Block {
  const [bold, rest] = said.howToPay;
  const pay =
    document.open.length > 0
      ? [
          { text: `${bold} `, style: 'bold' as const },
          { text: rest, style: 'body' as const },
        ]
      : [{ text: said.nothingToPay, style: 'bold' as const }];
  const set = setText(shaper, [...pay, { text: `\n${said.doubt}`, style: 'body' }], {
    ...{ x: 0, y: 17, width, size: SIZE_CLOSE, leading: 1.4 },
  });
  return block(17 + set.height + 4, [rule(0, 10, width, 0.56), ...set.items], { atFoot: true });
}
