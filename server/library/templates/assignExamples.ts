import type { Instrument } from '../../model/instrument';
import type { ExampleRegion, ExampleSlot } from './examples';
import type { SourceRegion, SourceSection } from './sourceSections';
import type { Traits } from './traits';
import { isAlikeByName, likeness, traitsOf } from './traits';

/** Regions that are written like the examples of one slot, in one group where that has one. */
export interface FilledSection {
  label: string | undefined;
  /** Whether the name says that the example stands for it, so that what the example's group is about holds here too. */
  isByName: boolean;
  regions: { source: SourceRegion; example: ExampleRegion }[];
}

/** The sections for each slot, in the order of the source; a slot that stands for none of them has none. */
export type Assignment = ReadonlyMap<ExampleSlot, FilledSection[]>;

/** Finds the example that stands for each region: by the name of its group, else by its kind, else the first. */
export function assignExamples(
  template: Instrument,
  slots: readonly ExampleSlot[],
  sections: readonly SourceSection[],
): Assignment {
  const known = slots.map((slot) => {
    const label = slot.group < 0 ? undefined : template.groupLabel(slot.regions[0].header);
    const examples = slot.regions.map((region) => ({
      region,
      traits: traitsOf(writtenValues(template, region.header), label),
    }));
    return { slot, traits: examples[0].traits, examples };
  });
  const filled = new Map<ExampleSlot, FilledSection[]>(slots.map((slot) => [slot, []]));
  for (const { label, regions } of sections) {
    const open = new Map<ExampleSlot, FilledSection>();
    const byName = label === undefined ? undefined : bestFor(known, traitsOf(new Map(), label), label);
    for (const source of regions) {
      const traits = traitsOf(source.values, label);
      const found = byName ?? bestFor(known, traits, undefined) ?? known[0];
      let section = open.get(found.slot);
      if (!section) {
        section = { label, isByName: isAlikeByName(found.traits, traits), regions: [] };
        open.set(found.slot, section);
        filled.get(found.slot)?.push(section);
      }
      section.regions.push({ source, example: likest(found.examples, traits).region });
    }
  }
  return filled;
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

/** The values in force in a header, by canonical name, as they are written. */
export function writtenValues(instrument: Instrument, header: number): Map<string, string> {
  const values = new Map<string, string>();
  for (const { name, parameter } of instrument.effectiveParameters(header))
    values.set(instrument.names.text(name), instrument.valueText(parameter));
  return values;
}
