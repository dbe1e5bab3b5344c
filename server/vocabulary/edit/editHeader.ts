import type { Instrument } from '../../model/instrument';
import { nameEndAt } from '../../xml/scan/characters';
import type { Vocabulary } from '../vocabulary';
import type { LevelPlaces } from '../write/writePlaces';
import { placesOf } from '../write/writePlaces';
import type { ElementInText } from './elementInText';
import { elementTree } from './styleTree';

/** The text of a header's element, cut out with the white space before it on its line. */
export interface HeaderText {
  /** The source and the offset in it where {@link text} starts. */
  source: number;
  start: number;
  text: string;
  /** The level of the vocabulary. */
  level: number;
  places: LevelPlaces;
}

/** Finds the element of a header; `undefined` for a header that is none of the vocabulary. */
export function headerText(
  instrument: Instrument,
  vocabulary: Vocabulary,
  header: number,
): HeaderText | undefined {
  const { source, start, end } = instrument.bodySpan(header);
  const text = instrument.sources[source]?.text ?? '';
  if (text[start] !== '<') return undefined;
  const level = levelOf(instrument, vocabulary, header, text.slice(start + 1, nameEndAt(text, start + 1)));
  const places = placesOf(vocabulary)[level];
  if (!places) return undefined;
  let lineStart = start;
  while (lineStart > 0 && (text[lineStart - 1] === ' ' || text[lineStart - 1] === '\t')) lineStart--;
  return { source, start: lineStart, text: text.slice(lineStart, end), level, places };
}

/** Where several levels have elements of one name, the one as far in as the header. */
function levelOf(instrument: Instrument, { levels }: Vocabulary, header: number, name: string): number {
  const fitting = levels.flatMap(({ element, also }, at) =>
    element === name || (also && Object.hasOwn(also, name)) ? [at] : [],
  );
  if (fitting.length < 2) return fitting[0] ?? -1;
  let outer = 0;
  for (let at = instrument.parent(header); at >= 0; at = instrument.parent(at)) {
    const { source, start } = instrument.headerSpan(at);
    const text = instrument.sources[source]?.text ?? '';
    if (text.slice(start + 1, nameEndAt(text, start + 1)) === name) outer++;
  }
  return fitting[Math.min(outer, fitting.length - 1)];
}

/** The element of a header's text. */
export function elementIn({ text }: { text: string }): ElementInText | undefined {
  const [element] = elementTree(text).children;
  return element && { text, element };
}

/** Headers on either side that are looked at for an example. */
const mostSteps = 500;

/** The nearest other header of the same level that sets a parameter itself. */
export function exampleOf(
  instrument: Instrument,
  vocabulary: Vocabulary,
  header: number,
  level: number,
  name: string,
): ElementInText | undefined {
  const id = instrument.names.canonical(instrument.names.idOf(name));
  for (let step = 1; step <= mostSteps; step++) {
    for (const at of [header - step, header + step]) {
      if (at < 0 || at >= instrument.headers.count || instrument.kind(at) !== instrument.kind(header))
        continue;
      if (instrument.own(at, id) < 0) continue;
      const found = headerText(instrument, vocabulary, at);
      if (found?.level === level) return elementIn(found);
    }
  }
  return undefined;
}
