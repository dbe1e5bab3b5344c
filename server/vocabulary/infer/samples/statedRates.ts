import { readHeading } from '../../../trade/headings/headings';
import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import type { SampleList } from './sampleList';

/** Frames a second that recordings have (AES5 and common practice). */
const usualRates: ReadonlySet<number> = new Set([
  8000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 64_000, 88_200, 96_000, 176_400,
  192_000, 384_000,
]);
const rateWords =
  /^(?:rate|samplerate|sr|fs|hz|khz|freq|frequency|frequence|frequenz|frequenza|frecuencia|frequencia|frequentie|frekvens|abtastrate|rata|taux|muestreo|cadence|campionamento)$/;

/** Words in one that end with a word for a rate, or say per second of what. */
const joinedRate = /^\p{L}{3,}(?:rate|khz)$|^(?:frames?|samples?)(?:per|a|each|in)?s(?:ec(?:ond)?)?$|^fps$/u;

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
  const columns = rows.columns.filter(holdsRates);
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

/** Whether the words of a name can be those of a sample rate. */
export function isRateName(words: readonly string[]): boolean {
  return (
    words.some((word) => rateWords.test(word) || joinedRate.test(word)) ||
    readHeading(words.join(' '))?.meaning === 'sample_rate'
  );
}

/** Whether a place holds sample rates, and no frequencies of tones, which are named alike. */
export function holdsRates({ own, cells }: Pick<Column, 'own' | 'cells'>): boolean {
  return isRateName(own) && cells.every((cell) => !cell || usualRates.has(Number(cell.text)));
}

function areRates(rates: ReadonlyMap<string, string>): boolean {
  return rates.size > 0 && [...rates.values()].every((rate) => usualRates.has(Number(rate)));
}
