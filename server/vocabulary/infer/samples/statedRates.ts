import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import { nameWords } from '../words/nameWords';
import type { SampleList } from './sampleList';

/** Frames a second that recordings have (AES5 and common practice). */
const usualRates: ReadonlySet<number> = new Set([
  8000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 64_000, 88_200, 96_000, 176_400,
  192_000, 384_000,
]);
const rateWords =
  /^(?:rate|samplerate|sr|fs|hz|khz|freq|frequency|abtastrate|rata|taux|frecuencia|muestreo)$/;

/** Sample rates that a document states beside its samples. */
export interface StatedRates {
  /** Where the element of a level says it. */
  columns: Column[];
  /** The attribute of an entry of the list of samples. */
  inList: string | undefined;
  /** Of each row; `undefined` where nothing is said. */
  ofRows: (number | undefined)[];
}

/** Finds the places of sample rates: they are named so, and hold nothing else. */
export function findStatedRates(
  rows: Rows,
  list: SampleList | undefined,
  references: Column | undefined,
): StatedRates {
  const columns = rows.columns.filter(
    ({ own, cells }) =>
      own.some((word) => rateWords.test(word)) &&
      cells.every((cell) => !cell || usualRates.has(Number(cell.text))),
  );
  const inList = list && [...list.rates].find(([, rates]) => areRates(rates));
  const ofRows = Array.from({ length: rows.count }, (_, row) => {
    const listed = inList?.[1].get(references?.cells[row]?.text.trim() ?? '');
    const nearest = [...columns]
      .sort((one, other) => other.level - one.level)
      .find(({ cells }) => cells[row]);
    const said = listed ?? nearest?.cells[row]?.text;
    return said === undefined ? undefined : Number(said);
  });
  return { columns, inList: inList?.[0], ofRows };
}

/** Whether an attribute can name a sample rate. */
export function isRateName(name: string): boolean {
  return nameWords(name).some((word) => rateWords.test(word));
}

function areRates(rates: ReadonlyMap<string, string>): boolean {
  return rates.size > 0 && [...rates.values()].every((rate) => usualRates.has(Number(rate)));
}
