import type { KeyGap } from '../../model/overlaps/gaps';
import { findKeyGaps } from '../../model/overlaps/gaps';
import { HeaderEdits, type RangeName } from '../../model/style/headerEdits';
import { lastKeyOf } from '../../trade/keySpread';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, scopeRegions } from './selection';

/** Widens the regions on both sides of keys that nothing answers, each up to the keys that are nearer to its root key. */
export const closeKeyGaps: Refactoring = {
  id: 'closeKeyGaps',
  kind: 'refactor.rewrite',
  keeps: 'what it does not touch',
  offer(selected) {
    const { gaps } = gapsIn(selected);
    if (gaps.length === 0) return undefined;
    return `Close ${gaps.length === 1 ? 'the gap' : `${gaps.length} gaps`} between keys`;
  },
  make(selected) {
    const { notation, instrument } = selected;
    const { gaps, regions } = gapsIn(selected);
    const changes = new Map<number, Map<RangeName, number>>();
    const set = (region: number, name: RangeName, key: number) => {
      const values = changes.get(region) ?? new Map<RangeName, number>();
      values.set(name, key - instrument.control(region).keyOffset);
      changes.set(region, values);
    };
    for (const { lowKey, highKey, below, above } of gaps) {
      const middle = lastKeyOf(instrument.rootKey(below), instrument.rootKey(above));
      const last = Math.max(lowKey - 1, Math.min(highKey, middle));
      for (const region of regions) {
        if (last >= lowKey && instrument.highKey[region] === lowKey - 1) set(region, 'hikey', last);
        if (last < highKey && instrument.lowKey[region] === highKey + 1) set(region, 'lokey', last + 1);
      }
    }
    const editor = new HeaderEdits(notation, instrument);
    const edits = [...changes].flatMap(([header, values]) => editor.values(header, values));
    return edits.length > 0 ? { edits } : undefined;
  },
};

function gapsIn(selected: SelectedDocument): { gaps: KeyGap[]; regions: number[] } {
  const { instrument } = selected;
  const regions = scopeRegions(selected).filter(
    (region) => instrument.lowKey[region] >= 0 && instrument.highKey[region] >= instrument.lowKey[region],
  );
  if (!regions.every((region) => isWhollyHere(instrument, region))) return { gaps: [], regions };
  const rectangles = regions.map((region) => ({
    region,
    lowKey: instrument.lowKey[region],
    highKey: instrument.highKey[region],
    lowVelocity: instrument.lowVelocity[region],
    highVelocity: instrument.highVelocity[region],
  }));
  return { gaps: findKeyGaps(rectangles, new Set()), regions };
}
