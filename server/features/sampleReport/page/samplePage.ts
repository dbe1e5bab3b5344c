import { escapeMarkup } from '../../../map/escape';
import { pageMapStyle } from '../../../map/palette';
import { counted } from '../../../model/wording/counted';
import { keysText } from '../../../model/wording/rangeWords';
import { pageFrame } from '../../../pages/pageFrame';
import { tableSection } from '../../../pages/tableSection';
import { sampleCells, sampleHeadings, tuningCells, tuningHeadings } from '../reportCells';
import type { SampleRow } from '../reportRows';
import type { SampleNote } from '../sampleNotes';
import { sampleNotes, weightOf } from '../sampleNotes';
import type { SampleReport } from '../sampleReport';
import type { ReportViews } from './reportViews';
import { viewSections } from './viewSections';

/** Samples that are told of at the top; the table below has all. */
const mostFirst = 50;

interface JudgedRow {
  row: SampleRow;
  notes: SampleNote[];
}

/**
 * A report as one page that needs nothing besides itself: the samples with something odd, worst first; tuning, loudness,
 * distance from the root and the level by velocity as pictures and in words; and all that is known of each sample.
 */
export function samplePage(title: string, { samples, tuning }: SampleReport, views: ReportViews): string {
  const judged = samples.map((row) => ({ row, notes: sampleNotes(row) }));
  judged.sort((one, other) => weightOf(other.notes) - weightOf(one.notes));
  const odd = judged.filter(({ notes }) => notes.length > 0);
  const sections = [
    `<p>${summaryOf(samples, odd.length)}</p>`,
    firstSection(odd),
    ...viewSections(views),
    tuning.length > 0
      ? tableSection(
          'Tuning by root key',
          tuningHeadings,
          tuning.map((row) => tuningCells(row).map((cell) => String(cell ?? ''))),
        )
      : '<h2>Tuning by root key</h2><p>There is no measured pitch to compare with root keys.</p>',
    samples.length > 0 ? samplesSection(judged) : '<h2>All samples</h2><p>No region plays a file.</p>',
  ];
  return pageFrame(title, sections, style + pageMapStyle());
}

function summaryOf(samples: readonly SampleRow[], odd: number): string {
  const seconds = samples.reduce((sum, { facts }) => sum + (facts?.lengthSeconds ?? 0), 0);
  const length = seconds > 0 ? `, ${lengthText(seconds)} of audio` : '';
  const what = odd === 0 ? 'nothing odd in any' : `something odd in ${odd}`;
  return `${counted(samples.length, 'sample')}${length}, ${what}.`;
}

function lengthText(seconds: number): string {
  if (seconds < 60) return `${seconds.toFixed(1)} seconds`;
  const minutes = Math.round(seconds / 60);
  return minutes < 90 ? counted(minutes, 'minute') : `${(seconds / 3600).toFixed(1)} hours`;
}

function firstSection(odd: readonly JudgedRow[]): string {
  if (odd.length === 0) return '';
  const items = odd.slice(0, mostFirst).map(({ row: { path, keys, regions }, notes }) => {
    const lines = [...notes]
      .sort((one, other) => other.weight - one.weight)
      .map(
        ({ text, weight }) =>
          `<li>${weight === 3 ? `<strong>${escapeMarkup(text)}</strong>` : escapeMarkup(text)}</li>`,
      );
    const place = keys ? `${keysText(keys.low, keys.high)}, ` : '';
    return `<li class="card"><h3 class="file">${escapeMarkup(path)}</h3><div class="soft">${place}${counted(regions, 'region')}</div><ul>${lines.join('')}</ul></li>`;
  });
  const more =
    odd.length > mostFirst ? `<p>… and ${odd.length - mostFirst} more, in the table below.</p>` : '';
  return `<h2>To look at first</h2>\n<ol class="first-list">${items.join('\n')}</ol>${more}`;
}

/** All samples, worst first; columns of which nothing is known are left out, and what is odd stands beside the name. */
function samplesSection(judged: readonly JudgedRow[]): string {
  const rows = judged.map(({ row }) => sampleCells(row).map((cell) => String(cell ?? '')));
  const last = sampleHeadings.length - 1;
  const columns = [0, last, ...sampleHeadings.keys()]
    .filter((column, at, all) => all.indexOf(column) === at)
    .filter((column) => rows.some((cells) => cells[column] !== ''));
  const table = tableSection(
    'All samples, worst first',
    columns.map((column) => sampleHeadings[column]),
    rows.map((cells) => columns.map((column) => cells[column])),
  );
  return `<div class="${columns.includes(last) ? 'noted' : 'plain'}">${table}</div>`;
}

const style = `
.file { font-family: ui-monospace, monospace; overflow-wrap: anywhere; }
.first-list { list-style: none; margin: 0; padding: 0; display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 320px), 1fr)); gap: 12px; }
.first-list .card { margin: 0; } .first-list ul { margin: 6px 0 0; padding-left: 18px; overflow-wrap: anywhere; }
.groups { list-style: none; margin: 8px 0 0; padding: 0; display: flex; flex-wrap: wrap; gap: 4px 18px; }
.groups li { display: flex; align-items: center; gap: 6px; } .groups svg { width: 14px; height: 14px; flex: none; }
.words { columns: 22em; margin: 8px 0; padding-left: 18px; }
td { min-width: 3.5em; } td:first-child { overflow-wrap: anywhere; min-width: 14em; }
.noted td:nth-child(2) { min-width: 14em; } .noted td:nth-child(4), .plain td:nth-child(3) { min-width: 11em; }
`;
