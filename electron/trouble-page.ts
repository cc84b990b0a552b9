import type { ShopCopy } from '../db/file/backup.ts';
import { plainPage, safe } from './plain-page.ts';
import { sayCopy } from './words.ts';

interface Told {
  /** Why the shop cannot be opened, in words. */
  readonly why: string;
  /** The copies that can be brought back, newest first; none where that would not help. */
  readonly copies: readonly ShopCopy[];
  /** What went wrong with bringing one back, in words. */
  readonly wrong?: string;
}

/** The page that a browser shows in the window's place while the shop cannot be opened. */
export function troublePage({ why, copies, wrong }: Told): string {
  return plainPage(
    'The shop cannot be opened',
    `<p role="alert">${safe(why)}</p>${wrong === undefined ? '' : `<p role="alert"><b>${safe(wrong)}</b></p>`}
${copies.length === 0 ? '' : copiesForm(copies)}`,
  );
}

function copiesForm(copies: readonly ShopCopy[]): string {
  const choices = copies.map(
    (copy, place) =>
      `<label><input type="radio" name="copy" value="${safe(copy.name)}"${place === 0 ? ' checked' : ''}> ${safe(sayCopy(copy))}</label>`,
  );
  return `<form method="post" action="/bring-back">
<h2>Bring back a copy</h2>
<p>What was done after the copy is not in it. The shop as it is now is set aside, never written over.</p>
<fieldset><legend><small>Copies in this shop’s folder, the newest first</small></legend>${choices.join('\n')}</fieldset>
<label class="number">Last invoice number that you find on paper
<input type="text" name="lastInvoice" inputmode="numeric" pattern="[0-9]{1,12}" autocomplete="off"> <small>empty where there is none</small></label>
<button type="submit">Bring back this copy</button>
</form>`;
}

/** The page that says what was brought back, and leads into the shop. */
export function broughtBackPage(said: string, link: string): string {
  return plainPage(
    'The copy is in place',
    `<p role="status">${safe(said)}</p><p><a href="${safe(link)}">Open the shop</a></p>`,
  );
}
