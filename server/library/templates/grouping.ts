import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { folderOf } from '../../model/paths';
import type { ExampleSlot } from './examples';
import type { SourceRegion } from './sourceSections';
import { takesTurns } from './traits';
import { valueClass, valuesOfPlace } from './valueClass';
import { writtenValues } from './writtenValues';

/** Which regions stand in one group of a result. */
export interface Grouping {
  /** What the regions of a group have in common, as a text; `undefined` where the groups of the source decide. */
  keyOf(slot: ExampleSlot, source: SourceRegion, label: string | undefined): string | undefined;
  /** What the regions of a group of groups have in common, as a text. */
  outerKeyOf(slot: ExampleSlot, source: SourceRegion, label: string | undefined): string;
  /** Whether the regions of a slot take turns or are chosen by chance because their group stands around them. */
  takesTurns(slot: ExampleSlot): boolean;
  /** The values that tell which group a region belongs to: those that it cannot say itself, and its way of playing. */
  telling(values: ReadonlyMap<string, string>): ReadonlyMap<string, string>;
}

/** What a region says of itself where it has a place for it, without that telling of which kind its group is. */
const ofRegions = /^(?:lo|hi)vel$|^seq_|^(?:lo|hi)rand$/;

/**
 * How regions come together in the groups of a template: where its notation lets groups alone say something, or they name folders
 * of samples, by that; else as in the source.
 */
export function groupingOf(
  notation: Notation,
  template: Instrument,
  slots: readonly ExampleSlot[],
): Grouping {
  const ofRegion = new Set(notation.parameters?.(HeaderKind.region));
  /** What the element of a header alone can say; `inner`: what groups in it can say, regions apart. */
  const saying = (header: number, inner: ReadonlySet<string>): Said => {
    const places = header < 0 ? [] : (notation.parameters?.(template.kind(header)) ?? []);
    const names = places.filter((name) => !ofRegion.has(name) && !inner.has(name));
    return {
      names: names.filter((name) => name !== 'group_label').flatMap(valuesOfPlace),
      hasLabel: names.includes('group_label'),
      namesFolder: header >= 0 && notation.samplePlaces?.folderAt(template, header) !== undefined,
    };
  };
  const ofGroup = new Set(notation.parameters?.(HeaderKind.group));
  const known = new Map<number, Said>();
  const saidBy = (header: number, isOuter: boolean) => {
    const said = known.get(header) ?? saying(header, isOuter ? ofGroup : new Set());
    known.set(header, said);
    return said;
  };
  const text = (
    { names, hasLabel, namesFolder }: Said,
    { values }: SourceRegion,
    label: string | undefined,
  ) =>
    JSON.stringify([
      namesFolder ? folderOf(values.get('sample') ?? '') : undefined,
      hasLabel ? label : undefined,
      ...names.map((name) => values.get(name)),
    ]);
  const places = new Set([...ofRegion, ...ofGroup, ...(notation.parameters?.(HeaderKind.master) ?? [])]);
  const turning = new Set(slots.filter((slot) => takeTurnsInside(template, slot, places)));
  const sets = new Map([...turning].map((slot) => [slot, areOneSet(template, slot)]));
  // One element that can say nothing but the folder of all samples is no example of a group.
  const isAround = ofGroup.size === 0 && slots.length === 1;
  return {
    keyOf(slot, source, label) {
      const inner = saidBy(slot.group, false);
      if (sets.get(slot))
        return text(inner, source, label) + setKey(source.values) + this.outerKeyOf(slot, source, label);
      if (inner.names.length === 0 && !inner.namesFolder) return undefined;
      if (isAround) return '';
      return text(inner, source, label) + this.outerKeyOf(slot, source, label);
    },
    outerKeyOf: (slot, source, label) => text(saidBy(slot.outer?.header ?? -1, true), source, label),
    takesTurns: (slot) => turning.has(slot),
    telling: (values) =>
      new Map([...values].filter(([name]) => !(ofRegion.has(name) && ofRegions.test(name)))),
  };
}

/** What the element of a header alone can say of regions. */
interface Said {
  names: readonly string[];
  hasLabel: boolean;
  namesFolder: boolean;
}

const turnNames = ['seq_position', 'seq_length', 'lorand', 'hirand'];

/** Whether regions of a slot take turns and no place says so, which leaves the element around them. */
function takeTurnsInside(
  template: Instrument,
  { group, regions }: ExampleSlot,
  places: ReadonlySet<string>,
): boolean {
  if (group < 0 || places.size === 0 || turnNames.some((name) => places.has(name))) return false;
  return regions.some(({ header }) => takesTurns(writtenValues(template, header)));
}

/** Whether the examples of a slot are the takes of one note and layer. */
function areOneSet(template: Instrument, { regions }: ExampleSlot): boolean {
  const keys = regions.map(({ header }) => setKey(writtenValues(template, header)));
  return keys.every((key) => key === keys[0]);
}

/** The conditions apart from turns that regions share which take turns with one another, as a text. */
function setKey(values: ReadonlyMap<string, string>): string {
  const conditions = [...values].filter(
    ([name]) => !turnNames.includes(name) && (valueClass(name, true) === 'condition' || name === 'key'),
  );
  return JSON.stringify(conditions.sort(([one], [other]) => (one < other ? -1 : 1)));
}
