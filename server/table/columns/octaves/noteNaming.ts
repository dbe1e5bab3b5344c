import { wordsOf } from '../../../trade/languages/spelling';
import { keyMeanings } from '../../../trade/meaning';
import type { NoteNaming } from '../../../trade/readings/keyReading';
import { isLinedName, octaveMarkOf } from '../../../trade/readings/keyReading';
import { withLatinNotes } from '../../../trade/readings/lookalikes';
import { LetterEvidence } from '../../../trade/readings/noteLetters';
import { linedNote } from '../../../trade/readings/notePatterns';
import type { TableCells } from '../../cells/cells';
import type { TableNotes } from '../../tableNotes';
import { evenlySpread } from '../columnContents';
import type { KeyTable } from './octave';

const mostRows = 500;
/** A capital with the number of an octave, where only small letters have one that counts lines. */
const numbered = new RegExp(`^(?=[A-H])${linedNote}[2-9]$`);
/** Words of headings that only Dutch has. */
const dutch = /^(?:toets|toetsen|grondtoon|bestand|aanslag|aanslagsterkte|noot|toon|laagste|hoogste)$/u;

/**
 * How the key columns of some tables name notes: as in German with H or `is` and `es`, as in Dutch, or as in English; and whether
 * marks alone say octaves; `isLined`: the text says that small letters have the number of their lines. Where nothing shows which note B is, that is noted.
 */
export function namingIn(
  cells: TableCells,
  tables: readonly KeyTable[],
  notes: TableNotes,
  isLined = false,
): NoteNaming {
  const letters = new LetterEvidence();
  const marks = { none: 0, mark: 0 };
  let [lined, great] = [0, 0];
  for (const text of keyTexts(cells, tables)) {
    letters.look(withLatinNotes(text));
    for (const part of text.split(/\s*[-\u2013\u2014]\s*|\s*\.{2,3}\s*/)) {
      const mark = octaveMarkOf(part);
      if (mark) marks[mark]++;
      if (isLinedName(part)) lined++;
      else if (numbered.test(part)) great++;
    }
  }
  const headings = tables.flatMap(({ columns }) => columns.flatMap(({ heading }) => wordsOf(heading)));
  const naming = letters.naming(headings.some((word) => dutch.test(word)));
  if (naming === 'german' && letters.isOpen) noteOpenB(tables, notes);
  // Only the great and the small octave have no number, and only where small letters with one count its lines.
  if (lined > 0 && (isLined || (marks.none > 0 && great === 0))) return `${naming} lines`;
  return marks.mark > 0 && marks.none > 0 ? `${naming} marks` : naming;
}

function* keyTexts(cells: TableCells, tables: readonly KeyTable[]): Generator<string> {
  for (const { data, columns } of tables) {
    for (const { meaning, index } of columns) {
      if (!keyMeanings.includes(meaning)) continue;
      for (const row of evenlySpread(data, mostRows)) {
        const cell = cells.cell(row, index);
        if (cell >= 0 && cells.digits(cell, 15) < 0) yield cells.plain(cell);
      }
    }
  }
}

function noteOpenB(tables: readonly KeyTable[], notes: TableNotes): void {
  const column = tables
    .flatMap(({ columns }) => columns)
    .find(({ meaning }) => keyMeanings.includes(meaning));
  notes.add(
    'assumed',
    column?.headingSpan ?? { start: 0, end: 0 },
    'Sharps and flats end in "is" and "es", and no note is named H: B is read as B flat, as in German. If the note below C is meant, as in Dutch, write H for it.',
  );
}
