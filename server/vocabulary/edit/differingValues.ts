import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { DifferingValues } from '../../model/notation';
import type { Span } from '../../model/text/span';
import { mainSpan } from '../../model/text/span';
import type { PlacedUnread } from '../read/gatheredUnread';
import { unreadOneByOne } from '../read/unreadValues';
import type { Vocabulary } from '../vocabulary';
import { countPlaces } from './childCounts';

/** What becomes of the values of one place. */
interface Differing {
  values: PlacedUnread[];
  /** What is written instead; `undefined` where the place is left out. */
  neutral: string | undefined;
}

/** Finds the values that a vocabulary has no parameter for and in which elements of one name differ. */
export function differingIn(
  vocabulary: Vocabulary,
): (instrument: Instrument, stretches: readonly Span[]) => DifferingValues {
  const unreadIn = (instrument: Instrument, stretches: readonly Span[]) =>
    unreadOneByOne(instrument, vocabulary, countPlaces(vocabulary, textOf(instrument))).filter(({ start }) =>
      stretches.some((one) => one.start <= start && start < one.end),
    );
  return (instrument, stretches) => {
    const found = differingPlaces(textOf(instrument), unreadIn(instrument, stretches), stretches);
    return {
      starts: new Set([...found.values()].flatMap(({ values }) => values.map((one) => one.valueStart))),
      messages: [...found.values()].map(messageOf),
      edits(other, copies) {
        if (found.size === 0) return [];
        const text = textOf(other);
        return unreadIn(other, copies).flatMap((value) => {
          const differing = found.get(placeOf(value));
          return differing ? editOf(text, value, differing) : [];
        });
      },
    };
  };
}

function textOf({ sources }: Instrument): string {
  return sources[0]?.text ?? '';
}

function placeOf({ element, place }: PlacedUnread): string {
  return `${element} ${place}`;
}

function differingPlaces(
  text: string,
  unread: readonly PlacedUnread[],
  stretches: readonly Span[],
): ReadonlyMap<string, Differing> {
  const places = new Map<string, PlacedUnread[]>();
  for (const value of unread) {
    const list = places.get(placeOf(value));
    if (list) list.push(value);
    else places.set(placeOf(value), [value]);
  }
  const found = new Map<string, Differing>();
  for (const [place, values] of places) {
    const texts = new Set(values.map(({ valueStart, end }) => text.slice(valueStart, end)));
    const count = elementsNamed(values[0]?.element ?? '', text, stretches);
    const isInAll = values.length >= count;
    if (texts.size > 1 || !isInAll)
      found.set(place, { values, neutral: isInAll ? neutralOf([...texts]) : undefined });
  }
  return found;
}

/** How many elements of a name start in some stretches. */
function elementsNamed(name: string, text: string, stretches: readonly Span[]): number {
  let count = 0;
  for (const { start, end } of new Map(stretches.map((one) => [one.start, one])).values()) {
    for (let at = text.indexOf(`<${name}`, start); at >= 0 && at < end; at = text.indexOf(`<${name}`, at + 1))
      if (/[\s/>]/.test(text[at + name.length + 1] ?? '')) count++;
  }
  return count;
}

/** The 0 among numbers that differ, which as an amount changes nothing; none where it switches something off. */
function neutralOf(texts: readonly string[]): string | undefined {
  const numbers = texts.map((text) =>
    Number(/^\s*([-+]?\d+(?:\.\d+)?)\s*\p{L}{0,5}\s*$/u.exec(text)?.[1] ?? 'none'),
  );
  if (numbers.some(Number.isNaN) || numbers.every((one) => one === 0 || one === 1)) return undefined;
  return texts[numbers.indexOf(0)];
}

function messageOf({ values, neutral }: Differing): string {
  const [{ element, what }] = values as [PlacedUnread, ...PlacedUnread[]];
  const shown = what.replace(/^the/, 'The');
  const why = `${shown} of <${element}> is not understood, and examples of the template differ in it,`;
  return neutral === undefined
    ? `${why} so it is left out. Check whether it is needed.`
    : `${why} so it becomes ${neutral.trim()}. Check it.`;
}

function editOf(
  text: string,
  { element, place, start, valueStart, end }: PlacedUnread,
  { neutral }: Differing,
): TextEdit {
  if (neutral !== undefined) return replacing(mainSpan(valueStart, end), neutral);
  const blankBefore = (at: number) => {
    let from = at;
    while (from > 0 && /\s/.test(text[from - 1] ?? '')) from--;
    return from;
  };
  if (place !== '') {
    const quote = text.slice(start, valueStart).trimEnd().slice(-1);
    const behind = text.indexOf(quote, end) + 1;
    return replacing(mainSpan(blankBefore(start), behind), '');
  }
  // An element that holds no more than the text goes with it.
  const from = blankBefore(valueStart) - element.length - 2;
  const tail = /^\s*/.exec(text.slice(end, end + 1000))?.[0].length ?? 0;
  const isWhole = text.startsWith(`<${element}>`, from) && text.startsWith(`</${element}>`, end + tail);
  if (!isWhole) return replacing(mainSpan(valueStart, end), '');
  return replacing(mainSpan(blankBefore(from), end + tail + element.length + 3), '');
}
