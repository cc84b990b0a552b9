import { expect, test } from 'vitest';
import type { LetterDocument } from '../../core/paper/letter.ts';
import { letterPdf } from '../../core/paper/pdf/letter-pdf.ts';
import { PaperCharacterMissing } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS as fonts } from './fonts.ts';
import { inkIn, rasterise, readPages, textOf } from './read-back.ts';

const letter: LetterDocument = {
  ...{ practice: true, language: 'en', size: 'A4', date: '2026-11-25', writtenAt: 1_795_600_000_000 },
  garage: {
    ...{ name: 'Saltmarsh Motor Works', address: ['14 Causeway Road', 'Port Ansel'], phone: '555-0100', email: '' },
    ...{ registration: '', taxNumber: '', logo: null },
  },
  to: ['Per Halloran', 'Quay 4', 'Port Ansel'],
  subject: 'OYB 902: Gear oil',
  text: 'Hello Per Halloran,\n\nthis comes up: Gear oil.\nRing us.',
};

test('a letter reads back whole, in its order, and says that it is practice', async () => {
  const [page] = await readPages(await letterPdf(letter, fonts));
  const text = textOf(page ?? []);
  expect(text).toMatch(
    /Practice[\s\S]*Saltmarsh Motor Works[\s\S]*Per Halloran\nQuay 4\nPort Ansel\n25 Nov 2026\nOYB 902: Gear oil\nHello Per Halloran,\nthis comes up: Gear oil.\nRing us.$/,
  );
});

test('its letters are drawn, not only there to be read', async () => {
  const bytes = await letterPdf({ ...letter, practice: false }, fonts);
  const [page] = await readPages(bytes);
  const subject = page?.find((item) => item.text.includes('Gear oil'));
  const raster = await rasterise(bytes, 1, 2);
  const top = raster.height - ((subject?.y ?? 0) + 9) * 2;
  expect(inkIn(raster, 80, top, 350, top + 22)).toBeGreaterThan(300);
});

test('a long letter goes on over the page; the same letter is the same bytes', async () => {
  const long = { ...letter, text: Array.from({ length: 80 }, (_, n) => `Line ${n}`).join('\n') };
  const bytes = await letterPdf(long, fonts);
  const pages = await readPages(bytes);
  expect(pages).toHaveLength(2);
  expect(textOf(pages[1] ?? [])).toMatch(/Line 79$/);
  expect(Buffer.from(await letterPdf(long, fonts)).equals(Buffer.from(bytes))).toBe(true);
});

test('a character that no font has is refused by name, never drawn as a box', async () => {
  await expect(letterPdf({ ...letter, text: 'Grüße 車' }, fonts)).rejects.toThrow(PaperCharacterMissing);
});
