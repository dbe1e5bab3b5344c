import { bareWord } from '../../../trade/languages/spelling';

/** Names of places that hold the unit of what stands beside them (common practice). */
const unitNames: ReadonlySet<string> = new Set(
  'unit units uom measure einheit einheiten masseinheit unite unites unidad unidades unita misura unidade eenheid eenheden enhet enhed jednostka yksikko jednotka'.split(
    ' ',
  ),
);

/** Words for the interval of an octave as a unit (from memory). */
const octaveWords: ReadonlySet<string> = new Set(
  'octave octaves oct octs 8ve 8va oktave oktaven octava octavas ottava ottave oitava oitavas octaaf octaven oktav oktaver oktaavi oktaavia oktawa oktawy oktava oktavy'.split(
    ' ',
  ),
);

/** Whether a word names the interval of an octave. */
export function isOctaveWord(word: string): boolean {
  return octaveWords.has(bareWord(word));
}

/** Whether a place is named after a unit by all of its words. */
export function isUnitName(words: readonly string[]): boolean {
  return words.length > 0 && words.every((word) => unitNames.has(word));
}
