import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { DifferingValues } from '../../model/notation';
import type { Span } from '../../model/text/span';
import { mainSpan } from '../../model/text/span';
import { initialWords } from '../../trade/languages/initialWords';
import { nameWords } from '../infer/words/nameWords';
import { switchWord } from '../infer/words/words';
import type { PlacedUnread } from '../read/gatheredUnread';
import { unreadOneByOne } from '../read/unreadValues';
import type { Vocabulary } from '../vocabulary';
import { countPlaces } from './childCounts';

/** What becomes of the values of one place. */
interface Differing {
  values: PlacedUnread[];
  /** What is written instead; `undefined` where the place is left out. */
  neutral: string | undefined;
  /** The words for yes and no, where it says of what keyswitches choose which sounds at first. */
  first: { yes: string; no: string } | undefined;
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
    const found = differingPlaces(instrument, vocabulary, unreadIn(instrument, stretches), stretches);
    return {
      starts: new Set([...found.values()].flatMap(({ values }) => values.map((one) => one.valueStart))),
      told: [...found.values()].map((one) => ({
        kind: one.first || one.neutral !== undefined ? 'assumed' : 'dropped',
        message: messageOf(one),
      })),
      saysFirst: [...found.values()].some(({ first }) => first !== undefined),
      edits(other, copies) {
        if (found.size === 0) return [];
        const text = textOf(other);
        const spans = copies.map(({ span }) => span);
        return unreadIn(other, spans).flatMap((value) => {
          const differing = found.get(placeOf(value));
          if (!differing) return [];
          const isFirst = copies.find(
            ({ span }) => span.start <= value.start && value.start < span.end,
          )?.isFirst;
          return editOf(text, value, differing, isFirst);
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
  instrument: Instrument,
  vocabulary: Vocabulary,
  unread: readonly PlacedUnread[],
  stretches: readonly Span[],
): ReadonlyMap<string, Differing> {
  const text = textOf(instrument);
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
      found.set(place, {
        values,
        neutral: isInAll ? neutralOf([...texts]) : undefined,
        first: firstOf(values, text, vocabulary),
      });
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

/** The words of a place called `initial` or the like that holds for one element with a keyswitch and for no other. */
function firstOf(values: readonly PlacedUnread[], text: string, { levels }: Vocabulary): Differing['first'] {
  const [{ element, place }] = values as [PlacedUnread, ...PlacedUnread[]];
  const level = levels.find((one) => one.element === element);
  const isSwitched = level?.parameters.some(({ parameter }) => parameter === 'sw_last');
  if (!isSwitched || !nameWords(place).some((word) => initialWords.has(word))) return undefined;
  const words = values.map(({ valueStart, end }) => text.slice(valueStart, end));
  const yes = words.filter((word) => switchWord(word) === true);
  const no = words.filter((word) => switchWord(word) === false);
  if (yes.length !== 1 || yes.length + no.length < words.length) return undefined;
  return { yes: yes[0] as string, no: no[0] as string };
}

function messageOf({ values, neutral, first }: Differing): string {
  const [{ element, what }] = values as [PlacedUnread, ...PlacedUnread[]];
  if (first)
    return `${what} of <${element}> is taken to say which keyswitch counts before one is pressed, so it becomes "${first.yes}" for that of sw_default and "${first.no}" for others.`;
  const shown = what.replace(/^the/, 'The');
  const why = `${shown} of <${element}> is not understood, and examples of the template differ in it,`;
  return neutral === undefined
    ? `${why} so it is left out. Check whether it is needed.`
    : `${why} so it becomes ${neutral.trim()}. Check it.`;
}

function editOf(
  text: string,
  { element, place, start, valueStart, end }: PlacedUnread,
  { neutral, first }: Differing,
  isFirst: boolean | undefined,
): TextEdit {
  if (first && isFirst !== undefined)
    return replacing(mainSpan(valueStart, end), isFirst ? first.yes : first.no);
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
