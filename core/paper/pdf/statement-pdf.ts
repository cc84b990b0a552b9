import type { StatementDocument } from '../statement.ts';
import { statementName, statementWords } from '../statement-words.ts';
import { type Block, block, type JobMark, moved, rule, setText } from './block.ts';
import { flow, type Page } from './flow.ts';
import { PaperCharacterMissing, type PaperFonts } from './fonts.ts';
import { FOOT_HEIGHT, FOOT_LINE, garageHead, practiceMark } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { makePdf } from './make-pdf.ts';
import { loadFaces } from './paper-pdf.ts';
import { MARGIN, PAGE } from './setting.ts';
import { type OpenFaces, Shaper } from './shape.ts';
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
 * Several statements as one file, each from a page of its own on; the pages of each are counted alone. They are laid out one by
 * one, so that whoever makes them can stop in between.
 */
export class JoinedStatements {
  readonly #fonts: PaperFonts;
  readonly #faces: OpenFaces;
  #first: StatementDocument | null = null;
  #size = { width: 0, height: 0 };
  #pages: Page[] = [];
  #count = 0;

  private constructor(fonts: PaperFonts, faces: OpenFaces) {
    this.#fonts = fonts;
    this.#faces = faces;
  }

  static async start(fonts: PaperFonts): Promise<JoinedStatements> {
    return new JoinedStatements(fonts, await loadFaces(fonts));
  }

  /** How many are in the file so far. */
  get count(): number {
    return this.#count;
  }

  /** Puts one behind the others. Throws PaperCharacterMissing and leaves it out; RangeError as flow does. */
  add(document: StatementDocument): void {
    const shaper = new Shaper(this.#faces, 1);
    // One file has one size of paper.
    const { width, height, pages } = layoutStatement({ ...document, size: (this.#first ?? document).size }, shaper);
    if (shaper.missing.length > 0) throw new PaperCharacterMissing(shaper.missing);
    this.#first ??= document;
    this.#size = { width, height };
    this.#pages.push(...pages);
    this.#count += 1;
  }

  /** The bytes of what was added, and begins anew. The same statements give the same bytes. Throws RangeError for none. */
  async pdf(): Promise<Uint8Array> {
    const first = this.#first;
    if (!first) throw new RangeError('No statement to join');
    const layout = { ...this.#size, pages: this.#pages };
    const { language, until, garage, asOfInstant } = first;
    this.#first = null;
    this.#pages = [];
    this.#count = 0;
    const title = `${statementWords(language).title} ${until}`;
    return makePdf(() => layout, { title, author: garage.name, language, at: asOfInstant }, this.#fonts);
  }
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
