import { createHash } from 'node:crypto';

const STYLE = `:root{--desk:#DAD9D0;--paper:#FCF9F0;--ink:#1F211C;--ink-2:#46473F;--rule:#7B7768;--field:#FFFEFA;--go:#14573F;--on-go:#FFF}
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

/** A page of words that is not the window itself: paper on the desk, its one style inside it, no script. */
export const plainPage = (title: string, inside: string): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Crownwheel: ${safe(title)}</title><link rel="icon" href="data:,"><style>${STYLE}</style><main><h1>${safe(title)}</h1>${inside}</main></html>`;

/** Everything that such a page may do: its own style, known by its hash, and its own form. */
export const PLAIN_POLICY = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'; img-src data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'`;

/** Text as it stands in a page. */
export const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.codePointAt(0)};`);
