import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import type { PreviewTableResult, TableNote } from '../../../server/protocol/requests/tableRequests';
import { l10n } from '../../webview/page/l10n';

const mostNotes = 200;

/** The rows of a table with the notes beside them. */
export function previewRows({ rows, rowCount, notes }: PreviewTableResult): TemplateResult {
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const more = rowCount - rows.length;
  return html`<table class="rows">
    <thead>
      <tr>
        <th scope="col">${l10n.t('Line')}</th>
        <th scope="col">${l10n.t('Notes')}</th>
        <th scope="col" colspan=${Math.max(1, width)}>${l10n.t('Cells')}</th>
      </tr>
    </thead>
    <tbody>
      ${rows.map(({ line, cells, isHeading, notes: own }) => {
        const beside = own.flatMap((at) => notes[at] ?? []);
        const list = html`<ul>
          ${beside.map(noteItem)}
        </ul>`;
        return html`<tr class=${classMap({ heading: isHeading, noted: beside.length > 0 })}>
          <th scope="row" class="line-number">${line}</th>
          <td class="notes">${beside.length === 0 ? nothing : list}</td>
          ${Array.from({ length: width }, (_, at) => html`<td>${cells[at] ?? ''}</td>`)}
        </tr>`;
      })}
      ${
        more > 0
          ? html`<tr>
              <td colspan=${width + 2} class="quiet">${l10n.t('and {0} more rows', more)}</td>
            </tr>`
          : nothing
      }
    </tbody>
  </table>`;
}

/** Notes that are about no row in particular, or about one that is not shown. */
export function otherNotes({ rows, notes }: PreviewTableResult): TemplateResult | typeof nothing {
  const beside = new Set(rows.flatMap((row) => row.notes));
  const others = notes.filter((_, at) => !beside.has(at));
  if (others.length === 0) return nothing;
  const more = others.length - mostNotes;
  return html`<ul class="other-notes">
    ${others.slice(0, mostNotes).map(noteItem)}
    ${more > 0 ? html`<li>${l10n.t('and {0} more notes', more)}</li>` : nothing}
  </ul>`;
}

function noteItem({ kind, message }: TableNote): TemplateResult {
  return html`<li class="note"><span class="kind">${kind}</span> ${message}</li>`;
}

/** Text to be written, with how much more of it there is. */
export function shownText({ markup, moreLines }: PreviewTableResult): string {
  return moreLines === 0 ? markup : `${markup}\n${l10n.t('… and {0} more lines', moreLines)}`;
}
