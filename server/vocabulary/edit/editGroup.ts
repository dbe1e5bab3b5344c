import { replacing } from '../../model/editing/edits';
import type { Instrument } from '../../model/instrument';
import type { Edited, NewParameter, SampleFactsLookup } from '../../model/notation';
import { mainSpan } from '../../model/text/span';
import { lineEndOf } from '../../model/text/textLines';
import type { Vocabulary } from '../vocabulary';
import { Accounts } from '../write/writeAccounts';
import { filledElement } from '../write/writeElements';
import type { SourceValue } from '../write/writeOwnValues';
import { canonicalNameOf, placesOf } from '../write/writePlaces';
import { placedTexts } from '../write/writeValues';
import { refused } from './editValues';
import { elementsByLevel } from './insertPlace';
import { indentUnitOf } from './styleDocument';
import { elementText } from './styleElement';
import type { StyledElement } from './styleTree';
import { elementTree, indentationAt } from './styleTree';

const notPossible = 'These regions cannot be put into a group of their own, so nothing was changed.';

/**
 * Puts regions into a group element of their own with the given values: one that holds more regions is divided in up to
 * three; where there is none, one is made around them.
 */
export function groupInVocabulary(
  vocabulary: Vocabulary,
  instrument: Instrument,
  change: { first: number; last: number; sets: readonly NewParameter[] },
  sampleFacts: SampleFactsLookup | undefined,
): Edited {
  const { first, last, sets } = change;
  const level = vocabulary.levels.findLastIndex(({ is }) => is === 'group');
  const places = placesOf(vocabulary)[level];
  const text = instrument.sources[0]?.text ?? '';
  const byLevel = elementsByLevel(elementTree(text), vocabulary);
  const regions = byLevel[byLevel.length - 1] ?? [];
  const start = regions.find((one) => one.start === instrument.headerSpan(first).start);
  const end = regions.find((one) => one.start === instrument.headerSpan(last).start);
  const holder = start?.parent;
  if (!places || !start || !end || !holder || end.parent !== holder)
    return refused(instrument, first, notPossible);
  const accounts = new Accounts(instrument);
  const values = new Map<string, SourceValue>();
  for (const { name: written, value } of sets) {
    const name = canonicalNameOf(written);
    if (!places.byName.has(name)) return refused(instrument, first, notPossible);
    values.set(name, { name, value, parameter: -1 });
  }
  const header = instrument.parent(first);
  const texts = placedTexts(places, values, { instrument, header, sampleFacts, accounts });
  if (texts.length === 0 && sets.length > 0) return refused(instrument, first, notPossible);
  const isInGroup = byLevel[level]?.includes(holder) ?? false;
  const style = {
    example: isInGroup ? holder : undefined,
    text,
    indentation: indentationAt(text, isInGroup ? holder.start : start.start),
    unit: indentUnitOf(text),
    lineEnd: lineEndOf(text),
  };
  const closeTag = `</${places.level.element}>`;
  const whole = elementText(filledElement(places.level.element, texts), style, '');
  const openTag = whole.slice(0, whole.length - closeTag.length).trimEnd();
  if (!isInGroup) return wrapped(text, start, end, openTag, closeTag, style);
  return (
    divided(holder, regions, start, end, `${closeTag}`, openTag, text, style) ??
    refused(instrument, first, notPossible)
  );
}

interface Lines {
  indentation: string;
  unit: string;
  lineEnd: string;
}

/** Puts tags around regions that stand in no group and indents them by one more step. */
function wrapped(
  text: string,
  first: StyledElement,
  last: StyledElement,
  openTag: string,
  closeTag: string,
  { indentation, unit, lineEnd }: Lines,
): Edited {
  const inner = text.slice(first.start, last.end).replace(/(\r\n|\r|\n)(?=[ \t]*[^\s])/g, `$1${unit}`);
  const newText = `${openTag}${lineEnd}${indentation}${unit}${inner}${lineEnd}${indentation}${closeTag}`;
  return { edits: [replacing(mainSpan(first.start, last.end), newText)], notes: [] };
}

/** Ends a group before and behind regions of it and begins another there. */
function divided(
  group: StyledElement,
  regions: readonly StyledElement[],
  first: StyledElement,
  last: StyledElement,
  closeTag: string,
  openTag: string,
  text: string,
  { indentation, lineEnd }: Lines,
): Edited | undefined {
  const own = regions.filter(({ parent }) => parent === group);
  const isOwn = new Set(own);
  // Values that stand behind regions would hold for the last part alone.
  if (group.children.some((child) => child.start > (own[0]?.start ?? 0) && !isOwn.has(child)))
    return undefined;
  const edits: Edited['edits'] = [];
  const divide = (region: StyledElement) => {
    let start = region.start;
    while (/\s/.test(text[start - 1] ?? '')) start--;
    const line = lineEnd + indentation;
    const gap = text.slice(start, region.start) || line;
    edits.push(replacing(mainSpan(start, region.start), line + closeTag + line + openTag + gap));
  };
  if (own[0] !== first) divide(first);
  const next = own[own.indexOf(last) + 1];
  if (next) divide(next);
  return { edits, notes: [] };
}
