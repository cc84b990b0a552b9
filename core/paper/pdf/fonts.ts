/** The faces that papers are set in. */
export const FACES = ['head', 'figure', 'italic', 'body', 'bold', 'slanted', 'spare', 'spareBold'] as const;
export type Face = (typeof FACES)[number];

/** The bytes of one TrueType file a face. Keep the arrays: what is worked out of them is remembered by identity. */
export type PaperFonts = Readonly<Record<Face, Uint8Array>>;

/**
 * Which file to hand in for which face, as paths inside the packages `@expo-google-fonts/besley` 0.4.1,
 * `/sofia-sans` 0.4.3 and `/source-sans-3` 0.4.1 (all SIL OFL 1.1). A caller on Node reads them once:
 * `readFileSync(require.resolve(PAPER_FONT_FILES.head))`; the core itself reads no files.
 */
export const PAPER_FONT_FILES: Readonly<Record<Face, string>> = {
  head: '@expo-google-fonts/besley/700Bold/Besley_700Bold.ttf',
  figure: '@expo-google-fonts/besley/400Regular/Besley_400Regular.ttf',
  italic: '@expo-google-fonts/besley/400Regular_Italic/Besley_400Regular_Italic.ttf',
  body: '@expo-google-fonts/sofia-sans/400Regular/SofiaSans_400Regular.ttf',
  bold: '@expo-google-fonts/sofia-sans/700Bold/SofiaSans_700Bold.ttf',
  slanted: '@expo-google-fonts/sofia-sans/400Regular_Italic/SofiaSans_400Regular_Italic.ttf',
  spare: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  spareBold: '@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf',
};

/** How a text is meant; the faces behind it are tried in order until one has every character. */
export type Style = 'head' | 'figure' | 'quoted' | 'body' | 'bold';

/** Besley has no Greek, Cyrillic or Vietnamese, Sofia Sans no Vietnamese and few signs: hence the second and third. */
export const FACES_OF_STYLE: Readonly<Record<Style, readonly Face[]>> = {
  head: ['head', 'bold', 'spareBold'],
  figure: ['figure', 'body', 'spare'],
  quoted: ['italic', 'slanted', 'spare'],
  body: ['body', 'spare'],
  bold: ['bold', 'spareBold'],
};

/**
 * Sofia Sans: figures of equal width, for columns, and set 01, the shapes of Cyrillic that most of its readers know (its
 * plain ones are the Bulgarian). Neither on Besley, whose bold zero has the wrong weight with the first and whose set 01
 * is another R.
 */
const SOFIA = { tnum: true, ss01: true } as const;

/** What is switched on in each face. */
export const FEATURES_OF_FACE: Readonly<Record<Face, Readonly<Record<string, boolean>>>> = {
  head: {},
  figure: {},
  italic: {},
  body: SOFIA,
  bold: SOFIA,
  slanted: SOFIA,
  spare: {},
  spareBold: {},
};

/** A paper holds characters that none of the fonts can show. Nothing was drawn: no silent boxes. */
export class PaperCharacterMissing extends Error {
  /** Each such character once, in the order met. */
  readonly characters: readonly string[];

  constructor(characters: readonly string[]) {
    super(`No font on papers has: ${characters.join(' ')}`);
    this.name = 'PaperCharacterMissing';
    this.characters = characters;
  }
}
