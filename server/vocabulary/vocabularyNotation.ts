import type { Notation } from '../model/notation';
import { xmlNotation } from '../xml/notation';
import type { Vocabulary } from './vocabulary';

const notations = new WeakMap<Vocabulary, Notation>();

/** Instrument XML in a vocabulary as a notation of the instrument model; the same for the same object. */
export function vocabularyNotation(vocabulary: Vocabulary): Notation {
  let notation = notations.get(vocabulary);
  if (!notation) {
    notation = { ...xmlNotation };
    notations.set(vocabulary, notation);
  }
  return notation;
}
