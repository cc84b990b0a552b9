/** Who may, as the command line says it. */
const NEEDS: Readonly<Record<string, string>> = {
  crew: 'anybody of the garage may',
  desk: "the desk's or the owner's code does",
  owner: "the owner's code does",
};

/** Why something is not allowed, and what would be, as one sentence. */
export function sayNotAllowed(why: string, figures: Readonly<Record<string, string | number>> = {}): string {
  const needs = NEEDS[String(figures.needs)];
  switch (why) {
    case 'role':
      return `This code does not open that${needs === undefined ? '' : `: ${needs}`}.`;
    case 'sign-in':
      return `Say who calls with --as NAME${needs === undefined ? '' : `: ${needs}`}.`;
    case 'code':
      return 'That is not the right code.';
    case 'no-code':
      return `There is no code for ${figures.person}: give it in SHOP_CODE or on standard input.`;
    case 'others-clock':
      return "That is somebody else's clock: they themselves or the owner may see to it.";
    case 'last-owner':
      return 'There must be an owner: make somebody else the owner first.';
    default:
      return 'That is not allowed.';
  }
}
