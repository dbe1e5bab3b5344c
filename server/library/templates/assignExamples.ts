import type { Instrument } from '../../model/instrument';
import type { ExampleRegion, ExampleSlot } from './examples';
import type { Grouping } from './grouping';
import type { SourceRegion, SourceSection } from './sourceSections';
import type { Traits } from './traits';
import { isAlikeByName, likeness, takesTurns, traitsOf } from './traits';
import { writtenValues } from './writtenValues';

/** Regions that are written like the examples of one slot, in one group where that has one. */
export interface FilledSection {
  label: string | undefined;
  /** Whether the name says that the example stands for it, so that what the example's group is about holds here too. */
  isByName: boolean;
  regions: { source: SourceRegion; example: ExampleRegion }[];
  /** The section of all groups that stand in one with this one, where the slot has an outer group. */
  outer: FilledSection | undefined;
}

/** The sections for each slot, in the order of the source; a slot that stands for none of them has none. */
export type Assignment = ReadonlyMap<ExampleSlot, FilledSection[]>;

/** Finds the example that stands for each region: by the name of its group, else by its kind, else the first. */
export function assignExamples(
  template: Instrument,
  slots: readonly ExampleSlot[],
  sections: readonly SourceSection[],
  grouping: Grouping,
): Assignment {
  const known = slots.map((slot) => {
    const isGrouped = slot.group >= 0 || slot.outer !== undefined;
    const label = isGrouped ? template.groupLabel(slot.regions[0].header) : undefined;
    const examples = slot.regions.map((region) => {
      const values = writtenValues(template, region.header);
      return { region, values, traits: traitsOf(values, label) };
    });
    return { slot, traits: traitsOf(groupValues(examples, grouping), label), examples };
  });
  const filled = new Map<ExampleSlot, FilledSection[]>(slots.map((slot) => [slot, []]));
  const open = new Map<ExampleSlot, Map<string, FilledSection>>(slots.map((slot) => [slot, new Map()]));
  const outers = new OuterSections();
  // What takes turns by where it stands goes to where that is so, and nothing else does while there are other places.
  const [turning, steady] = [true, false].map((is) =>
    known.filter(({ slot }) => grouping.takesTurns(slot) === is),
  );
  for (const [at, { label, regions }] of sections.entries()) {
    for (const source of regions) {
      const traits = traitsOf(source.values, label);
      const ofGroup = traitsOf(grouping.telling(source.values), label);
      const own = takesTurns(source.values) ? turning : steady;
      const possible = own.length > 0 ? own : known;
      const byName = label === undefined ? undefined : bestFor(possible, traitsOf(new Map(), label), label);
      const found = byName ?? bestFor(possible, ofGroup, undefined) ?? known[0];
      const key =
        grouping.keyOf(found.slot, source, label) ?? at + grouping.outerKeyOf(found.slot, source, label);
      let section = open.get(found.slot)?.get(key);
      if (!section) {
        const isByName = isAlikeByName(found.traits, ofGroup);
        const outer = outers.of(found.slot, grouping.outerKeyOf(found.slot, source, label), {
          label,
          isByName,
        });
        section = { label, isByName, regions: [], outer };
        open.get(found.slot)?.set(key, section);
        filled.get(found.slot)?.push(section);
      }
      const one = { source, example: likest(found.examples, traits).region };
      section.regions.push(one);
      section.outer?.regions.push(one);
    }
  }
  for (const { slot } of turning)
    for (const { regions } of filled.get(slot) ?? [])
      regions.sort((one, other) => turnOf(one.source) - turnOf(other.source));
  return filled;
}

/** Where a region stands among those that it takes turns with. */
function turnOf({ values }: SourceRegion): number {
  return Number(values.get('seq_position') ?? 1) + Number(values.get('lorand') ?? 0);
}

/** The sections of groups that hold groups. */
class OuterSections {
  readonly #byHeader = new Map<number, Map<string, FilledSection>>();

  /** The section of a key in the outer group of a slot, a new one where there is none. */
  of(
    { outer }: ExampleSlot,
    key: string,
    about: Pick<FilledSection, 'label' | 'isByName'>,
  ): FilledSection | undefined {
    if (!outer) return undefined;
    const known = this.#byHeader.get(outer.header) ?? new Map<string, FilledSection>();
    this.#byHeader.set(outer.header, known);
    const section = known.get(key) ?? { ...about, regions: [], outer: undefined };
    known.set(key, section);
    return section;
  }
}

/** The values of examples that tell of which kind their group is: those of the first, without velocities that the others do not have. */
function groupValues(
  examples: readonly { values: ReadonlyMap<string, string> }[],
  grouping: Grouping,
): ReadonlyMap<string, string> {
  const values = new Map(grouping.telling(examples[0].values));
  for (const name of ['lovel', 'hivel'])
    if (examples.some((one) => one.values.get(name) !== examples[0].values.get(name))) values.delete(name);
  return values;
}

interface KnownSlot {
  slot: ExampleSlot;
  traits: Traits;
  examples: { region: ExampleRegion; traits: Traits }[];
}

/** The likest slot; with a name, the one that has the same, else none. */
function bestFor(
  known: readonly KnownSlot[],
  traits: Traits,
  name: string | undefined,
): KnownSlot | undefined {
  if (name !== undefined)
    return known.find((one) => one.traits.name !== '' && one.traits.name === traits.name);
  return likest(known, traits);
}

function likest<Kind extends { traits: Traits }>(all: readonly Kind[], traits: Traits): Kind {
  let best = all[0];
  let most = Number.NEGATIVE_INFINITY;
  for (const one of all) {
    const like = likeness(one.traits, traits);
    if (like <= most) continue;
    most = like;
    best = one;
  }
  return best;
}
