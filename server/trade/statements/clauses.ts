/** The clauses of a text, as they end with signs, brackets and lines, and words with the units in brackets behind them. */
export function clausesOf(text: string): string[] {
  const clauses = text
    .split(/[.!?;,](?=\s|$)|[\n\r()[\]]/u)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '');
  return [...clauses.flatMap(joinedUnits), ...unitsInBrackets(text)];
}

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
