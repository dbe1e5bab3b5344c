import { likelyHeading } from '../../../trade/headings/headings';
import type { ColumnMeaning } from '../../../trade/meaning';
import { notesInFileName, readKey } from '../../../trade/readings/keyReading';
import type { TableCells } from '../../cells/cells';
import { namesAudioFile } from '../../cells/namesAudioFile';
import type { TableRows } from '../../cells/tableRows';
import { shortened } from '../columnReading';

const mostColumns = 40;
/** So many rows have to agree (our choice). */
const leastRows = 2;
const keyHeadings: ReadonlySet<ColumnMeaning> = new Set(['pitch_keycenter', 'key']);
/** A letter or a syllable, and a sign behind it. */
const bare = /^[\p{L}#\u266f\u266d]{1,6}$/u;
const octaves = Array.from({ length: 12 }, (_, at) => at - 2);
/** An octave that a name says by a word or a folder: `oct3`, `Okt. 4`, `o5`. */
const octaveWord =
  /(?<!\p{L})(?:oct(?:ave)?|okt(?:av|ave)?|octava|ottava|oitava|o)[ ._-]{0,2}(-?\d)(?!\d)/giu;

/**
 * Puts the octaves that stand in the names of the samples behind roots that are letters alone, as `G#` beside `Vibra_G#3.wav`, where no
 * name says another note. It is told in the cells' assumptions.
 */
export function useNameOctaves(cells: TableCells, tables: readonly TableRows[]): void {
  for (const { headings, data, width } of tables) {
    for (let column = 0; column < Math.min(width, mostColumns); column++) {
      const { text: heading = '' } = headings[column] ?? {};
      if (!areBare(cells, data, column) || !keyHeadings.has(likelyHeading(heading)?.meaning ?? 'unknown'))
        continue;
      const found = wholeNames(cells, data, column, width);
      const [first] = found?.keys() ?? [];
      if (!found || first === undefined || found.size < leastRows) continue;
      for (const [cell, text] of found) cells.rewritten.set(cell, text);
      const text = `The notes under "${shortened(heading)}" have no octaves; those in the names of the samples are taken.`;
      cells.assumptions = [
        ...cells.assumptions,
        { text, start: cells.starts[first], end: cells.ends[first] },
      ];
    }
  }
}

/** Whether all cells of a column are notes without an octave. */
function areBare(cells: TableCells, data: readonly number[], column: number): boolean {
  let filled = 0;
  for (const row of data) {
    const text = cells.plain(cells.cell(row, column)).trim();
    if (text === '') continue;
    if (!bare.test(text) || readKey(`${text}4`)?.named === undefined) return false;
    filled++;
  }
  return filled >= leastRows;
}

/** The notes of a column with their octaves, by cell; `undefined` where a name says none, or another note. */
function wholeNames(
  cells: TableCells,
  data: readonly number[],
  column: number,
  width: number,
): Map<number, string> | undefined {
  const found = new Map<number, string>();
  for (const row of data) {
    const cell = cells.cell(row, column);
    const note = cells.plain(cell).trim();
    if (note === '') continue;
    let name: string | undefined;
    for (let other = 0; other < width && name === undefined; other++)
      if (namesAudioFile(cells, cells.cell(row, other))) name = cells.value(cells.cell(row, other));
    const whole = name === undefined ? undefined : withOctave(note, name);
    if (whole === undefined) return undefined;
    found.set(cell, whole);
  }
  return found;
}

function withOctave(note: string, name: string): string | undefined {
  const stem = name.slice(-200).replace(/\.\w{1,5}$/, '');
  const notes = new Set(notesInFileName(name));
  if (notes.size > 0) {
    const fitting = octaves.filter((octave) => notes.has(readKey(`${note}${octave}`)?.named ?? Number.NaN));
    return fitting.length === 1 ? `${note}${fitting[0]}` : undefined;
  }
  const own = note.replace('#', '(?:#|s|is)');
  const beside = new RegExp(`(?<![\\p{L}\\d])${own}[ _-]?(\\d)(?![\\p{L}\\d])`, 'giu');
  for (const pattern of [octaveWord, beside]) {
    const said = new Set(Array.from(stem.matchAll(pattern), ([, octave]) => octave));
    const [octave] = said;
    if (octave !== undefined) return said.size === 1 ? `${note}${octave}` : undefined;
  }
  return undefined;
}
