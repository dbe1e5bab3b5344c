import { escapeMarkup } from '../../../server/map/escape';
import type {
  MiddleCChoice,
  PreviewGrouping,
  PreviewSample,
  PreviewTableResult,
  TableDecisions,
} from '../../../server/protocol/requests/tableRequests';
import type { ShownPlace } from '../messages';

const mostSamples = 100;

const notations = { sfz: 'SFZ', xml: 'Instrument XML' } as const;

/** What can be decided about a table beside its columns; empty where there is nothing. */
export function choicesMarkup(
  preview: PreviewTableResult,
  decisions: TableDecisions,
  place: ShownPlace,
): string {
  const parts = [
    place.kind === 'new' ? formatMarkup(place.format) : '',
    middleCMarkup(preview.middleC, decisions.middleC ?? 'auto'),
    place.kind === 'document' && preview.matchCount > 0
      ? updateMarkup(preview, decisions.update === true)
      : '',
    groupingsMarkup(preview.groupings, decisions.groupings ?? []),
    samplesMarkup(preview.samples, decisions.samples ?? []),
  ];
  return parts.join('');
}

function formatMarkup(chosen: 'sfz' | 'xml'): string {
  const options = (['sfz', 'xml'] as const).map(
    (format) =>
      `<option value="${format}"${format === chosen ? ' selected' : ''}>${notations[format]}</option>`,
  );
  return `<p><label for="format">Notation of the new document</label> <select id="format">${options.join('')}</select></p>`;
}

function middleCMarkup(found: PreviewTableResult['middleC'], chosen: MiddleCChoice): string {
  if (!found) return '';
  const isByHand = chosen !== 'auto';
  const auto = isByHand ? 'as found by itself' : `as found: ${found}`;
  const options = (['C3', 'C4', 'C5'] as const).map(
    (name) => `<option value="${name}"${name === chosen ? ' selected' : ''}>${name}</option>`,
  );
  return `<p><label for="middle-c">Key 60, middle C, is called</label> <select id="middle-c"><option value="auto"${isByHand ? '' : ' selected'}>${auto}</option>${options.join('')}</select></p>`;
}

function updateMarkup({ matchCount, regionCount }: PreviewTableResult, isUpdate: boolean): string {
  const rows = `${matchCount} of ${regionCount} ${regionCount === 1 ? 'row' : 'rows'}`;
  const checked = (is: boolean) => (is ? ' checked' : '');
  return `<fieldset><legend>The document has regions with the samples of ${rows}</legend>
<label><input type="radio" name="update" id="update-no" value="no"${checked(!isUpdate)}> Write all rows as new regions</label>
<label><input type="radio" name="update" id="update-yes" value="yes"${checked(isUpdate)}> Change those regions where the table differs, and add the rest</label></fieldset>`;
}

function groupingsMarkup(groupings: readonly PreviewGrouping[], taken: readonly string[]): string {
  if (groupings.length === 0) return '';
  const boxes = groupings.map(({ kind, message }) => {
    const checked = taken.includes(kind) ? ' checked' : '';
    return `<label><input type="checkbox" id="grouping-${kind}" data-grouping="${kind}"${checked}> ${groupingNames[kind]} <span class="quiet">${escapeMarkup(message)}</span></label>`;
  });
  return `<fieldset><legend>Groups that the table does not name itself</legend>${boxes.join('')}</fieldset>`;
}

const groupingNames: Readonly<Record<PreviewGrouping['kind'], string>> = {
  layers: 'Group by velocity layer.',
  articulations: 'Group by articulation.',
  microphones: 'Group by microphone.',
  releases: 'Put release samples into a group of their own.',
  round_robins: 'Number the round robins.',
  sections: 'A group for each section.',
};

function samplesMarkup(
  samples: readonly PreviewSample[],
  chosen: readonly (readonly [name: string, path: string])[],
): string {
  if (samples.length === 0) return '';
  const byName = new Map(chosen);
  const rows = samples.slice(0, mostSamples).map(({ name, choices, taken }, at) => {
    const isByHand = byName.has(name);
    const none = isByHand ? 'as found by itself' : 'keep the name as it is';
    const first =
      taken === undefined || isByHand
        ? `<option value=""${isByHand ? '' : ' selected'}>${none}</option>`
        : '';
    const all = taken === undefined || choices.includes(taken) ? choices : [taken, ...choices];
    const options = all.map(
      (path) =>
        `<option value="${escapeMarkup(path)}"${path === taken ? ' selected' : ''}>${escapeMarkup(path)}</option>`,
    );
    return `<li class="sample"><label for="sample-${at}">${escapeMarkup(name)}</label> <select id="sample-${at}" data-sample="${escapeMarkup(name)}">${first}${options.join('')}</select></li>`;
  });
  if (samples.length > mostSamples) rows.push(`<li>and ${samples.length - mostSamples} more</li>`);
  return `<fieldset><legend>Samples that no single file is named after</legend><ul>${rows.join('')}</ul></fieldset>`;
}
