import type { LetterDocument } from '../core/paper/letter.ts';
import { letterPdf } from '../core/paper/pdf/letter-pdf.ts';
import type { Context } from './context.ts';
import { loadFonts } from './pdf.ts';
import { settingsOf } from './people.ts';
import type { CustomerRow } from './tables.ts';

interface Letter {
  readonly customer: Pick<CustomerRow, 'name' | 'address'>;
  readonly language: 'en' | 'de';
  readonly subject: string;
  readonly text: string;
}

/** A letter of this shop to a customer, dated today, as the bytes of a PDF. It is not an issued paper and is kept nowhere. */
export function letterPdfOf(context: Context, { customer, language, subject, text }: Letter): Promise<Uint8Array> {
  const settings = settingsOf(context);
  const document: LetterDocument = {
    ...{
      practice: context.practice,
      language,
      dateForm: settings.dateForm,
      size: settings.paper,
      date: context.today,
      writtenAt: context.now,
    },
    garage: {
      ...{ name: settings.name, address: settings.address, phone: settings.phone, email: settings.email },
      ...{ registration: settings.registration, taxNumber: settings.taxNumber },
      logo: settings.logoPng === null ? null : { kind: 'png', base64: settings.logoPng },
    },
    to: [customer.name, ...(JSON.parse(customer.address) as string[])],
    subject,
    text,
  };
  return letterPdf(document, loadFonts());
}
