import { editedText } from '../../model/editing/changedInstrument';
import type { Steps } from '../../model/steps';
import { inPart, piecesInStep } from '../../model/steps';
import { lineEndAt, lineStartAt } from '../../model/text/textLayout';
import type { ConvertedTable } from '../../pasting/convertTable';
import { tableCellsInSteps } from '../../table/cells/tableCells';
import type { PreviewColumn, PreviewRow, PreviewTableResult } from '../requests/tableRequests';

const mostRows = 200;
const mostColumns = 100;
const mostExamples = 3;
const longestCell = 120;

/** What a preview shows of a table's text. */
export interface TableSheet {
  columns: PreviewColumn[];
  rows: PreviewRow[];
  rowCount: number;
}

/** The columns and the first rows of a table, with the notes beside the rows that they are about. */
export function* tableSheet({ table, reading, notes }: ConvertedTable): Steps<TableSheet> {
  const cells = yield* inPart(tableCellsInSteps(table.text), 0, 0.5);
  const headingStarts = reading.columns.flatMap(({ headingSpan }) => headingSpan?.start ?? []);
  // Titles and totals give no examples of what a column holds.
  const zones = new Set<number>();
  const list = reading.grouped?.zones;
  for (let zone = 0; list && zone < list.count; zone++) {
    if (zone % piecesInStep === 0) yield 0.5 + (0.2 * zone) / list.count;
    zones.add(list.rowSpan(zone).start);
  }
  const rows: PreviewRow[] = [];
  const examples = reading.columns.map(() => new Set<string>());
  let rowCount = 0;
  let noted = 0;
  const byPlace = notes
    .map((note, index) => ({ ...note, index }))
    .filter(({ end }) => end > 0)
    .sort((a, b) => a.start - b.start);
  for (let row = 0; cells && row < cells.rowCount; row++) {
    if (row % piecesInStep === 0) yield 0.7 + (0.3 * row) / cells.rowCount;
    if (cells.filled(row) === 0) continue;
    rowCount++;
    if (rows.length >= mostRows) continue;
    const { start, end } = cells.rowSpan(row);
    const width = Math.min(cells.width(row), mostColumns);
    const texts = Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column)));
    // The labels of a first record are the headings too, so that their places lie in both rows.
    const isHeading =
      headingStarts.some((at) => at >= start && at < Math.max(end, start + 1)) &&
      !(zones.has(start) && reading.columns.every(({ index, heading }) => texts[index] !== heading));
    const own: number[] = [];
    while ((byPlace[noted]?.start ?? Number.POSITIVE_INFINITY) < start) noted++;
    for (let at = noted; at < byPlace.length && (byPlace[at]?.start ?? 0) <= end; at++)
      own.push(byPlace[at]?.index);
    rows.push({
      line: table.positionAt(start).line,
      cells: texts.map((text) => shortened(text)),
      isHeading,
      notes: own,
    });
    if (isHeading || (zones.size > 0 && !zones.has(start))) continue;
    for (const { index } of reading.columns) {
      const text = shortened(texts[index] ?? '');
      if (text !== '' && (examples[index]?.size ?? mostExamples) < mostExamples) examples[index]?.add(text);
    }
  }
  const columns = reading.columns
    .slice(0, mostColumns)
    .map(({ index, heading, meaning, confidence, evidence, scale }) => ({
      index,
      heading: shortened(heading),
      meaning,
      confidence,
      evidence,
      examples: [...(examples[index] ?? [])],
      ...(scale && { scale }),
    }));
  return { columns, rows, rowCount };
}

function shortened(text: string): string {
  return text.length > longestCell ? `${text.slice(0, longestCell)}…` : text;
}

/** The headings of a table in one word; empty where it has none. */
export function joinedHeadings({ reading }: ConvertedTable): string {
  const words = reading.columns.map(({ heading }) => heading.trim().replace(/\s+/g, ' ').toLowerCase());
  return words.every((word) => word === '') ? '' : words.join('\t');
}

/** What a change writes: the text put in, or of a change of regions that are there the lines as they become. */
export function writtenMarkup({ edits, addedCount, regionCount }: ConvertedTable, text: string): string {
  if (addedCount === regionCount && edits.length === 1) return edits[0]?.newText ?? '';
  const after = editedText(text, edits);
  const lines: string[] = [];
  let moved = 0;
  let done = -1;
  for (const { start, end, newText } of [...edits].sort((a, b) => a.start - b.start)) {
    const lead = /^[\r\n]*/.exec(newText)?.[0].length ?? 0;
    const from = lineStartAt(after, start + moved + lead);
    const to = lineEndAt(after, start + moved + newText.length);
    if (from > done) lines.push(after.slice(from, to));
    else if (to > done) lines.push(after.slice(done, to));
    done = Math.max(done, to);
    moved += newText.length - (end - start);
  }
  return lines.join('\n');
}

/** So many lines of a text are shown. */
const mostLines = 1500;

/** As much of a text as a person looks through, and how many lines more there are. */
export function shownMarkup(markup: string): Pick<PreviewTableResult, 'markup' | 'moreLines'> {
  const breaks = /\r\n|\r|\n/g;
  let [lines, end] = [1, markup.length];
  for (let found = breaks.exec(markup); found; found = breaks.exec(markup)) {
    if (lines === mostLines) end = found.index;
    lines++;
  }
  return { markup: markup.slice(0, end), moreLines: Math.max(0, lines - mostLines) };
}
