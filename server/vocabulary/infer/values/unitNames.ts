/** Names of places that hold the unit of what stands beside them (common practice). */
const unitNames: ReadonlySet<string> = new Set(
  'unit units uom measure einheit einheiten masseinheit unite unites unidad unidades unita misura unidade eenheid eenheden enhet enhed jednostka yksikko jednotka'.split(
    ' ',
  ),
);

/** Whether a place is named after a unit by all of its words. */
export function isUnitName(words: readonly string[]): boolean {
  return words.length > 0 && words.every((word) => unitNames.has(word));
}
