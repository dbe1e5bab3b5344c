import { dynamicIn } from '../../trade/dynamics';
import { readHeading } from '../../trade/headings/headings';
import { loopWord } from '../../trade/languages/cellWords';
import { bareWord } from '../../trade/languages/spelling';
import type { ColumnMeaning } from '../../trade/meaning';
import { loopModeInWords } from '../../trade/readings/loopPhrases';
import type { LegendEntry } from '../../trade/statements/legend';
import { layersIn, legendIn } from '../../trade/statements/legend';
import type { TableCells } from '../cells/cells';
import { DistinctTexts } from '../cells/distinctTexts';
import type { TableRows } from '../cells/tableRows';
import type { Glossary } from './glossary';

const mostColumns = 100;
/** More words than these are names. */
const mostWords = 40;

/** A word of a column that the text explains, for a note. */
export interface ExplainedWord {
  word: string;
  /** What is taken for it. */
  taken: string;
  text: string;
  span: { start: number; end: number };
}

/** What a word may be written as in a column of a meaning. */
interface Kind {
  meaning: ColumnMeaning;
  headings: readonly (ColumnMeaning | undefined)[];
  /** What an explanation says, as a cell reads it. */
  written: (entry: LegendEntry, word: string, layers: ReadonlyMap<string, string>) => string | undefined;
  /** Whether a word needs no explanation. */
  isKnown: (word: string) => boolean;
}

const kinds: readonly Kind[] = [
  {
    meaning: 'loop',
    headings: ['loop', undefined],
    written: ({ says }) => {
      const said = loopModeInWords(says);
      return said?.type ?? said?.mode?.replace('_', ' ');
    },
    isKnown: (word) => loopWord(word) !== undefined,
  },
  {
    meaning: 'velocity_range',
    headings: ['group', 'velocity_range', 'lovel', 'hivel', 'dynamics', 'comment', undefined],
    written: (_, word, layers) => layers.get(word),
    isKnown: () => false,
  },
];

/**
 * Puts what the text around explains of the words of a column in their place: `held = loops while the key is down` under `Loop`,
 * `A: 1-60` under `Layer`. Answers the words for which that was done.
 */
export function useLegend(
  cells: TableCells,
  tables: readonly TableRows[],
  glossary: Glossary,
): ExplainedWord[] {
  const legend = legendIn(glossary.texts);
  if (legend.size === 0) return [];
  const layers = layersIn(legend);
  return tables.flatMap((table) =>
    kinds.flatMap((kind) => {
      for (let index = 0; index < Math.min(table.width, mostColumns); index++) {
        const used = usedIn(cells, table, index, kind, legend, layers);
        if (used.length > 0) {
          glossary.settle(table.headings[index]?.text ?? '', kind.meaning, used[0]?.text ?? '');
          return used;
        }
      }
      return [];
    }),
  );
}

function usedIn(
  cells: TableCells,
  { headings, data }: TableRows,
  index: number,
  { meaning, headings: wanted, written, isKnown }: Kind,
  legend: ReadonlyMap<string, LegendEntry>,
  layers: ReadonlyMap<string, string>,
): ExplainedWord[] {
  if (!wanted.includes(readHeading(headings[index]?.text ?? '')?.meaning)) return [];
  const texts = new DistinctTexts(cells);
  const words: (ExplainedWord | undefined)[] = [];
  const places: { cell: number; word: number }[] = [];
  let dynamics = 0;
  for (const row of data) {
    const cell = cells.cell(row, index);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell]) continue;
    const number = texts.numberOf(cell);
    places.push({ cell, word: number });
    if (number < words.length) continue;
    const word = cells.plain(cell);
    const entry = word.length > mostWords ? undefined : legend.get(bareWord(word));
    const taken = entry && written(entry, bareWord(word), layers);
    if (taken === undefined && !isKnown(word)) return [];
    if (dynamicIn(word) >= 0) dynamics++;
    const span = { start: cells.starts[cell], end: cells.ends[cell] };
    words.push(taken === undefined || !entry ? undefined : { word, taken, text: entry.text, span });
    if (words.length > mostWords) return [];
  }
  const used = words.filter((one) => one !== undefined);
  // Dynamics are shared out by what the text says of them, together with those of other kinds.
  if (used.length === 0 || (meaning === 'velocity_range' && dynamics === words.length)) return [];
  for (const { cell, word } of places) {
    const found = words[word];
    if (found) cells.rewritten.set(cell, found.taken);
  }
  return used;
}
