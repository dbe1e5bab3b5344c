import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { Span } from '../../model/text/span';
import { mainSpan } from '../../model/text/span';
import { lineStartAt } from '../../model/text/textLayout';
import { Remarks } from './remarks';

/** A region of a template that stands for those to come. */
export interface ExampleRegion {
  header: number;
  /** What is repeated for each region made from it: its lines with a remark behind it, where it stands on lines of its own. */
  unit: Span;
}

/** Examples of one group, or of one place outside of groups that stand for others. */
export interface ExampleSlot {
  /** The group that is repeated with its examples; −1 where they stand in none that is. */
  group: number;
  regions: ExampleRegion[];
  /** The group with all that is repeated with it; of examples in no group, those alone. */
  unit: Span;
  /** What holds the group and is repeated too, where its notation has groups within groups and all that stands in it are examples. */
  outer: OuterGroup | undefined;
}

/** A group of a template that holds groups. */
export interface OuterGroup {
  header: number;
  unit: Span;
}

/**
 * The examples of a template, in the order of its text: all regions of its own file, and the groups around them. What a
 * remark right before it or on its line says `stays here` of is none, nor is what stands in it. In a notation with places for some
 * values alone, elements around groups hold others and are repeated as these are.
 */
export function examplesOf(template: Instrument, notation: Notation): ExampleSlot[] {
  const text = template.sources[0].text;
  const remarks = new Remarks(template);
  const isMarked = (header: number) =>
    template.headerSource(header) === 0 && remarks.sayStays(template.headerSpan(header).start);
  const known = new Map<number, boolean>();
  const stays = (header: number): boolean => {
    if (header < 0) return false;
    const answer = known.get(header) ?? (isMarked(header) || stays(template.parent(header)));
    known.set(header, answer);
    return answer;
  };
  const regions = [...template.regions].filter(
    (header) => template.headerSource(header) === 0 && template.isInOneFile(header),
  );
  const kept = new Set(regions.filter(stays));
  /** What holds regions that are no examples. */
  const holders = new Set<number>();
  for (const one of template.regions)
    if (kept.has(one) || template.headerSource(one) !== 0)
      for (let at = template.parent(one); at >= 0; at = template.parent(at)) holders.add(at);
  const kinds = notation.parameters ? [HeaderKind.group, HeaderKind.master] : [HeaderKind.group];
  const isRepeated = (header: number) =>
    header >= 0 &&
    kinds.some((kind) => template.kind(header) === kind) &&
    template.headerSource(header) === 0 &&
    template.isInOneFile(header) &&
    !holders.has(header);
  const slots = new Map<number, ExampleSlot>();
  for (const header of regions) {
    if (kept.has(header)) continue;
    const unit = unitOf(text, template.bodySpan(header), remarks);
    const parent = template.parent(header);
    const slot = slots.get(parent);
    if (slot) slot.regions.push({ header, unit });
    else {
      const group = isRepeated(parent) ? parent : -1;
      slots.set(parent, { group, regions: [{ header, unit }], unit, outer: undefined });
    }
  }
  const all = [...slots.values()];
  for (const slot of all) slot.unit = slotUnit(template, text, remarks, slot);
  if (!notation.parameters) return all;
  const outers = new Map<number, OuterGroup | undefined>();
  for (const slot of all) {
    const header = slot.group < 0 ? -1 : template.parent(slot.group);
    if (!outers.has(header)) outers.set(header, outerGroup(template, text, remarks, header, isRepeated));
    slot.outer = outers.get(header);
  }
  // Examples that stand in a group of groups beside these are repeated with it, and have no group of their own in it.
  for (const slot of all) {
    const outer = outers.get(slot.group);
    if (!outer) continue;
    slot.outer = outer;
    slot.group = -1;
    slot.unit = slotUnit(template, text, remarks, slot);
  }
  return all;
}

/** A group of groups. */
function outerGroup(
  template: Instrument,
  text: string,
  remarks: Remarks,
  header: number,
  isRepeated: (header: number) => boolean,
): OuterGroup | undefined {
  if (!isRepeated(header)) return undefined;
  const { end } = template.bodySpan(header);
  return { header, unit: unitOf(text, mainSpan(template.headerSpan(header).start, end), remarks) };
}

function slotUnit(
  template: Instrument,
  text: string,
  remarks: Remarks,
  { group, regions }: ExampleSlot,
): Span {
  const first = regions[0].unit;
  const last = regions[regions.length - 1].unit;
  if (group < 0) return mainSpan(first.start, last.end);
  const body = template.bodySpan(group);
  const end = Math.max(body.end, ...regions.map(({ header }) => template.bodySpan(header).end));
  return unitOf(text, mainSpan(template.headerSpan(group).start, end), remarks);
}

/** A stretch with its line end and a remark behind it, where nothing else stands on its lines. */
function unitOf(text: string, { start, end }: Span, remarks: Remarks): Span {
  const blankFrom = (at: number) => {
    let next = at;
    while (text[next] === ' ' || text[next] === '\t') next++;
    return next;
  };
  let last = blankFrom(end);
  for (let found = remarks.at(last); found; found = remarks.at(last)) last = blankFrom(found.end);
  const endsLine = last === text.length || text[last] === '\n' || text[last] === '\r';
  if (!endsLine) return mainSpan(start, end);
  const lineStart = lineStartAt(text, start);
  if (text.slice(lineStart, start).trim() !== '') return mainSpan(start, last);
  if (text[last] === '\r') last++;
  if (text[last] === '\n') last++;
  return mainSpan(lineStart, last);
}
