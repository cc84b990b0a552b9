import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { loadFaces } from '../../core/paper/pdf/paper-pdf.ts';
import { Shaper } from '../../core/paper/pdf/shape.ts';
import { JoinedStatements, layoutStatement } from '../../core/paper/pdf/statement-pdf.ts';
import { loadFonts } from '../../db/pdf.ts';
import { LONG } from '../paper/statements.ts';
import { barePdf } from './bare-pdf.ts';

/**
 * `node thousand-pages.ts ours | bare`: a thousand pages of statements in one file, by the program or by pdfkit, and
 * what it took as JSON. pdfkit only draws: the time of laying out is taken off.
 */
const fonts = loadFonts();
const faces = await loadFaces(fonts);
const of = (n: number) => ({ ...LONG, to: [`Fleet ${n}`, ...LONG.to.slice(1)] });
const each = layoutStatement(of(0), new Shaper(faces, 1)).pages.length;
const count = Math.ceil(1000 / each);

let took = 0;
if (process.argv[2] === 'ours') {
  const from = performance.now();
  const joined = await JoinedStatements.start(fonts);
  for (let n = 0; n < count; n++) joined.add(of(n));
  await joined.pdf();
  took = performance.now() - from;
} else {
  const { width, height } = layoutStatement(of(0), new Shaper(faces, 1));
  let laying = 0;
  function* pages() {
    for (let n = 0; n < count; n++) {
      const before = performance.now();
      const laid = layoutStatement(of(n), new Shaper(faces, 1)).pages;
      laying += performance.now() - before;
      yield* laid;
    }
  }
  const from = performance.now();
  await barePdf({ width, height, pages: pages() }, fonts);
  took = performance.now() - from - laying;
}
// Of this program alone: what the process was before it began counts in its resource usage.
const peak = Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1] ?? Number.NaN) / 1024;
console.log(JSON.stringify({ pages: count * each, ms: took, peak: Math.round(peak) }));
