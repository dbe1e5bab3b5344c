import { isAudioFileName, namesAudioFileIn } from '../../model/fileNames';
import { isPageNumber } from '../../trade/headings/headings';
import { isTotal } from '../../trade/headings/sums';
import { readKeyRange } from '../../trade/readings/keyReading';
import { readNumber } from '../../trade/readings/numberReading';
import { saysOnRelease } from '../../trade/readings/startInTitle';
import { statedSettings } from '../../trade/statements/settings';
import { isSwitchTitle } from '../../trade/switchTitles';
import { doubleHeadings } from '../headings/doubleHeadings';
import type { ColumnHeading } from '../headings/headingRows';
import {
  countValues,
  findHeading,
  headingsOf,
  isHeadingRow,
  mostColumns,
  singleHeadings,
} from '../headings/headingRows';
import type { Assumption, TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import { isRuling } from './split/delimiter';

/** One table of a text: its headings and the rows that are left for zones. */
export interface TableRows {
  /** By column; without text where the table has no headings. */
  headings: ColumnHeading[];
  /** Rows that may be zones, in the order of the text. */
  data: number[];
  /** For rows in {@link data}, the cell with the title of the section they stand in. */
  sections: Map<number, number>;
  /** Rows that are no zones, and why. */
  others: { row: number; why: string }[];
  /** Rows of {@link data} that a blank line stands before. */
  afterBlank: number[];
  /** The number of columns. */
  width: number;
  /** Whether rows are wider than {@link mostColumns}. */
  cut: boolean;
}

/** Rows are compared by so many characters. */
const longestRowText = 2000;

/** The title of a section that gives a key switch behind its name: `[Short]  keyswitch 13`. */
const longestTitle = 80;
const mostInTitle = 80;
/** A title that says something of the rows below it may be longer, and part into some cells. */
const longestSettings = 200;
const mostInSettings = 5;
/** So many lines below a sentence the table may begin that it is about. */
const mostApart = 4;

/** A line with the number of a page may hold a title too. */
const mostInPageLine = 3;

/** So many tables of one text are told apart. */
const mostTables = 200;
/** So many zones above the first headings are a table of their own (our choice). */
const fewestAbove = 2;

/** Why a row that repeats the headings is no zone. */
export const repeatsHeadings = 'repeats the headings';

/** Finds the tables among the rows of a text, one after another; a first table without headings is one as well. */
export function findTables(cells: TableCells): TableRows[] {
  return new TableFinder(cells).find();
}

class TableFinder {
  readonly #tables: TableRows[] = [];
  readonly #rows: number[] = [];
  /** The rows that hold headings, and what they read. */
  #headingRows: readonly number[] = [];
  #headingTexts: readonly string[] = [];
  #table: TableRows | undefined;
  /** The title that goes for the rows to come, and one that was read after the last row of data. */
  #title = -1;
  #nextTitle = -1;
  /** A title above the first headings: that of a group only where others follow. */
  #firstTitle = -1;
  /** Whether a blank line stands between it and the headings. */
  #isApart = false;
  /** Later titles, and those with headings of their own below a blank line. */
  #titles = 0;
  #titlesWithHeadings = 0;
  #headingsAfterTitle = false;
  #titled = 0;
  /** The lines above the first headings, as they may stand on each page. */
  readonly #above = new Set<string>();
  readonly #width: number;
  readonly #filesSeen: boolean;

  constructor(readonly cells: TableCells) {
    let width = 0;
    for (let row = 0; row < cells.rowCount; row++) {
      if (cells.filled(row) > 0 && !isRuling(cells, row)) {
        this.#rows.push(row);
        width = Math.max(width, cells.width(row));
      }
    }
    this.#width = width;
    this.#filesSeen = this.#rows.slice(0, 100).some((row) => {
      for (let column = 0; column < Math.min(cells.width(row), 50); column++) {
        if (isAudioFileName(cells.value(cells.cell(row, column)))) return true;
      }
      return false;
    });
  }

  find(): TableRows[] {
    const { cells } = this;
    const found = findHeading(cells, this.#rows);
    const above = found < 0 ? [] : this.#rows.filter((row) => row < found && this.#isZone(row));
    // Headings below all zones explain them as a text does; those between zones begin another table.
    const areBelow =
      above.length >= fewestAbove && !this.#rows.some((row) => row > found && this.#isZone(row));
    const heading = areBelow ? -1 : found;
    const none = Array.from({ length: Math.min(this.#width, mostColumns) }, () => ({ text: '', cell: -1 }));
    let before: number[] = [];
    if (heading < 0 || above.length >= fewestAbove) this.#open([], none);
    else {
      const { rows } = this.#headingsAt(heading);
      before = this.#rows.filter((row) => row < rows[0]);
      for (const row of before) this.#above.add(this.#likeText(row));
      const last = before.at(-1);
      const adjacent = last !== undefined && !this.#isBlank(rows[0] - 1);
      this.#isApart = !adjacent;
      if (last !== undefined && this.#isTitle(last)) this.#firstTitle = this.#onlyCell(last);
    }
    for (const row of this.#rows) {
      if (before.length > 0 && before.includes(row)) continue;
      this.#take(row, heading);
    }
    const first = this.#tables[0];
    for (const row of before) first.others.push({ row, why: 'stands above the zones' });
    // Where a blank line parts a title from its headings, it does so below all others; else the title is that of the text.
    const alike = !this.#isApart || this.#titles === this.#titlesWithHeadings;
    if (this.#firstTitle >= 0 && this.#titled > 0 && alike) this.#nameFirstSection(first);
    // A title above all rows, and no other, is that of the text.
    if (heading < 0 && this.#titles === 1 && first.data.every((row) => first.sections.has(row)))
      first.sections.clear();
    return this.#tables.filter(({ data }, at) => data.length > 0 || at === 0);
  }

  /** Whether a row has a file and a value beside it. */
  #isZone(row: number): boolean {
    const { cells } = this;
    const width = Math.min(cells.width(row), 50);
    for (let column = 0; column < width; column++)
      if (namesAudioFile(cells, cells.cell(row, column))) return countValues(cells, row) > 1;
    return false;
  }

  #take(row: number, heading: number): void {
    const { cells } = this;
    if (this.#headingRows.includes(row)) return;
    const table = this.#table;
    if (table && this.#saysHeadings(row)) {
      this.#headingsAfterTitle = this.#isBlank(row - 1);
      table.others.push({ row, why: repeatsHeadings });
    } else if (
      row === heading ||
      !table ||
      (heading >= 0 && this.#tables.length < mostTables && isHeadingRow(cells, row))
    ) {
      const { rows, headings, told } = this.#headingsAt(row);
      this.#open(rows, headings);
      if (told && !cells.assumptions.some(({ text }) => text === told.text))
        cells.assumptions = [...cells.assumptions, told];
      this.#title = -1;
      this.#headingsAfterTitle = this.#isBlank(row - 1);
    } else if (this.#above.size > 0 && this.#above.has(this.#likeText(row))) {
      table.others.push({ row, why: 'repeats a line above the headings' });
    } else if (cells.filled(row) <= mostInPageLine && this.#numbersPage(row)) {
      table.others.push({ row, why: 'numbers a page' });
    } else if (this.#isTitle(row) || this.#introducesReleases(row)) {
      this.#nextTitle = this.#onlyCell(row);
      this.#headingsAfterTitle = false;
      table.others.push({ row, why: 'is a line of text' });
    } else {
      if (this.#isBlank(row - 1) && table.data.length > 0) table.afterBlank.push(row);
      table.data.push(row);
      // What ends in a colon before a sentence leads to it.
      if (this.#nextTitle >= 0 && this.#isSentence(row) && cells.value(this.#nextTitle).endsWith(':'))
        this.#nextTitle = -1;
      if (this.#nextTitle >= 0) {
        this.#title = this.#nextTitle;
        this.#titles++;
        if (this.#headingsAfterTitle) this.#titlesWithHeadings++;
      }
      this.#nextTitle = -1;
      if (this.#title >= 0) {
        table.sections.set(row, this.#title);
        this.#titled++;
      }
    }
  }

  /** The headings of the row that was found, or of one beside it that contradicts it, and the rows that they stand in. */
  #headingsAt(row: number): { headings: ColumnHeading[]; rows: number[]; told?: Assumption } {
    const width = Math.min(this.#width, mostColumns);
    const double = doubleHeadings(this.cells, row);
    if (!double) return headingsOf(this.cells, row, width);
    const { used, other, told } = double;
    return {
      headings: singleHeadings(this.cells, used, width),
      rows: [used, other].sort((a, b) => a - b),
      told,
    };
  }

  #open(headingRows: readonly number[], headings: ColumnHeading[]): void {
    const width = Math.min(this.#width, mostColumns);
    this.#headingRows = headingRows;
    this.#headingTexts = headingRows.map((row) => this.#rowText(row));
    this.#table = {
      headings,
      data: [],
      sections: new Map(),
      others: [],
      afterBlank: [],
      width,
      cut: this.#width > mostColumns,
    };
    this.#tables.push(this.#table);
  }

  #nameFirstSection({ data, sections }: TableRows): void {
    for (const row of data) {
      if (sections.has(row)) return;
      sections.set(row, this.#firstTitle);
    }
  }

  #isBlank(row: number): boolean {
    return row >= 0 && this.cells.filled(row) === 0;
  }

  /** Whether a cell of a row numbers a page, and none names a file. */
  #numbersPage(row: number): boolean {
    const { cells } = this;
    const texts = Array.from({ length: Math.min(cells.width(row), 50) }, (_, column) =>
      cells.value(cells.cell(row, column)),
    );
    return texts.some(isPageNumber) && !texts.some(isAudioFileName);
  }

  /** The text of a row without its numbers and the blanks between its words. */
  #likeText(row: number): string {
    return this.#rowText(row).replace(/\d+/g, '0').replace(/\s+/g, ' ').trim();
  }

  /** Whether a row among those of files is a line of words. */
  #isSentence(row: number): boolean {
    const { cells } = this;
    if (!this.#filesSeen || this.#width < 3 || cells.filled(row) !== 1) return false;
    const text = cells.value(this.#onlyCell(row));
    return /\p{L}+ \p{L}+ \p{L}/u.test(text) && !isAudioFileName(text);
  }

  /** A row with nothing but a few words: no file, key, number or sum. */
  #isTitle(row: number): boolean {
    const { cells } = this;
    const isSwitch = this.#givesSwitch(row) || this.#givesSettings(row);
    if (!isSwitch && (cells.filled(row) !== 1 || (this.#width <= 2 && !this.#filesSeen))) return false;
    const text = cells.plain(this.#onlyCell(row));
    return (
      (text.length <= mostInTitle || (isSwitch && text.length <= longestSettings)) &&
      /\p{L}/u.test(text) &&
      !/^(?:\/\/|;|=(?!=)|\()|[.,!?]$/.test(text) &&
      !isAudioFileName(text) &&
      !isTotal(text) &&
      !isPageNumber(text) &&
      readKeyRange(text) === undefined &&
      readNumber(text) === undefined
    );
  }

  /** Whether a sentence above headings says that the zones below sound when a key is let go; its cell then reads as the first sentence. */
  #introducesReleases(row: number): boolean {
    const { cells } = this;
    if (cells.filled(row) !== 1) return false;
    const cell = this.#onlyCell(row);
    const text = cells.value(cell);
    if (text.length > longestSettings || namesAudioFileIn(text) || !saysOnRelease(text)) return false;
    let below = row + 1;
    while (below < row + mostApart && this.#isBlank(below)) below++;
    if (below >= cells.rowCount || !this.#beginsTable(below)) return false;
    cells.rewritten.set(cell, text.split(/[.!?:](?=\s|$)/u)[0] ?? text);
    return true;
  }

  #beginsTable(row: number): boolean {
    return this.#saysHeadings(row) || isHeadingRow(this.cells, row);
  }

  /** Whether a row of words in square brackets or before a colon gives a key switch; its first cell then reads as the whole row. */
  #givesSwitch(row: number): boolean {
    const { cells } = this;
    const filled = cells.filled(row);
    if (filled < 2 || filled > 3) return false;
    const { start, end } = cells.rowSpan(row);
    const text = cells.text.slice(start, Math.min(end, start + longestTitle));
    if (isAudioFileName(cells.value(this.#onlyCell(row))) || namesAudioFileIn(text) || !isSwitchTitle(text))
      return false;
    cells.rewritten.set(this.#onlyCell(row), text.replace(/\s+/g, ' '));
    return true;
  }

  /** Whether a row, though it is in several cells, says as a whole what goes for the rows below; its first cell then reads so. */
  #givesSettings(row: number): boolean {
    const { cells } = this;
    const filled = cells.filled(row);
    if (filled < 1 || filled > mostInSettings || (filled > 2 && filled * 2 > this.#width)) return false;
    const { start, end } = cells.rowSpan(row);
    if (end - start > longestSettings) return false;
    const first = cells.value(this.#onlyCell(row));
    if (isAudioFileName(first) || !/\p{L}{2}/u.test(first) || readKeyRange(first)) return false;
    const text = filled === 1 ? first : cells.text.slice(start, end);
    if (namesAudioFileIn(text) || !statedSettings(text)) return false;
    if (filled > 1) cells.rewritten.set(this.#onlyCell(row), text.replace(/\s+/g, ' '));
    return true;
  }

  /** The first cell of a row that holds something. */
  #onlyCell(row: number): number {
    const end = this.cells.rowFirst[row + 1];
    let cell = this.cells.rowFirst[row];
    while (cell < end && this.cells.starts[cell] === this.cells.ends[cell]) cell++;
    return cell < end ? cell : -1;
  }

  #saysHeadings(row: number): boolean {
    const { cells } = this;
    if (cells.rowSpans !== undefined) return this.#headingTexts.includes(this.#rowText(row));
    const { start, end } = cells.rowSpan(row);
    const length = Math.min(end - start, longestRowText);
    return this.#headingTexts.some((text) => text.length === length && cells.text.startsWith(text, start));
  }

  #rowText(row: number): string {
    const { cells } = this;
    if (cells.rowSpans === undefined) {
      const { start, end } = cells.rowSpan(row);
      return cells.text.slice(start, Math.min(end, start + longestRowText));
    }
    const width = Math.min(cells.width(row), mostColumns);
    return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join('\t');
  }
}
