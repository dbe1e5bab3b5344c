import { escapeMarkup } from '../map/escape';

/** Lines that have a row; the rest is counted. */
const mostRows = 1000;

/** A table under a heading, as wide as it needs to be. */
export function tableSection(
  title: string,
  columns: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const head = columns.map((column) => `<th scope="col">${escapeMarkup(column)}</th>`).join('');
  const cell = (text: string) =>
    `<td${/^[+−-]?[\d.]+ (dB|LU|cents|ms)$/.test(text) ? ' class="number"' : ''}>${escapeMarkup(text)}</td>`;
  const body = rows.slice(0, mostRows).map((cells) => `<tr>${cells.map(cell).join('')}</tr>`);
  const more = rows.length > mostRows ? `<p>… and ${rows.length - mostRows} more.</p>` : '';
  return `<h2>${escapeMarkup(title)}</h2>\n<div class="wide" tabindex="0" role="region" aria-label="${escapeMarkup(title)}"><table><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>${more}`;
}
