import { wholeText } from '../figures.ts';
import type { SampleLabel } from '../seen.ts';
import { seenWords } from '../seen-words.ts';
import { paperWords } from '../words.ts';
import { setText, words } from './block.ts';
import type { PaperFonts } from './fonts.ts';
import type { PaperLayout } from './layout.ts';
import { makePdf } from './make-pdf.ts';
import type { Shaper } from './shape.ts';

/** Points a millimetre: 72 points an inch, 25.4 mm an inch. */
const MM = 72 / 25.4;
const WIDTH = 90 * MM;
const HEIGHT = 50 * MM;
const EDGE = 4 * MM;
const LARGE = 20;
/** Points: nothing is set smaller, and what does not fit at the first is tried at the others. */
const SMALL = [9, 8, 7] as const;

/** What stands on the label, line by line; the number on the bottle first. */
export function labelLines(label: SampleLabel): readonly string[] {
  const w = paperWords(label.language, label.dateForm);
  const seen = seenWords(label.language);
  const far = (distance: number) => `${wholeText(distance, label.currency)}\u00a0${label.distanceUnit}`;
  const run = [
    label.distance === null ? '' : seen.onFluid(far(label.distance)),
    label.mileage === null ? '' : seen.clock(far(label.mileage)),
  ];
  const joined = (parts: readonly string[]) => parts.filter((part) => part !== '').join(', ');
  return [
    label.label,
    joined([label.practice ? w.practice : '', label.garage]),
    joined([label.car.name, label.car.plate]),
    label.car.vin === '' ? '' : w.vin(label.car.vin),
    joined([label.unit, label.serial === '' ? '' : seen.serial(label.serial)]),
    label.fluid,
    joined(run),
    seen.drawn(w.date(label.drawn, false), label.by),
  ].filter((line) => line !== '');
}

/** The label of a sample as the bytes of a PDF of 90 x 50 mm. Throws as makePdf does. */
export function labelPdf(label: SampleLabel, fonts: PaperFonts): Promise<Uint8Array> {
  const about = { title: label.label, author: label.garage, language: label.language, at: label.madeAt };
  return makePdf((shaper) => layoutLabel(labelLines(label), shaper), about, fonts);
}

function layoutLabel([number = '', ...lines]: readonly string[], shaper: Shaper): PaperLayout {
  const width = WIDTH - 2 * EDGE;
  const large = setText(shaper, words(number, 'bold'), { x: EDGE, y: EDGE, width, size: LARGE, leading: 1.15 });
  const set = (size: number) => {
    let y = EDGE + large.height;
    const items = lines.flatMap((line) => {
      const one = setText(shaper, words(line), { x: EDGE, y, width, size, leading: 1.2 });
      y += one.height;
      return one.items;
    });
    return { items, fits: y <= HEIGHT - EDGE / 2 };
  };
  const tried = SMALL.map(set);
  const small = tried.find(({ fits }) => fits) ?? tried.at(-1);
  return { width: WIDTH, height: HEIGHT, pages: [{ items: [...large.items, ...(small?.items ?? [])] }] };
}
