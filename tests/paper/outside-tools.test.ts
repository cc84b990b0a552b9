import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS } from './fonts.ts';
import { LONG_INVOICE } from './long-invoice.ts';
import { CREDIT_NOTE, INVOICE, QUOTE, RECEIPT } from './papers.ts';

const PAPERS = { invoice: INVOICE, quote: QUOTE, credit: CREDIT_NOTE, receipt: RECEIPT, long: LONG_INVOICE };
const names = Object.keys(PAPERS);
const present = (tool: string, ask: string): boolean => spawnSync(tool, [ask]).error === undefined;

describe('papers before programs that are not ours', () => {
  let folder = '';
  const file = (name: string): string => join(folder, `${name}.pdf`);

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'paper-'));
    for (const [name, document] of Object.entries(PAPERS)) writeFileSync(file(name), await paperPdf(document, FONTS));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.for(names)('qpdf finds nothing wrong with the %s', (name, { skip }) => {
    if (!present('qpdf', '--version')) skip('qpdf is not installed');
    const { status, stdout, stderr } = spawnSync('qpdf', ['--check', file(name)], { encoding: 'utf8' });
    expect(status, `${stdout}${stderr}`).toBe(0);
    expect(stderr).toBe('');
  });

  it('pdftotext reads words and sums in their order', ({ skip }) => {
    if (!present('pdftotext', '-v')) skip('pdftotext is not installed');
    const { stdout } = spawnSync('pdftotext', ['-layout', file('invoice'), '-'], { encoding: 'utf8' });
    const text = stdout.replace(/[ \u00a0]+/g, ' ');
    for (const part of [
      'Swap the differential for a rebuilt unit 2,750.00',
      'Gear oil 75W-90 synthetic 1.2 L 31.50 37.80',
      'Sales tax 6.25 % on 1,994.90 124.68',
      'Deposit, card, 18 Nov −500.00',
    ])
      expect(text).toContain(part);
    expect(text.indexOf('Find the whine')).toBeLessThan(text.indexOf('Left output seal'));
    expect(text).toMatch(/To pay US\$ 2,621\.58/);
  });

  it('pdffonts sees every font embedded, in part, with its characters', ({ skip }) => {
    if (!present('pdffonts', '-v')) skip('pdffonts is not installed');
    const { stdout } = spawnSync('pdffonts', [file('long')], { encoding: 'utf8' });
    const rows = stdout.trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThanOrEqual(4);
    for (const row of rows) expect(row).toMatch(/CID TrueType\s+Identity-H\s+yes yes yes/);
  });
});
