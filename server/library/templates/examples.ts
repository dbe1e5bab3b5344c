import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Directive } from '../../model/instrumentParts';
import type { Span } from '../../model/text/span';
import { mainSpan } from '../../model/text/span';
import { lineEndAt, lineStartAt } from '../../model/text/textLayout';

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
}

/** Said in a remark at a region or group of a template that is no example. */
const staying = /\bstays here\b/i;

/**
 * The examples of a template, in the order of its text: all regions of its own file, and the groups around them. What a
 * remark right before it or on its line says `stays here` of is none, nor is what stands in it.
 */
export function examplesOf(template: Instrument): ExampleSlot[] {
  const text = template.sources[0].text;
  const comments = template.directives.filter(({ kind, source }) => kind === 'comment' && source === 0);
  const stays = (header: number): boolean =>
    header >= 0 && (isMarkedStaying(template, text, comments, header) || stays(template.parent(header)));
  const regions = [...template.regions].filter(
    (header) => template.headerSource(header) === 0 && template.isInOneFile(header),
  );
  const kept = new Set(regions.filter(stays));
  const slots = new Map<number, ExampleSlot>();
  for (const header of regions) {
    if (kept.has(header)) continue;
    const unit = unitOf(text, template.bodySpan(header), comments);
    const parent = template.parent(header);
    const slot = slots.get(parent);
    if (slot) slot.regions.push({ header, unit });
    else {
      const isExample =
        parent >= 0 &&
        template.kind(parent) === HeaderKind.group &&
        template.headerSource(parent) === 0 &&
        template.isInOneFile(parent) &&
        ![...template.regions].some(
          (one) => template.parent(one) === parent && (kept.has(one) || template.headerSource(one) !== 0),
        );
      slots.set(parent, { group: isExample ? parent : -1, regions: [{ header, unit }], unit });
    }
  }
  for (const slot of slots.values()) slot.unit = slotUnit(template, text, comments, slot);
  return [...slots.values()];
}

function isMarkedStaying(
  template: Instrument,
  text: string,
  comments: readonly Directive[],
  header: number,
): boolean {
  const { source, start } = template.headerSpan(header);
  if (source !== 0) return false;
  const lineEnd = lineEndAt(text, start);
  return comments.some(
    (one) =>
      staying.test(one.value) &&
      (one.start < start ? text.slice(one.end, start).trim() === '' : one.start < lineEnd),
  );
}

function slotUnit(
  template: Instrument,
  text: string,
  comments: readonly Directive[],
  { group, regions }: ExampleSlot,
): Span {
  const first = regions[0].unit;
  const last = regions[regions.length - 1].unit;
  if (group < 0) return mainSpan(first.start, last.end);
  const body = template.bodySpan(group);
  const end = Math.max(body.end, ...regions.map(({ header }) => template.bodySpan(header).end));
  return unitOf(text, mainSpan(template.headerSpan(group).start, end), comments);
}

/** A stretch with its line end and a remark behind it, where nothing else stands on its lines. */
function unitOf(text: string, { start, end }: Span, comments: readonly Directive[]): Span {
  const blankFrom = (at: number) => {
    let next = at;
    while (text[next] === ' ' || text[next] === '\t') next++;
    return next;
  };
  let last = blankFrom(end);
  for (let found = remarkAt(); found; found = remarkAt()) last = blankFrom(found.end);
  function remarkAt(): Directive | undefined {
    return comments.find((one) => one.start === last && one.end > last && !/[\r\n]/.test(one.value));
  }
  const endsLine = last === text.length || text[last] === '\n' || text[last] === '\r';
  if (!endsLine) return mainSpan(start, end);
  const lineStart = lineStartAt(text, start);
  if (text.slice(lineStart, start).trim() !== '') return mainSpan(start, last);
  if (text[last] === '\r') last++;
  if (text[last] === '\n') last++;
  return mainSpan(lineStart, last);
}
