import { namesAudioFileIn } from '../../../model/fileNames';
import { namedStatement, tellsHowToRead } from '../../../trade/statements/namedStatement';
import { decodeXmlAttribute, decodeXmlText } from '../../../xml/scan/references';
import { TableCells } from '../cells';
import { placedRows } from './cellSpans';
import type { TextSpan, XmlElement } from './xmlElements';
import { xmlElements } from './xmlElements';
import { xmlGrid } from './xmlGrid';
import { xmlLists } from './xmlLists';

const longest = 8_000_000;
const mostColumns = 200;
const longestTitle = 60;

/**
 * The cells of rows in XML of any names, as spreadsheets are written: cells that cover several rows or columns stand in each of the
 * rows and in the first of the columns; or those of parallel lists. `undefined` where a text has no such rows that name audio files.
 */
export function xmlCells(text: string): TableCells | undefined {
  if (text.length > longest || !/^\ufeff?\s*</.test(text.slice(0, 1000))) return undefined;
  const elements = xmlElements(text);
  const grid = xmlGrid(text, elements);
  if (!grid) return xmlLists(text, elements);
  const cells = new TableCells(text);
  const spans: TextSpan[] = [];
  const sections = new Set(grid.rows.map(({ parent }) => parent));
  const others = otherTables(text, grid.rows);
  let section: XmlElement | undefined;
  for (const [number, row] of placedRows(text, grid).entries()) {
    const element = grid.rows[number];
    if (!element) continue;
    const title = element.parent === section || sections.size < 2 ? undefined : titleOf(text, element.parent);
    section = element.parent;
    if (title) {
      cells.put(title.start, title.end);
      cells.endRow();
      spans.push(title);
    }
    if (others.has(section)) {
      putCell(
        cells,
        text,
        row.flatMap((one) => spansOf(one.cell, grid.value)),
      );
      cells.endRow();
      spans.push({ start: element.start, end: element.end });
      continue;
    }
    let column = 0;
    for (const one of row) {
      for (; column < Math.min(one.column, mostColumns); column++) cells.put(element.start, element.start);
      putCell(cells, text, spansOf(one.cell, grid.value));
      column++;
      for (let more = 1; more < one.columns && column < mostColumns; more++, column++)
        cells.put(element.start, element.start);
    }
    cells.endRow();
    spans.push({ start: element.start, end: element.end });
  }
  cells.rowSpans = spans;
  cells.around = textsAround(text, elements.comments, elements.all, grid.rows);
  return cells;
}

/**
 * The elements around rows of which none names an audio file, where those in others do: tables of something else, such as another
 * sheet. Each of their rows comes to one text, so that it is told of and is no zone.
 */
function otherTables(text: string, rows: readonly XmlElement[]): ReadonlySet<XmlElement | undefined> {
  const naming = new Map<XmlElement | undefined, boolean>();
  for (const row of rows) {
    const known = naming.get(row.parent) === true;
    naming.set(row.parent, known || namesAudioFileIn(text.slice(row.start, row.end)));
  }
  if (![...naming.values()].includes(true)) return new Set();
  // Headings may stand in an element of their own, before the rows.
  const [first] = [...naming].flatMap(([parent, names]) => (parent && names ? [parent] : []));
  const isLater = (parent: XmlElement | undefined) =>
    first === undefined || (parent?.start ?? 0) > first.start;
  return new Set([...naming].flatMap(([parent, names]) => (!names && isLater(parent) ? [parent] : [])));
}

function spansOf({ attributes, texts, start }: XmlElement, value: string | undefined): readonly TextSpan[] {
  const span = value === undefined ? undefined : attributes.get(value);
  if (span) return [span];
  return texts.length > 0 ? texts : [{ start, end: start }];
}

/** Adds a cell with the text that stands in it, its character references put in. */
function putCell(cells: TableCells, text: string, spans: readonly TextSpan[]): void {
  const [first, last] = [spans[0], spans.at(-1)];
  if (!first || !last) return;
  const said = spans.map(({ start, end }) => text.slice(start, end));
  const value = decodeXmlText(said.join(' ')).replace(/\s+/g, ' ').trim();
  const cell = cells.add(first.start, value === '' ? first.start : last.end);
  if (value !== text.slice(cells.starts[cell], cells.ends[cell])) cells.rewritten.set(cell, value);
}

/** The words that an element around some of the rows has for a name. */
function titleOf(text: string, element: XmlElement | undefined): TextSpan | undefined {
  return [...(element?.attributes.values() ?? [])].find(
    ({ start, end }) => end - start <= longestTitle && /\p{L}/u.test(text.slice(start, end)),
  );
}

const mostTexts = 100;

/** What attributes outside of rows say in several words, or of how values are read in one. */
function attributesAround(text: string, outside: readonly XmlElement[]): string[] {
  return outside.flatMap(({ attributes }) =>
    [...attributes].flatMap(([name, { start, end }]) => {
      const value = decodeXmlAttribute(text.slice(start, end));
      const statement = namedStatement(name, value);
      return /\S\s+\S/.test(value) || tellsHowToRead(statement) ? [statement] : [];
    }),
  );
}

/** Comments, and what elements that hold no rows and attributes around rows say. */
function textsAround(
  text: string,
  comments: readonly TextSpan[],
  all: readonly XmlElement[],
  rows: readonly XmlElement[],
): string[] {
  const [first, last] = [rows[0]?.start ?? 0, rows.at(-1)?.end ?? 0];
  const outside = all.filter(
    ({ start, end, children }) => children.length === 0 && (end <= first || start >= last),
  );
  const said = [...comments, ...outside.flatMap(({ texts }) => texts)].slice(0, mostTexts);
  const named = outside
    .flatMap(({ name, texts }) => texts.map(({ start, end }) => namedStatement(name, text.slice(start, end))))
    .slice(0, mostTexts);
  const around = all.filter(
    ({ start, end }) => end <= first || start >= last || (start < first && end > last),
  );
  return [
    ...said.map(({ start, end }) => text.slice(start, end).trim()).filter((one) => one !== ''),
    ...named.filter(tellsHowToRead),
    ...attributesAround(text, around).slice(0, mostTexts),
  ];
}
