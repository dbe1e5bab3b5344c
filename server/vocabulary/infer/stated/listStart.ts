/** What is said before the number that counting starts with, and words for the numbers 0 and 1; from memory. */
const start =
  /(?:^|[^\p{L}\d])(?:from|with|at|ab|von|bei|mit|depuis|partir de|desde|de|da|vanaf|från|fra|od|с)\s+(0|1|zero|one|null|eins|z[eé]ro|un|cero|uno|nul|een|noll|ett|jeden)(?![\p{L}\d]|[.,:]\d)/iu;
const zeros = /^(?:0|zero|null|z[eé]ro|cero|nul|noll)$/i;
const counts =
  /\bcount|\bnumber|\bposition|\bindex|\bindices|z[äa]hl|nummer|num[eé]r|compt[eé]|cont[aá]|tell|räkn/iu;

/**
 * From which number positions in a list are counted, 0 or 1, where a comment says so that speaks of the list by one of some names
 * and of the place that refers to it, where one is given; else `undefined`.
 */
export function listStartIn(
  comments: readonly string[],
  names: readonly string[],
  place?: string,
): 0 | 1 | undefined {
  for (const comment of comments) {
    const words = new Set(comment.toLowerCase().match(/[\p{L}\d_-]+/gu));
    const speaksOf = (name: string) => {
      const lower = name.toLowerCase();
      return [lower, `${lower}s`, lower.replace(/s$/, '')].some((one) => words.has(one));
    };
    if (!names.some(speaksOf) || (place !== undefined && !words.has(place.toLowerCase()))) continue;
    for (const sentence of comment.split(/[;\n]|\.\s/)) {
      const found = counts.test(sentence) ? start.exec(sentence)?.[1] : undefined;
      if (found !== undefined) return zeros.test(found) ? 0 : 1;
    }
  }
  return undefined;
}
