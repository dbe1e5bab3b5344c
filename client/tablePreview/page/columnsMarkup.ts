import { escapeMarkup } from '../../../server/map/escape';
import type { PreviewColumn } from '../../../server/protocol/requests/tableRequests';
import type { ColumnMeaning } from '../../../server/trade/meaning';
import { meaningNames } from '../../../server/trade/meaning';

/** From these confidences on a column counts as sure, and as likely. */
const sure = 0.85;
const likely = 0.6;

/** The columns of a table as rows: heading, a few cells, meaning to choose, and why. `byHand` lists those that were chosen. */
export function columnsMarkup(columns: readonly PreviewColumn[], byHand: ReadonlySet<number>): string {
  const rows = columns.map((column) => columnMarkup(column, byHand.has(column.index)));
  return `<thead><tr><th scope="col">Column</th><th scope="col">Cells</th><th scope="col">Taken for</th><th scope="col">How sure, and why</th></tr></thead><tbody>${rows.join('')}</tbody>`;
}

function columnMarkup(
  { index, heading, meaning, confidence, evidence, examples }: PreviewColumn,
  isByHand: boolean,
): string {
  const name = heading === '' ? `Column ${index + 1}` : heading;
  const shown = heading === '' ? `<span class="quiet">${name}</span>` : escapeMarkup(name);
  const cells = examples.map((one) => `<span class="cell">${escapeMarkup(one)}</span>`).join(' ');
  const why = evidence.map(escapeMarkup).join(' ');
  return `<tr${meaning === 'unknown' ? ' class="unused"' : ''}><th scope="row" class="column-name">${shown}</th><td class="cells">${cells}</td><td><select id="column-${index}" data-column="${index}" aria-label="Meaning of ${escapeMarkup(name)}" aria-describedby="why-${index}">${meaningOptions(meaning, isByHand)}</select></td><td class="why" id="why-${index}"><span class="sureness">${surenessText(confidence, meaning, isByHand)}</span> ${isByHand ? '' : why}</td></tr>`;
}

function meaningOptions(chosen: ColumnMeaning, isByHand: boolean): string {
  const options = (Object.keys(meaningNames) as ColumnMeaning[]).map((meaning) => {
    const name = meaning === 'unknown' ? 'not used' : meaningNames[meaning];
    return `<option value="${meaning}"${meaning === chosen ? ' selected' : ''}>${name}</option>`;
  });
  return (isByHand ? '<option value="">as found by itself</option>' : '') + options.join('');
}

/** How sure the reading of a column is, in words and as a share. */
export function surenessText(confidence: number, meaning: ColumnMeaning, isByHand: boolean): string {
  if (isByHand) return 'Set by hand.';
  if (meaning === 'unknown') return 'Not understood.';
  const percent = `${Math.round(confidence * 100)} %`;
  if (confidence >= sure) return `Sure (${percent}).`;
  return confidence >= likely ? `Likely (${percent}).` : `A guess (${percent}).`;
}
