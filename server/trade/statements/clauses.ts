/** The clauses that statements are looked for in, those with words in brackets left out behind them, and units that stand in brackets. */
export function clausesOf(written: string): string[] {
  const text = written.replace(besideNumber, ' ');
  // What stands in brackets behind a word may be another for the same: `Anslag (velocity) är 1–100`.
  const whole = text.replace(wordInBrackets, ' ');
  const clauses = [text, ...(whole === text ? [] : [whole])].flatMap((one) =>
    one
      .split(/[.!?;,](?=\s|$)|[\n\r()[\]。、，；]/u)
      .map((clause) => clause.trim())
      .filter((clause) => clause !== ''),
  );
  return [...clauses.flatMap(joinedUnits), ...unitsInBrackets(text)];
}

/** Where a number stands beside a word of a script that writes no blanks. */
const besideNumber =
  /(?<=[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}ー])(?=\d)|(?<=\d)(?=[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}])/gu;
const wordInBrackets = /\s*[(（][\p{L} ]{2,40}[)）]/gu;

const inUnit = String.raw`\p{L}+ (?:in|en|em|i|w|v|в) \p{L}+`;
const joined = new RegExp(
  String.raw`(?<=(?<!\p{L})${inUnit}) (?:and|und|et|y|e|en|och|og|i|a|и) (?=(?:\p{L}+ ){0,3}${inUnit}(?!\p{L}))`,
  'u',
);

/** Clauses that give a unit each, put side by side as `coarse in semitones and fine in cents`. */
function joinedUnits(clause: string): string[] {
  return clause.split(joined);
}

/** Words with the unit that stands in brackets behind them, as `levels dB` of `levels (dB) and tunings (cents, added)`. */
function unitsInBrackets(text: string): string[] {
  return Array.from(
    text.matchAll(/(\p{L}{2,})\s*[([]\s*(\p{L}{1,12}|%)\s*[,;)\]]/gu),
    ([, word, unit = '']) => `${word} ${unit}`,
  );
}
