import { describe, expect, it } from 'vitest';
import type { InvoicePaper, PaperDocument } from '../../core/paper/document.ts';
import { PaperCharacterMissing, paperLayout, paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS } from './fonts.ts';
import { LONG_INVOICE } from './long-invoice.ts';
import { COMMON, CREDIT_NOTE, INVOICE, job, line, PICTURED_INVOICE, QUOTE, RECEIPT } from './papers.ts';
import { openPdf, readPages, textOf } from './read-back.ts';

const read = async (document: PaperDocument): Promise<readonly string[]> =>
  (await readPages(await paperPdf(document, FONTS))).map(textOf);
const everything = async (document: PaperDocument): Promise<string> => (await read(document)).join('\n');

const named = (name: string, title: string): InvoicePaper => ({
  ...INVOICE,
  billTo: [name],
  jobs: [job('A', title, 100, [line(title, 1000, 100, 100)])],
});
/** The same fonts as if just read: nothing about them is remembered. */
const copied = (): typeof FONTS =>
  Object.fromEntries(Object.entries(FONTS).map(([face, bytes]) => [face, bytes.slice()])) as typeof FONTS;

describe('papers read back by pdf.js', () => {
  it('the invoice of the picture fits one Letter page and holds what an invoice must', async () => {
    const pages = await read(PICTURED_INVOICE);
    expect(pages).toHaveLength(1);
    const text = pages.join('\n');
    for (const part of [
      'Invoice order 1186 1187',
      'Saltmarsh Motor Works',
      '14 Causeway Road, Port Ansel · 555-0100 · registered repairer PA-2207 · tax no. 00-5550100',
      'Ilse Vandermeer',
      'plate KTB 4471',
      'VIN 9ZCGT6R32GL005187',
      '61,480 mi in',
      '61,492 mi out',
      'issued 20 Nov 2026',
      '“It whines from the back over fifty, louder on the overrun.”',
      'B Swap the differential for a rebuilt unit 2,750.00',
      'Labour 6.2 h 128.00 793.60',
      'Rebuilt differential, exchange, RD-4127X 1 1,840.00 1,840.00',
      'Ring-gear bolt, M10 fine, new, RG-1012 12 4.85 58.20',
      'Gear oil 75W-90 synthetic 1.2 L 31.50 37.80',
      'Fennick Fluid Lab, outside work 1 42.00 42.00',
      'You said yes, Ilse Vandermeer',
      '17 Nov, 16:43 by phone 555-0142, A, up to 180.00',
      'Ring-gear bolts, 12, cross pattern: 85 N·m (63 lbf·ft)',
      'page 1 of 1',
    ])
      expect(text).toContain(part);
    for (const sum of ['Labour, 7.5 h', 'Sales tax 6.25 % on 1,994.90', '124.68', '3,121.58', '−500.00', '2,621.58'])
      expect(text).toContain(sum);
    expect(text).not.toContain('Practice');
  });

  it('an invoice tells what was declined, the unsafe first word bold, and what the owner let pass', async () => {
    const text = await everything({
      ...INVOICE,
      overrides: [{ what: 'Mileage out', reason: 'The dash was out for repair', by: 'Ottoline Brack' }],
    });
    expect(text).toContain('Unsafe. 20 Nov, Rear brake hoses, 186.00. Cracked to the cords:');
    expect(text).toContain('Mileage out: The dash was out for repair (Ottoline Brack)');
    expect(text).toContain('Next due. Rear axle oil: at 62,500 mi.');
    const { layout } = await paperLayout(INVOICE, FONTS);
    const unsafe = layout.pages
      .flatMap((page) => page.items)
      .find((one) => one.kind === 'text' && one.text.startsWith('Unsafe.'));
    expect(unsafe?.kind === 'text' && unsafe.pieces[0]?.shaped.face).toBe('bold');
  });

  it('two people who said yes are both named, each on the line of theirs', async () => {
    const yes = INVOICE.yes.map((one, index) => (index === 1 ? { ...one, name: 'Bo Vandermeer' } : one));
    const text = await everything({ ...INVOICE, yes });
    expect(text).toContain('18 Nov, 11:32 by message, Bo Vandermeer, B, C,');
    expect(text).toContain('17 Nov, 16:43 by phone 555-0142, Ilse Vandermeer, A,');
  });

  it('a quote has its version, its end, what is offered beside the sum, and a line to sign', async () => {
    const text = await everything(QUOTE);
    for (const part of [
      'Quote version 2, order 1186 412',
      'holds until 18 Dec 2026',
      'Offered, not in the sum',
      'Rear brake hoses 186.00',
      'Please show me the old parts.',
    ])
      expect(text).toContain(part);
    expect(text).toContain('I say yes to this work');
  });

  it('a credit note names the invoice that it corrects and why', async () => {
    const text = await everything(CREDIT_NOTE);
    for (const part of [
      'Credit note order 1186 31',
      'Corrects invoice 1187 of 20 Nov 2026. Reason: Two ring-gear bolts',
      'Credited US$ 10.31',
      'Taken off what is still to pay on invoice 1187.',
    ])
      expect(text).toContain(part);
  });

  it('a receipt tells what came in, for what, and the rest', async () => {
    const text = await everything(RECEIPT);
    for (const part of [
      'Payment received US$ 2,000.00',
      'Cash, for invoice 1187 of 20 Nov 2026, total 3,121.58',
      'Still to pay US$ 611.27',
    ])
      expect(text).toContain(part);
    const deposit = await everything({
      ...RECEIPT,
      what: 'deposit',
      invoice: null,
      balance: null,
      cash: null,
      method: 'card',
    });
    expect(deposit).toContain('Deposit received US$ 2,000.00');
    expect(deposit).toContain('Card, for order 1186');
    expect(deposit).not.toContain('Still to pay');
  });

  it('prices that hold the tax name it after the total', async () => {
    const sums = {
      ...INVOICE.sums,
      prices: 'inclusive',
      taxes: [{ name: 'VAT', ratePpm: 200000, base: 120000, amount: 20000 }],
      net: 100000,
      tax: 20000,
      total: 120000,
    } as const;
    const text = await everything({ ...INVOICE, sums, taken: [], toPay: 120000 });
    expect(text).toContain('of it VAT 20 %, in 1,200.00 200.00');
    expect(text.indexOf('Total')).toBeLessThan(text.indexOf('of it VAT'));
    const quote = await everything({ ...QUOTE, sums });
    expect(quote).toContain('Total US$ 1,200.00');
    expect(quote.indexOf('Total US$')).toBeLessThan(quote.indexOf('of it VAT'));
  });

  it('a job at one price shows its lines without amounts; what is given says so', async () => {
    const fixed = { ...job('A', 'Service', 19900, [line('Oil filter', 1000, 1870, 0)]), fixedPrice: true };
    const given = job('B', 'Bulb', 0, [line('Bulb', 1000, 450, 0, { given: true })]);
    const text = await everything({ ...INVOICE, jobs: [fixed, given] });
    expect(text).toContain('A Service 199.00\nOil filter 1\n');
    expect(text).toContain('Bulb 1 4.50 0.00\nno charge');
  });

  it('German words and figures', async () => {
    const text = await everything({
      ...CREDIT_NOTE,
      language: 'de',
      size: 'A4',
      practice: true,
      currency: { code: 'EUR', sign: '€', digits: 2, decimal: ',', group: '.' },
      jobs: [
        job('A', 'Getriebe überholt', 123456789, [line('Sonnenrad', 1500, 123456789, 123456789, { condition: 'new' })]),
      ],
    });
    for (const part of [
      'Übung',
      'Rechnungskorrektur',
      'Berichtigt die Rechnung 1187 vom 20.11.2026.',
      'Sonnenrad, neu 1,5 1.234.567,89 1.234.567,89',
      'Gutgeschrieben',
      'Seite 1 von 1',
    ])
      expect(text).toContain(part);
  });
});

describe('every character', () => {
  it.each([
    ['Łucja Grzęda Îşık Đorđe', 'Œil-de-chat réglé, ½ tour'],
    ['Ελένη Παπαγεωργίου', 'Αλλαγή λαδιών'],
    ['Юлія Ґалаґан', 'Замена масла'],
    ['Nguyễn Thị Ánh', 'Thay dầu cầu sau'],
  ])('%s and %s are read back as written, in headings too', async (name, title) => {
    const text = await everything(named(name, title));
    expect(text).toContain(name);
    expect(text.split(title).length - 1).toBe(2);
  });

  it('letters written with separate accents come back composed', async () => {
    expect(await everything(named('Rene\u0301e', 'x'))).toContain('Renée');
  });

  it('a character no font has is said, and nothing is drawn', async () => {
    const failure = paperPdf(named('Sōta 田中', 'Oil 🛢'), FONTS);
    await expect(failure).rejects.toBeInstanceOf(PaperCharacterMissing);
    await expect(failure).rejects.toMatchObject({ characters: ['田', '中', '🛢'] });
  });
});

describe('the file', () => {
  it('is the same bytes every time, whatever was drawn between', async () => {
    const first = await paperPdf(INVOICE, FONTS);
    await paperPdf(LONG_INVOICE, FONTS);
    await paperPdf({ ...QUOTE, language: 'de' }, FONTS);
    expect(Buffer.compare(first, await paperPdf(INVOICE, FONTS))).toBe(0);
    expect(Buffer.compare(first, await paperPdf(INVOICE, copied()))).toBe(0);
  });

  it('is the same even where earlier papers used other characters of the same shape', async () => {
    // Source Sans 3 has one glyph for hyphen and no-break hyphen, and one for space and no-break space.
    const plain = named('ệ-ệ ệ', 'Ệ-Ệ Ệ');
    const used = copied();
    await paperPdf(named('ệ\u2011ệ\u00a0ệ', 'Ệ\u2011Ệ\u00a0Ệ'), used);
    const after = await paperPdf(plain, used);
    expect(Buffer.compare(after, await paperPdf(plain, copied()))).toBe(0);
    expect((await read(plain)).join('')).toContain('ệ-ệ ệ');
  });

  it('names its title, author, language and date, all from the document', async () => {
    const { info } = await (await openPdf(await paperPdf({ ...INVOICE, practice: true }, FONTS))).getMetadata();
    expect(info).toMatchObject({ Title: 'Practice: Invoice 1187', Author: COMMON.garage.name, Language: 'en' });
    expect(info).toMatchObject({ CreationDate: 'D:20261120221500Z', ModDate: 'D:20261120221500Z' });
  });

  it('takes a PNG as the mark of the garage', async () => {
    // One black pixel.
    const base64 = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==';
    const garage = { ...COMMON.garage, logo: { kind: 'png', base64 } } as const;
    const pages = await read({ ...RECEIPT, garage });
    expect(pages.join('')).toContain('Receipt');
  });
});
