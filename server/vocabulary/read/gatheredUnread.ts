import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import { counted } from '../../model/wording/counted';
import { listText } from '../../model/wording/listText';

/** A value that is not read: how it is shown, and where it stands. */
export interface UnreadValue {
  what: string;
  start: number;
  end: number;
}

/** So many places of an element are shown with a value; the others are counted. */
const mostShown = 4;

/** A value with the place that it stands at. */
export interface PlacedUnread extends UnreadValue {
  element: string;
  /** The name of an attribute, or empty for the text of the element. */
  place: string;
  /** Where the value itself starts. */
  valueStart: number;
}

/** Values that are not read, put together by the names of their elements, so that a person is told once of each. */
export class GatheredUnread {
  /** By the name of an element: the first value of each of its places, and how many values there are. */
  readonly all: PlacedUnread[] = [];
  readonly #elements = new Map<string, { firsts: Map<string, UnreadValue>; count: number }>();

  /** `place` is the name of an attribute, or empty for the text of the element. */
  add(element: string, place: string, value: UnreadValue & { valueStart: number }): void {
    this.all.push({ element, place, ...value });
    let found = this.#elements.get(element);
    if (!found) {
      found = { firsts: new Map(), count: 0 };
      this.#elements.set(element, found);
    }
    found.count++;
    if (!found.firsts.has(place)) found.firsts.set(place, value);
  }

  /** A note for each name of an element. */
  notes(vocabulary: string): ConversionNote[] {
    return [...this.#elements].map(([element, { firsts, count }]) => {
      const values = [...firsts.values()];
      const { start, end } = values[0] as UnreadValue;
      const isOne = values.length === 1;
      const verb = isOne ? 'is' : 'are';
      const means = isOne ? 'it means' : 'they mean';
      const other = count - values.length;
      const more =
        other === 0
          ? ''
          : ` ${counted(other, 'more value', 'more values')} of <${element}> ${other === 1 ? 'is' : 'are'} not read either.`;
      const message = `${listed(values.map(({ what }) => what))} of <${element}> ${verb} not read: the vocabulary "${vocabulary}" does not say what ${means}.${more}`;
      return { kind: 'ignored', ...mainSpan(start, end), message };
    });
  }
}

/** Places in a row, the first one with a capital where it is in words. */
function listed(shown: readonly string[]): string {
  const kept = shown.length > mostShown ? shown.slice(0, mostShown - 1) : shown;
  const rest = shown.length - kept.length;
  const text = listText(rest > 0 ? [...kept, `${rest} more places`] : kept, 'and');
  return text.replace(/^the text/, 'The text');
}
