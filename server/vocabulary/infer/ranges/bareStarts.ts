import type { Column } from '../values/column';
import { keyTargets } from '../values/plausible';
import type { InferredTarget } from '../words/meaningRules';
import { isBare } from '../words/meanings';

/** What a place holds, as far as it matters here. */
interface Held {
  column: Column;
  target: InferredTarget;
  part: 1 | 2 | undefined;
  texts: readonly (string | undefined)[];
  evidence: string | undefined;
}

const loopTargets: ReadonlySet<InferredTarget> = new Set('loop_start loop_end loop_length'.split(' '));

/**
 * A bare `from` or `start` that could be a low velocity is a place in the sample where its other end is one, and beside the points of a
 * loop where no two regions have the same keys, so that there are no layers to start.
 */
export function withBareStarts<One extends Held>(all: readonly One[]): One[] {
  return all.map((one) => {
    const { level, own, around } = one.column;
    if (one.target !== 'lovel' || !isBare(own)) return one;
    const beside = all.filter(({ column }) => column.level === level && !column.listed);
    if (beside.some(({ target }) => target === 'hivel')) return one;
    const isEnd = beside.some(
      ({ target, column }) =>
        target === 'end' && isBare(column.own) && column.around.join() === around.join(),
    );
    if (isEnd) return { ...one, target: 'offset' };
    const isBesideLoop = beside.some(({ target }) => loopTargets.has(target));
    return isBesideLoop && one.part === undefined && areKeysApart(all, one)
      ? {
          ...one,
          target: 'offset',
          evidence: 'It stands beside the points of a loop, and no two regions have the same keys.',
        }
      : one;
  });
}

/** Whether all regions have keys, and no two the same. */
function areKeysApart(all: readonly Held[], { texts }: Held): boolean {
  const keys = all.filter(({ target }) => keyTargets.has(target) || target === 'key_range');
  if (keys.length === 0 || texts.length < 2) return false;
  const ids = texts.map((_, row) => keys.map((one) => one.texts[row] ?? '').join('|'));
  return new Set(ids).size === ids.length;
}
