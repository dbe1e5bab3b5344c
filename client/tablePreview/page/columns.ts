import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import type { PreviewColumn } from '../../../server/protocol/requests/tableRequests';
import type { ColumnScale } from '../../../server/table/columns/columnReading';
import type { ColumnMeaning } from '../../../server/trade/meaning';
import { meaningNames } from '../../../server/trade/meaning';
import type { Option } from '../../webview/page/controls/choice';
import { choiceList } from '../../webview/page/controls/choice';
import { l10n } from '../../webview/page/l10n';

/** From these confidences on a column counts as sure, and as likely (our choice). */
const sure = 0.85;
const likely = 0.6;

/** Columns whose meaning, and whose scale, were chosen. */
export interface ByHand {
  meanings: ReadonlySet<number>;
  scales: ReadonlySet<number>;
}

/** Takes what is chosen for a column; `null` stands for what is found by itself. */
type Choose<Value> = (column: number, value: Value | null) => void;

/**
 * The columns of a table as rows: heading, a few cells, meaning to choose, how its numbers are counted where that may be chosen, and
 * why.
 */
export function columnTable(
  columns: readonly PreviewColumn[],
  byHand: ByHand,
  choose: Choose<ColumnMeaning>,
  chooseScale: Choose<string>,
): TemplateResult {
  return html`<table class="columns">
    <thead>
      <tr>
        <th scope="col">${l10n.t('Column')}</th>
        <th scope="col">${l10n.t('Cells')}</th>
        <th scope="col">${l10n.t('Taken for')}</th>
        <th scope="col">${l10n.t('How sure, and why')}</th>
      </tr>
    </thead>
    <tbody>
      ${columns.map((column) => columnRow(column, byHand, choose, chooseScale))}
    </tbody>
  </table>`;
}

function columnRow(
  column: PreviewColumn,
  { meanings, scales }: ByHand,
  choose: Choose<ColumnMeaning>,
  chooseScale: Choose<string>,
): TemplateResult {
  const { index, heading, meaning, confidence, evidence, examples, scale } = column;
  const isByHand = meanings.has(index);
  const name = heading === '' ? l10n.t('Column {0}', index + 1) : heading;
  return html`<tr class=${classMap({ unused: meaning === 'unknown' })}>
    <th scope="row" class="column-name">
      <span class=${classMap({ quiet: heading === '' })}>${name}</span>
    </th>
    <td class="cells">${examples.map((one) => html`<span class="cell">${one}</span> `)}</td>
    <td>
      ${choiceList({
        id: `column-${index}`,
        label: l10n.t('Meaning of {0}', name),
        describedBy: `why-${index}`,
        options: meaningOptions(isByHand),
        value: meaning,
        isSearched: true,
        choose: (value) => choose(index, value === '' ? null : (value as ColumnMeaning)),
      })}
      ${scale ? scaleChoice(index, name, scale, scales.has(index), chooseScale) : nothing}
    </td>
    <td class="why" id="why-${index}">
      <span class="sureness">${surenessText(confidence, meaning, isByHand)}</span> ${isByHand ? '' : evidence.join(' ')}
      ${scale ? html`<div class="scale-why" id="scale-why-${index}">${scaleText(scale, scales.has(index))}</div>` : nothing}
    </td>
  </tr>`;
}

/** What the numbers of a column count in. */
function scaleChoice(
  index: number,
  name: string,
  { taken, options }: ColumnScale,
  isByHand: boolean,
  choose: Choose<string>,
): TemplateResult {
  const offered = options.map(({ id, label }) => ({ value: id, label }));
  return choiceList({
    id: `scale-${index}`,
    label: l10n.t('Scale of {0}', name),
    describedBy: `scale-why-${index}`,
    options: isByHand ? [{ value: '', label: l10n.t('automatic') }, ...offered] : offered,
    value: taken,
    choose: (value) => choose(index, value === '' ? null : value),
  });
}

function scaleText({ reason }: ColumnScale, isByHand: boolean): string {
  return isByHand ? l10n.t('Scale: set by hand.') : l10n.t('Scale: {0}', reason);
}

function meaningOptions(isByHand: boolean): Option[] {
  const options = (Object.keys(meaningNames) as ColumnMeaning[]).map((meaning) => ({
    value: meaning,
    label: meaning === 'unknown' ? l10n.t('not used') : meaningNames[meaning],
  }));
  return isByHand ? [{ value: '', label: l10n.t('automatic') }, ...options] : options;
}

/** How sure the reading of a column is, in words and as a share. */
function surenessText(confidence: number, meaning: ColumnMeaning, isByHand: boolean): string {
  if (isByHand) return l10n.t('Set by hand.');
  if (meaning === 'unknown') return l10n.t('Not understood.');
  const percent = `${Math.round(confidence * 100)} %`;
  if (confidence >= sure) return l10n.t('Sure ({0}).', percent);
  return confidence >= likely ? l10n.t('Likely ({0}).', percent) : l10n.t('A guess ({0}).', percent);
}
