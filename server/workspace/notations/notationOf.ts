import type { Notation } from '../../model/notation';
import { sfzNotation } from '../../sfz/notation';
import { xmlNotation } from '../../xml/notation';

/** The notation of each format. */
export const notations: Readonly<Record<Notation['format'], Notation>> = {
  sfz: sfzNotation,
  xml: xmlNotation,
};

/** The notation of each language of an editor that says how a document is read, whatever is in it. */
export const notationOfLanguage: ReadonlyMap<string, Notation> = new Map([
  ['sfz', sfzNotation],
  ['instrument-xml', xmlNotation],
]);
