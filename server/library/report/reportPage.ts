import { escapeMarkup } from '../../map/escape';
import { byCount, counted } from '../../model/wording/counted';
import type { InstrumentProof, InstrumentRecord } from '../build/instrumentRecord';
import type { LibraryReport, ReportedInstrument } from './libraryReport';
import type { LibraryRow } from './libraryRow';
import { reportScript, reportStyle } from './reportPageParts';
import { proofWords, rowCells, rowHeadings, stateWords } from './rowCells';

/** Columns that would make the page too wide; what is in them stands in the details. */
const inDetails: readonly string[] = [
  'Information',
  'Where it differs most',
  'Assumed',
  'In another way',
  'Source',
] satisfies (typeof rowHeadings)[number][];
/** Columns that are left away where they are known of no instrument. */
const onRequest: readonly string[] = [
  'Cents off',
  'LUFS',
  'Proof',
  'Worst dB',
] satisfies (typeof rowHeadings)[number][];

/** The columns that are shown, by position. */
function shownFor(rows: readonly LibraryRow[]): number[] {
  const cells = rows.map(rowCells);
  const isKnown = (at: number) => cells.some((row) => row[at] !== undefined);
  return rowHeadings.flatMap((heading, at) =>
    inDetails.includes(heading) || (onRequest.includes(heading) && !isKnown(at)) ? [] : [at],
  );
}

/**
 * An overview of a library as one HTML page that needs nothing else: a table to be sorted and filtered, with a small map and
 * the details of each instrument. It loads nothing and sends nothing.
 */
export function reportPage(report: LibraryReport): string {
  const { title, instruments } = report;
  const shown = shownFor(instruments.map(({ row }) => row));
  const rows = instruments.map((one) => rowMarkup(one, shown)).join('\n');
  const heads = shown.map(
    (at) =>
      `<th scope="col" aria-sort="none"><button type="button">${escapeMarkup(rowHeadings[at])}</button></th>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>${escapeMarkup(title)}</title>
<style>${reportStyle}</style>
</head>
<body>
<main>
<h1>${escapeMarkup(title)}</h1>
<p>${escapeMarkup(summary(report))}</p>
<p><label>Show those with <input type="search" id="filter"></label> <output id="count" aria-live="polite"></output></p>
<div class="wide" role="region" aria-label="Instruments" tabindex="0">
<table>
<thead><tr>${heads.join('')}<th scope="col">Map</th></tr></thead>
<tbody>
${rows}
</tbody>
</table>
</div>
</main>
<script>${reportScript}</script>
</body>
</html>
`;
}

function summary({ instruments }: LibraryReport): string {
  const states = (Object.keys(stateWords) as LibraryRow['state'][]).map(
    (state) => [instruments.filter(({ row }) => row.state === state).length, stateWords[state]] as const,
  );
  const told = states.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`);
  return `${counted(instruments.length, 'instrument')}${told.length > 0 ? `: ${told.join(', ')}` : ''}.`;
}

function rowMarkup({ row, record }: ReportedInstrument, shown: readonly number[]): string {
  const cells = rowCells(row);
  const columns = shown.map((at) => {
    const cell = cells[at];
    if (at === 0) return `<th scope="row">${nameMarkup(row, record)}</th>`;
    if (typeof cell === 'number') return `<td class="number">${cell}</td>`;
    return `<td>${escapeMarkup(cell ?? '')}</td>`;
  });
  return `<tr class="${row.state}">${columns.join('')}<td>${smallMap(row)}</td></tr>`;
}

function nameMarkup(row: LibraryRow, record: InstrumentRecord | undefined): string {
  const lines = detailsOf(row, record).map((line) => `<li>${escapeMarkup(line)}</li>`);
  return `<details><summary>${escapeMarkup(row.name)}</summary><ul>${lines.join('')}</ul></details>`;
}

/** Findings and notes that the details of an instrument list. */
const mostListed = 40;

function detailsOf(row: LibraryRow, record: InstrumentRecord | undefined): string[] {
  const lines = [`From ${row.source}`];
  if (row.message !== undefined) lines.push(row.message);
  if (!record) return [...lines, ...row.doubts];
  lines.push(...record.outputs.filter(({ path }) => !path.includes(' Samples/')).map(({ path }) => path));
  lines.push(...(record.proofs ?? []).map(proofLine));
  if (row.proof && row.proof.where !== '') lines.push(row.proof.where);
  lines.push(...row.doubts.map((doubt) => `Doubt: ${doubt}`));
  const findings = record.findings.map(
    ({ severity, message, file, line }) => `${severity}: ${message} (${file}, line ${line})`,
  );
  const notes = record.notes.map(
    ({ kind, message, count, lines: at }) =>
      `${kind}: ${message} (${byCount(count, 'line', `${count} times, lines`)} ${at})`,
  );
  for (const list of [findings, notes]) {
    lines.push(...list.slice(0, mostListed));
    if (list.length > mostListed) lines.push(`and ${list.length - mostListed} more`);
  }
  return lines;
}

function proofLine(proof: InstrumentProof): string {
  const { target, verdict, notes, differing, explained, worstDb, notRendered } = proof;
  const not = notRendered.length > 0 ? ` Not rendered: ${notRendered.join(', ')}.` : '';
  const db = worstDb === null ? 'no difference at all' : `${worstDb} dB at the most`;
  return `Played against its source, ${target}: ${proofWords[verdict]}, ${db}. ${counted(notes, 'note')}, ${differing} differ, ${explained} where notes say why.${not}`;
}

/** A drawing of which keys and velocities answer: 128 keys across, 127 velocities up. */
function smallMap({ name, shapes }: LibraryRow): string {
  if (shapes.length === 0) return '';
  const rects = shapes.map(
    ([low, high, soft, loud]) =>
      `<rect x="${low}" y="${127 - loud}" width="${Math.max(1, high - low + 1)}" height="${Math.max(1, loud - soft + 1)}"/>`,
  );
  return `<svg viewBox="0 0 128 127" role="img" aria-label="Map of ${escapeMarkup(name)}">${rects.join('')}</svg>`;
}
