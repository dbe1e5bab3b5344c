import { escapeMarkup } from '../../../server/map/escape';
import type { PreviewTableResult, TableNote } from '../../../server/protocol/requests/tableRequests';

const mostNotes = 200;
const mostLines = 1500;

/** The rows of a table with the notes beside them. */
export function rowsMarkup({ rows, rowCount, notes }: PreviewTableResult): string {
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const body = rows.map(({ line, cells, isHeading, notes: own }) => {
    const all = Array.from({ length: width }, (_, at) => `<td>${escapeMarkup(cells[at] ?? '')}</td>`);
    const beside = own.flatMap((at) => notes[at] ?? []);
    const list =
      beside.length === 0
        ? ''
        : `<ul>${beside.map((note) => `<li class="note">${noteMarkup(note)}</li>`).join('')}</ul>`;
    const classes = [isHeading ? 'heading' : '', beside.length > 0 ? 'noted' : ''].filter(Boolean).join(' ');
    return `<tr${classes === '' ? '' : ` class="${classes}"`}><th scope="row" class="line-number">${line}</th><td class="notes">${list}</td>${all.join('')}</tr>`;
  });
  const more = rowCount - rows.length;
  const rest = more > 0 ? `<tr><td colspan="${width + 2}" class="quiet">and ${more} more rows</td></tr>` : '';
  const head = `<thead><tr><th scope="col">Line</th><th scope="col">Notes</th><th scope="col" colspan="${Math.max(1, width)}">Cells</th></tr></thead>`;
  return `${head}<tbody>${body.join('')}${rest}</tbody>`;
}

/** Notes that are about no row in particular, or about one that is not shown. */
export function otherNotesMarkup({ rows, notes }: PreviewTableResult): string {
  const beside = new Set(rows.flatMap((row) => row.notes));
  const others = notes.filter((_, at) => !beside.has(at));
  const items = others.slice(0, mostNotes).map((note) => `<li class="note">${noteMarkup(note)}</li>`);
  if (others.length > mostNotes) items.push(`<li>and ${others.length - mostNotes} more notes</li>`);
  return items.join('');
}

function noteMarkup({ kind, message }: TableNote): string {
  return `<span class="kind">${kind}</span> ${escapeMarkup(message)}`;
}

/** Text to be written, as much of it as a person looks through. */
export function shownText(markup: string): string {
  const lines = markup.split(/\r\n|\r|\n/);
  if (lines.length <= mostLines) return markup;
  return `${lines.slice(0, mostLines).join('\n')}\n… and ${lines.length - mostLines} more lines`;
}
