/** A header with the one end of its range that is written. */
export interface OneEnd {
  header: number;
  /** Infinite for one without either end. */
  number: number;
  /** The number of its own root key, where ranges of keys are looked at. */
  root: number | undefined;
}

/**
 * Ranges that follow each other, in the order of the text, parted where they start anew: each run goes the same way without a number
 * twice, and all have the same outermost one, the greatest high end or the least low one. Of ranges without either end one of a run stays, where it can be the outermost.
 */
export function runsOf(group: readonly OneEnd[], areHigh: boolean): OneEnd[][] {
  const written = group.filter(({ number }) => Number.isFinite(number));
  if (written.length === 0) return [];
  return runsIn(group, areHigh).map((run) => withOneOpen(run));
}

function runsIn(group: readonly OneEnd[], areHigh: boolean): OneEnd[][] {
  for (const direction of [1, -1]) {
    const runs: OneEnd[][] = [];
    for (const one of group) {
      const run = runs.at(-1);
      const last = run?.at(-1);
      if (!run || !last || (one.number - last.number) * direction < 0) runs.push([one]);
      else run.push(one);
    }
    const [first] = runs;
    const outermost = direction > 0 === areHigh ? -1 : 0;
    const areRuns = runs.every(
      (run) =>
        run.length > 1 &&
        new Set(run.map(({ number }) => number)).size === run.length &&
        run.at(outermost)?.number === first?.at(outermost)?.number,
    );
    if (areRuns && runs.length > 1) return runs;
  }
  return [[...group]];
}

/** A run without those of its ranges that have neither end, but for a single one that can be the outermost. */
function withOneOpen(run: OneEnd[]): OneEnd[] {
  const written = run.filter(({ number }) => Number.isFinite(number));
  const [open, ...others] = run.filter(({ number }) => !Number.isFinite(number));
  if (!open || others.length > 0) return written;
  const areRooted = written.every(({ root }) => root !== undefined);
  const isBeyond =
    open.root !== undefined &&
    written.every(({ number }) => ((open.root ?? number) - number) * Math.sign(open.number) > 0);
  const isAtEnd = run[0] === open || run.at(-1) === open;
  const canBe = areRooted ? isBeyond : open.root === undefined ? isAtEnd : isBeyond;
  return canBe ? run : written;
}
