import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { mainSpan } from '../../model/text/span';
import { breaksBetween, lineEndAt, lineStartAt } from '../../model/text/textLayout';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, scopeRegions } from './selection';

/** Puts regions in the order of their keys, then of their velocities. */
export const sortRegions: Refactoring = {
  id: 'sortRegions',
  kind: 'refactor.rewrite',
  keeps: 'all but order',
  offer(selected) {
    const { instrument } = selected;
    return runsIn(selected).some((run) =>
      run.some((region, at) => at > 0 && order(instrument, run[at - 1], region) > 0),
    )
      ? 'Sort the regions by key, then by velocity'
      : undefined;
  },
  make(selected) {
    const { instrument } = selected;
    const text = instrument.sources[0]?.text ?? '';
    const edits: TextEdit[] = [];
    for (const run of runsIn(selected)) {
      const blocks = blocksOf(instrument, run);
      if (!blocks) continue;
      const sorted = [...run].sort((a, b) => order(instrument, a, b) || a - b);
      sorted.forEach((region, at) => {
        const { start, end } = blocks[at];
        const own = blocks[region - run[0]];
        if (run[at] !== region) edits.push(replacing(mainSpan(start, end), text.slice(own.start, own.end)));
      });
    }
    return edits.length > 0 ? { edits } : undefined;
  },
};

function order({ lowKey, highKey, lowVelocity, highVelocity }: Instrument, a: number, b: number): number {
  for (const values of [lowKey, lowVelocity, highKey, highVelocity]) {
    const difference = values[a] - values[b];
    if (difference !== 0) return difference;
  }
  return 0;
}

/** The regions of the selected scope, those that directly follow one another together. */
function runsIn(selected: SelectedDocument): number[][] {
  const { instrument } = selected;
  const runs: number[][] = [];
  for (const region of scopeRegions(selected)) {
    if (!isWhollyHere(instrument, region)) return [];
    const last = runs[runs.length - 1];
    if (last?.at(-1) === region - 1) last.push(region);
    else runs.push([region]);
  }
  return runs.filter((run) => run.length > 1);
}

interface Block {
  start: number;
  end: number;
}

/** The text of each region with the remarks that belong to it; `undefined` where they cannot change places. */
function blocksOf(instrument: Instrument, run: readonly number[]): Block[] | undefined {
  const text = instrument.sources[0]?.text ?? '';
  const from = instrument.headerSpan(run[0]).start;
  const to = instrument.bodySpan(run.at(-1) as number).end;
  const directives = instrument.directives.filter(
    ({ source, start }) => source === 0 && start >= from && start < lineEndAt(text, to),
  );
  // A variable that is set in between has another value behind.
  if (directives.some(({ kind }) => kind !== 'comment')) return undefined;
  const blocks: Block[] = [];
  let next = 0;
  let behind = from;
  for (const region of run) {
    let { start } = instrument.headerSpan(region);
    let { end } = instrument.bodySpan(region);
    const before: Block[] = [];
    for (; next < directives.length && (directives[next] as Block).start < start; next++) {
      const remark = directives[next] as Block;
      if (remark.start >= behind) before.push(remark);
    }
    while (next < directives.length && (directives[next] as Block).start < end) next++;
    const beside = directives[next];
    if (beside && beside.start < lineEndAt(text, end) && text.slice(end, beside.start).trim() === '') {
      end = beside.end;
      next++;
    }
    // Remarks right above belong to a region; those above the first may speak of all.
    while (region !== run[0] && before.length > 0) {
      const remark = before.pop() as Block;
      if (breaksBetween(text, remark.end, start) > 1 || !startsLine(text, remark.start)) break;
      start = remark.start;
    }
    if (!startsLine(text, start) || text.slice(end, lineEndAt(text, end)).trim() !== '') return undefined;
    blocks.push({ start, end });
    behind = end;
  }
  return blocks;
}

function startsLine(text: string, offset: number): boolean {
  return text.slice(lineStartAt(text, offset), offset).trim() === '';
}
