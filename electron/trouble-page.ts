import type { ShopCopy } from '../db/file/backup.ts';
import { sayCopy } from './words.ts';

/** Everything that this page may do: its one style sheet and its own form. */
export const TROUBLE_POLICY =
  "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

export const TROUBLE_STYLE = `:root{--desk:#DAD9D0;--paper:#FCF9F0;--ink:#1F211C;--ink-2:#46473F;--rule:#7B7768;--field:#FFFEFA;--go:#14573F;--on-go:#FFF}
@media (prefers-color-scheme:dark){:root{--desk:#151613;--paper:#22221D;--ink:#EEEBDF;--ink-2:#C9C6B8;--rule:#8C887A;--field:#1B1B17;--go:#7CC2A2;--on-go:#151613}}
body{margin:0;background:var(--desk);color:var(--ink);font:16px/1.4 "Sofia Sans","Noto Sans",sans-serif}
main{max-width:44rem;margin:10vh auto;padding:32px;background:var(--paper)}
h1{font:700 32px/1.15 Besley,Georgia,serif;margin:0 0 16px}
h2{font:700 22px/1.15 Besley,Georgia,serif;margin:32px 0 8px;padding-top:12px;border-top:2px solid var(--ink)}
p{margin:0 0 12px;overflow-wrap:anywhere}
fieldset{border:0;margin:0;padding:0}
label{display:block;padding:8px 0;border-bottom:1px solid var(--rule)}
label.number{border:0;margin-top:16px}
input[type=text]{font:inherit;color:inherit;background:var(--field);border:1px solid var(--rule);border-radius:3px;padding:6px 8px;width:10rem}
button{font:600 16px "Sofia Sans","Noto Sans",sans-serif;color:var(--on-go);background:var(--go);border:0;border-radius:4px;padding:10px 16px;margin-top:16px}
a{color:inherit;font-weight:600}input[type=radio]{accent-color:var(--ink)}
:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
small{color:var(--ink-2);font-size:14px}`;

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
  return page(
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
  return page(
    'The copy is in place',
    `<p role="status">${safe(said)}</p><p><a href="${safe(link)}">Open the shop</a></p>`,
  );
}

const page = (title: string, inside: string): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Crownwheel: ${safe(title)}</title><link rel="icon" href="data:,"><link rel="stylesheet" href="/trouble.css"><main><h1>${safe(title)}</h1>${inside}</main></html>`;

const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.codePointAt(0)};`);
