/**
 * The number of single-character insertions, deletions, replacements and swaps of neighbours that turn one text into
 * another (optimal string alignment distance), or `most + 1` as soon as it is known to be larger than `most`.
 */
export function editDistance(from: string, to: string, most: number): number {
  if (Math.abs(from.length - to.length) > most) return most + 1;
  let before: number[] = [];
  let row = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    let least = i;
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let cost = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (same ? 0 : 1));
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        cost = Math.min(cost, before[j - 2] + 1);
      }
      next.push(cost);
      if (cost < least) least = cost;
    }
    if (least > most) return most + 1;
    before = row;
    row = next;
  }
  return Math.min(row[to.length], most + 1);
}

/**
 * The candidates that are spelt most like a word, the nearest first, letter case ignored. Those that differ in more
 * than a third of the word are left out.
 */
export function nearestWords(word: string, candidates: Iterable<string>, count: number): string[] {
  const lower = word.toLowerCase();
  const most = Math.max(1, Math.floor(word.length / 3));
  const found: { candidate: string; distance: number }[] = [];
  for (const candidate of candidates) {
    const distance = editDistance(lower, candidate.toLowerCase(), most);
    if (distance <= most) found.push({ candidate, distance });
  }
  return found
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map((one) => one.candidate);
}
