import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { InstrumentBuilder, plainNumber } from '../model/instrumentBuilder';
import { shareable } from '../table/zones/sharedValues';

/** A value of a zone and the cell of the table that it comes from; the span is empty for one that no cell gives. */
export interface ZoneValue {
  /** Name of the open SFZ format. */
  name: string;
  value: string;
  start: number;
  end: number;
}

/** A row of a table as a region. */
export interface ZoneRegion {
  /** The row's stretch of the table. */
  start: number;
  end: number;
  values: ZoneValue[];
}

/** Regions of one group with what the group states for all of them; without values they stand outside of groups. */
export interface ZoneSection {
  values: ZoneValue[];
  regions: ZoneRegion[];
}

/** The regions of a table, apart from the text, so that they can be arranged anew. */
export function sectionsOf(zones: Instrument): ZoneSection[] {
  const sections: ZoneSection[] = [];
  for (let header = 0; header < zones.headers.count; header++) {
    const { start, end } = zones.headerSpan(header);
    const values: ZoneValue[] = [];
    for (let one = zones.firstParameter(header); one < zones.endParameter(header); one++) {
      const span = zones.valueSpan(one);
      values.push({
        name: zones.names.text(zones.name(one)),
        value: zones.valueText(one),
        start: span.start,
        end: span.end,
      });
    }
    if (zones.kind(header) !== HeaderKind.region) sections.push({ values, regions: [] });
    else {
      if (sections.length === 0) sections.push({ values: [], regions: [] });
      sections[sections.length - 1]?.regions.push({ start, end, values });
    }
  }
  return sections;
}

/** The instrument that sections describe; those without values of their own come first. */
export function instrumentOfSections(
  sections: readonly ZoneSection[],
  table: { path: string; text: string },
): Instrument {
  const builder = new InstrumentBuilder('table', table.text.length);
  builder.enterSource(table.path, table.text);
  const add = ({ name, value, start, end }: ZoneValue) => {
    const isText = name === 'sample' || name === 'group_label';
    const number = isText ? plainNumber(value) : value === '' ? Number.NaN : Number(value);
    const parameter = builder.addParameter(builder.names.idOf(name), start, start, end, number);
    if (table.text.slice(start, end) !== value) builder.setValue(parameter, value);
  };
  const ordered = [...sections].sort((a, b) => Math.min(a.values.length, 1) - Math.min(b.values.length, 1));
  for (const { values, regions } of ordered) {
    if (regions.length === 0) continue;
    if (values.length > 0) {
      const [first] = values;
      builder.openHeader(HeaderKind.group, first?.start ?? 0, first?.end ?? 0);
      for (const value of values) add(value);
    }
    for (const { start, end, values: own } of regions) {
      builder.openHeader(HeaderKind.region, start, end);
      for (const value of own) add(value);
    }
  }
  return builder.finish();
}

/** Lifts what all regions of a section have alike to the section. The section is changed in place. */
export function liftShared(section: ZoneSection): void {
  const [first, ...others] = section.regions;
  if (!first || others.length === 0) return;
  for (const name of ['trigger', ...shareable]) {
    const value = first.values.find((one) => one.name === name);
    if (!value || section.values.some((one) => one.name === name)) continue;
    const isAlike = ({ values }: ZoneRegion) =>
      values.some((one) => one.name === name && one.value === value.value);
    if (!others.every(isAlike)) continue;
    section.values.push(value);
    for (const region of section.regions) region.values = region.values.filter((one) => one.name !== name);
  }
}
