import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { loadFaces, paperLayout, paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { loadFonts } from '../../db/pdf.ts';
import { INVOICE, job, labour, line } from '../paper/papers.ts';
import { barePdf } from './bare-pdf.ts';
import { type Measured, measure } from './measure.ts';

/** Five jobs of four lines: two pages. */
const TWO_PAGES = {
  ...INVOICE,
  jobs: Array.from({ length: 5 }, (_, n) =>
    job(String.fromCharCode(65 + n), `Axle ${n + 1}: bearings and seals`, 61_880, [
      labour(2500, 32_000),
      line('Bearing kit', 2000, 11_200, 22_400, { partNumber: `BK-${2000 + n}`, condition: 'new' }),
      line('Shaft seal', 4000, 1340, 5360, { partNumber: 'SS-40-52-7' }),
      line('Hub nut', 2000, 1060, 2120, { condition: 'new' }),
    ]),
  ),
};

interface Run {
  readonly pages: number;
  readonly ms: number;
  /** Megabytes at the most. */
  readonly peak: number;
}

/** In a process of its own, so that its memory is its own. */
function run(which: 'ours' | 'bare'): Run {
  const ran = spawnSync(process.execPath, [join(import.meta.dirname, 'thousand-pages.ts'), which], {
    encoding: 'utf8',
  });
  if (ran.status !== 0) throw new Error(ran.stderr);
  return JSON.parse(ran.stdout);
}

/** What papers take: an invoice when the fonts are open, a thousand pages of statements. */
export async function paperRows(turns: number): Promise<Measured[]> {
  const fonts = loadFonts();
  await loadFaces(fonts);
  const { layout } = await paperLayout(TWO_PAGES, fonts);
  const invoice = await measure(
    { what: `an invoice of ${layout.pages.length} pages, warm`, limit: 'pdfkit, drawing only', goal: 0.9, turns },
    () => paperPdf(TWO_PAGES, fonts),
    () => barePdf(layout, fonts),
  );
  const [ours, bare] = [run('ours'), run('bare')];
  const pages = `${ours.pages} pages of statements`;
  return [
    invoice,
    {
      ...{ what: pages, limit: 'pdfkit, drawing only', ours: ours.ms, bare: bare.ms },
      ...{ ratio: ours.ms / bare.ms, goal: 0.6 },
    },
    {
      ...{ what: `${pages}, MB at the most`, limit: 'pdfkit', ours: ours.peak, bare: bare.peak },
      ...{ ratio: ours.peak / bare.peak, goal: 1 },
    },
  ];
}
