import type { WritingPlace } from '../write/writePlaces';
import type { StyledElement } from './styleTree';

/** A change of one stretch of a text. */
export interface StretchChange {
  start: number;
  end: number;
  newText: string;
}

/** An element in the text that it stands in. */
export interface ElementInText {
  text: string;
  element: StyledElement;
}

/** What an element that is changed goes by. */
export interface EditStyle {
  /** The places of its level, in the order of the vocabulary. */
  places: readonly WritingPlace[];
  /** An element of the same level that has the value, whose order is followed. */
  example: ElementInText | undefined;
  /** Names of child elements that hold other levels: values stand before these. */
  inner: ReadonlySet<string>;
  unit: string;
  lineEnd: string;
}

/** Where the white space before a `/>` starts. */
export function tailStart(text: string, element: StyledElement): number {
  let start = element.openEnd - 2;
  while (start > element.nameEnd && /\s/.test(text[start - 1])) start--;
  return start;
}

/** The white space before an offset. */
export function spaceBefore(text: string, offset: number): string {
  let start = offset;
  while (start > 0 && /\s/.test(text[start - 1])) start--;
  return text.slice(start, offset);
}
