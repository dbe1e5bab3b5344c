import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { folderOf } from '../../model/paths';
import type { ExampleSlot } from './examples';
import type { SourceRegion } from './sourceSections';

/** Which regions stand in one group of a result. */
export interface Grouping {
  /** What the regions of a group have in common, as a text; `undefined` where the groups of the source decide. */
  keyOf(slot: ExampleSlot, source: SourceRegion, label: string | undefined): string | undefined;
  /** The values that tell which group a region belongs to: those that it cannot say itself, and its way of playing. */
  telling(values: ReadonlyMap<string, string>): ReadonlyMap<string, string>;
}

/** What a region says of itself where it has a place for it, without that telling of which kind its group is. */
const ofRegions = /^(?:lo|hi)vel$|^seq_|^(?:lo|hi)rand$/;

/**
 * How regions come together in the groups of a template: where its notation lets groups alone say something, or they name folders of samples,
 * by that; else as in the source.
 */
export function groupingOf(notation: Notation, template: Instrument): Grouping {
  const ofGroup = notation.parameters?.(HeaderKind.group) ?? [];
  const ofRegion = new Set(notation.parameters?.(HeaderKind.region));
  const alone = ofGroup.filter((name) => !ofRegion.has(name) && name !== 'group_label');
  const hasLabel = ofGroup.includes('group_label');
  const folders = new Map<ExampleSlot, boolean>();
  const namesFolder = (slot: ExampleSlot) => {
    let answer = folders.get(slot);
    if (answer === undefined) {
      answer = slot.group >= 0 && notation.samplePlaces?.folderAt(template, slot.group) !== undefined;
      folders.set(slot, answer);
    }
    return answer;
  };
  return {
    keyOf(slot, { values }, label) {
      const folder = namesFolder(slot) ? folderOf(values.get('sample') ?? '') : undefined;
      if (slot.group < 0 || (alone.length === 0 && folder === undefined)) return undefined;
      return JSON.stringify([folder, hasLabel ? label : undefined, ...alone.map((name) => values.get(name))]);
    },
    telling: (values) =>
      new Map([...values].filter(([name]) => !(ofRegion.has(name) && ofRegions.test(name)))),
  };
}
