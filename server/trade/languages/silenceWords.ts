/** Words for no sound at all, in the languages of the trade, as a part of a pattern. */
const silence = String.raw`(?:silent|silence|inaudible|no sound|stumm|lautlos|stille|unh\u00f6rbar|muette?|silencieu\p{L}+|silencio\p{L}*|silenzio\p{L}*|muto|mudo|inaudib\p{L}+|stil(?:te)?|tyst(?:nad)?|lydl\u00f8s|\u00e4\u00e4net\u00f6n|hiljai\p{L}+|cisza|ticho|тишин\p{L}|без звука)(?!\p{L})|無音|静音|무음`;
const zero = String.raw`(?<![\d.,])0(?:[.,]0+)?(?![\d.,]*\d)\s*%?`;

/** What says that nothing sounds at 0, as levels have it: `0 (silent)`, `0 = silence`, `silent at 0`. */
const silentAtNone = new RegExp(
  String.raw`${zero}\s*(?:[(=:,\u2013\u2014-]|->|\u2192|(?:is|means|for|ist|hei\u00dft|est|es|\u00e8|\u00e9|betekent|\u00e4r|er|to|je)(?!\p{L}))?\s*(?:muted?(?!\p{L})|${silence})|(?<!\p{L})(?:${silence})\s*(?:[(=]|at|bei|\u00e0|a|en|om)\s*${zero}`,
  'iu',
);

/** What has an amount of its own that may be none. */
const otherThings =
  /(?<!\p{L})(?:filter|cut-?off|reverb|hall|echo|delay|chorus|wet|dry|mix|send|modulat|lfo|tremol|envelope|h\u00fcllkurve|enveloppe|attack|decay|sustain|release)/iu;

/** Whether a text says that nothing sounds at 0: only levels have such a scale. */
export function isSilentAtNone(text: string): boolean {
  return silentAtNone.test(text) && !otherThings.test(text);
}
