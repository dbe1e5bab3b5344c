import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type {
  MiddleCChoice,
  PreviewGrouping,
  PreviewSample,
  PreviewTableResult,
  TableDecisions,
} from '../../../server/protocol/requests/tableRequests';
import { checkbox } from '../../webview/page/controls/checkbox';
import { choiceList } from '../../webview/page/controls/choice';
import { l10n } from '../../webview/page/l10n';
import type { PreviewFromPage, ShownPlace } from '../messages';

const mostSamples = 100;

type Tell = (message: PreviewFromPage) => void;
type Part = TemplateResult | typeof nothing;

/** What can be decided about a table beside its columns. */
export function tableChoices(
  preview: PreviewTableResult,
  decisions: TableDecisions,
  place: ShownPlace,
  tell: Tell,
): TemplateResult {
  return html`<section class="choices" aria-label=${l10n.t('Choices')}>
    ${place.kind === 'new' ? notationChoice(place.format, tell) : nothing}
    ${middleCChoice(preview.middleC, decisions.middleC ?? 'auto', tell)}
    ${
      place.kind === 'document' && preview.matchCount > 0
        ? updateChoice(preview, decisions.update === true, tell)
        : nothing
    }
    ${groupingChoices(preview.groupings, decisions.groupings ?? [], tell)}
    ${sampleChoices(preview.samples, decisions.samples ?? [], tell)}
  </section>`;
}

function notationChoice(format: 'sfz' | 'xml', tell: Tell): Part {
  const label = l10n.t('Notation of the new document');
  return labelled(
    label,
    choiceList({
      id: 'format',
      label,
      options: [
        { value: 'sfz', label: 'SFZ' },
        { value: 'xml', label: 'Instrument XML' },
      ],
      value: format,
      choose: (value) => tell({ type: 'format', format: value === 'xml' ? 'xml' : 'sfz' }),
    }),
  );
}

function middleCChoice(found: PreviewTableResult['middleC'], chosen: MiddleCChoice, tell: Tell): Part {
  if (!found) return nothing;
  const label = l10n.t('Key 60, middle C, is called');
  const auto = chosen === 'auto' ? l10n.t('automatic: {0}', found) : l10n.t('automatic');
  return labelled(
    label,
    choiceList({
      id: 'middle-c',
      label,
      options: [
        { value: 'auto', label: auto },
        ...(['C3', 'C4', 'C5'] as const).map((name) => ({ value: name, label: name })),
      ],
      value: chosen,
      choose: (value) => tell({ type: 'middleC', middleC: value as MiddleCChoice }),
    }),
  );
}

/** The list says its own label to a screen reader, so that the one that is seen need not be said again. */
function labelled(label: string, control: TemplateResult): TemplateResult {
  return html`<div class="choice"><span aria-hidden="true">${label}</span> ${control}</div>`;
}

function updateChoice({ matchCount, regionCount }: PreviewTableResult, isUpdate: boolean, tell: Tell): Part {
  const rows = regionCount === 1 ? l10n.t('1 row') : l10n.t('{0} of {1} rows', matchCount, regionCount);
  return html`<fieldset>
    <legend>${l10n.t('The document has regions with the samples of {0}', rows)}</legend>
    ${checkbox({
      id: 'update',
      label: html`${l10n.t('Change those regions where the table differs, and add the rest.')}
        <span class="quiet">${l10n.t('Otherwise all rows are written as new regions.')}</span>`,
      isChecked: isUpdate,
      change: (isChecked) => tell({ type: 'update', isUpdate: isChecked }),
    })}
  </fieldset>`;
}

function groupingChoices(groupings: readonly PreviewGrouping[], taken: readonly string[], tell: Tell): Part {
  if (groupings.length === 0) return nothing;
  return html`<fieldset>
    <legend>${l10n.t('Groups that the table does not name itself')}</legend>
    ${groupings.map(({ kind, message }) =>
      checkbox({
        id: `grouping-${kind}`,
        label: html`${groupingName(kind)} <span class="quiet">${message}</span>`,
        isChecked: taken.includes(kind),
        change: (isTaken) => tell({ type: 'grouping', kind, isTaken }),
      }),
    )}
  </fieldset>`;
}

function groupingName(kind: PreviewGrouping['kind']): string {
  switch (kind) {
    case 'layers':
      return l10n.t('Group by velocity layer.');
    case 'articulations':
      return l10n.t('Group by articulation.');
    case 'microphones':
      return l10n.t('Group by microphone.');
    case 'releases':
      return l10n.t('Put release samples into a group of their own.');
    case 'round_robins':
      return l10n.t('Number the round robins.');
    case 'sections':
      return l10n.t('A group for each section.');
  }
}

function sampleChoices(
  samples: readonly PreviewSample[],
  chosen: readonly (readonly [name: string, path: string])[],
  tell: Tell,
): Part {
  if (samples.length === 0) return nothing;
  const byHand = new Map(chosen);
  const more = samples.length - mostSamples;
  return html`<fieldset>
    <legend>${l10n.t('Samples whose file is not clear')}</legend>
    <ul>
      ${samples
        .slice(0, mostSamples)
        .map((sample, at) => sampleChoice(sample, `sample-${at}`, byHand.has(sample.name), tell))}
      ${more > 0 ? html`<li>${l10n.t('and {0} more', more)}</li>` : nothing}
    </ul>
  </fieldset>`;
}

function sampleChoice(
  { name, choices, taken }: PreviewSample,
  id: string,
  isByHand: boolean,
  tell: Tell,
): Part {
  const none = isByHand ? l10n.t('automatic') : l10n.t('keep the name as it is');
  const first = taken === undefined || isByHand ? [{ value: '', label: none }] : [];
  const all = taken === undefined || choices.includes(taken) ? choices : [taken, ...choices];
  return html`<li class="choice">
    <span aria-hidden="true">${name}</span>
    ${choiceList({
      id,
      label: name,
      options: [...first, ...all.map((path) => ({ value: path, label: path }))],
      value: taken ?? '',
      choose: (value) => tell({ type: 'sample', name, path: value === '' ? null : value }),
    })}
  </li>`;
}
