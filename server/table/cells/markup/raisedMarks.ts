/** A raised mark behind the name of a file, as of a footnote. */
const raised =
  /(\.\w{2,4}(?:<\/\w{1,6}>|['*\x60"\]]){0,4}\s?)<sup(?:\s[^<>]{0,80})?>\s{0,9}(?:(\d{1,2})|([*\u2020\u2021\u00a7])|(\p{L}))\s{0,9}<\/sup>/giu;
const digits = '\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079';

/** A text with marks that tags raise behind names of files, `a.wav<sup>1</sup>`, in signs that tell them from these, `a.wav¹`. */
export function withRaisedMarks(text: string): string {
  if (!/<sup/i.test(text)) return text;
  return text.replace(
    raised,
    (_, before: string, number: string | undefined, sign: string | undefined, letter = '') =>
      `${before}${number?.replace(/\d/g, (digit) => digits[Number(digit)]) ?? sign ?? ` (${letter})`}`,
  );
}
