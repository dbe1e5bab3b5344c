import type { TextEdit } from '../../model/finding';
import { conditionsOf } from '../../model/overlaps/conditions';
import { Parameter } from '../../model/parameterNames';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, scopeRegions } from './selection';

/** Lets regions that answer to the same keys and velocities take turns. */
export const roundRobins: Refactoring = {
  id: 'roundRobins',
  kind: 'refactor.rewrite',
  keeps: 'what it does not touch',
  offer(selected) {
    return repeatedIn(selected).length > 0
      ? 'Let regions with the same keys and velocities take turns'
      : undefined;
  },
  make(selected) {
    const { notation, instrument } = selected;
    const edits: TextEdit[] = [];
    for (const regions of repeatedIn(selected)) {
      regions.forEach((header, at) => {
        const add = [
          { name: 'seq_length', value: String(regions.length) },
          { name: 'seq_position', value: String(at + 1) },
        ];
        edits.push(...notation.edit(instrument, { kind: 'revise', header, remove: [], add }).edits);
      });
    }
    return { edits };
  },
};

/** Regions that answer to the same, each list in the order of the text; 100 is the most that can take turns. */
function repeatedIn(selected: SelectedDocument): number[][] {
  const { instrument } = selected;
  const regions = scopeRegions(selected);
  if (regions.length < 2) return [];
  const conditions = conditionsOf(instrument);
  const lists = new Map<string, number[]>();
  for (const region of regions) {
    const { lowKey, highKey, lowVelocity, highVelocity } = instrument;
    const place = [
      lowKey[region],
      highKey[region],
      lowVelocity[region],
      highVelocity[region],
      conditions.ofHeader[region],
    ];
    const key = place.join(' ');
    const list = lists.get(key);
    if (list) list.push(region);
    else lists.set(key, [region]);
  }
  return [...lists.values()].filter(
    (list) =>
      list.length > 1 &&
      list.length <= 100 &&
      list.every(
        (region) =>
          isWhollyHere(instrument, region) &&
          instrument.effective(region, Parameter.seq_length) < 0 &&
          instrument.effective(region, Parameter.seq_position) < 0,
      ),
  );
}
