import type { ReportCell } from '../../features/sampleReport/reportCells';
import { noteNamesText } from '../../model/wording/rangeWords';
import type { LibraryRow, RowProof, RowState } from './libraryRow';

/** What a state is called in overviews. */
export const stateWords: Readonly<Record<RowState, string>> = {
  built: 'built',
  stale: 'changed since',
  failed: 'failed',
  missing: 'not built',
};

/** What a proof is called in overviews. */
export const proofWords: Readonly<Record<RowProof['verdict'], string>> = {
  alike: 'sounds alike',
  noted: 'differs where noted',
  differs: 'differs',
};

/** The headings of the columns that {@link rowCells} fills. */
export const rowHeadings = [
  'Instrument',
  'State',
  'Regions',
  'Keys',
  'Layers',
  'Missing samples',
  'Errors',
  'Warnings',
  'Information',
  'Cents off',
  'LUFS',
  'Proof',
  'Worst dB',
  'Where it differs most',
  'Assumed',
  'In another way',
  'Left out',
  'Doubts',
  'Licence',
  'Source',
] as const;

/** A row as cells, in the order of {@link rowHeadings}. */
export function rowCells(row: LibraryRow): ReportCell[] {
  return [
    row.name,
    stateWords[row.state],
    row.regions,
    row.keys && noteNamesText(...row.keys),
    row.layers,
    row.missing,
    row.errors,
    row.warnings,
    row.information,
    row.cents,
    row.loudness,
    row.proof && proofWords[row.proof.verdict],
    row.proof?.worstDb ?? undefined,
    row.proof?.where,
    row.assumed,
    row.approximated,
    row.dropped,
    row.doubts.length,
    row.licence,
    row.source,
  ];
}
