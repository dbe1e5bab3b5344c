import type { InstrumentRecord } from '../build/instrumentRecord';
import type { LibraryRow, RowState } from './libraryRow';
import { proofIn } from './proofIn';

/** The row of an instrument by its record. */
export function rowOf(record: InstrumentRecord, state: RowState = record.state): LibraryRow {
  const proof = proofIn(record);
  const { figures, measures, totals, noteCounts, outputs, facts, message } = record;
  return {
    name: record.name,
    fileName: record.fileName,
    state,
    ...(message !== null && { message }),
    source: record.source,
    ...(outputs[0] && { text: mainOutput(record), map: `maps/${record.fileName}.svg` }),
    ...(figures && {
      regions: figures.regions,
      ...(figures.keys && { keys: figures.keys }),
      layers: figures.layers,
      missing: figures.missing,
    }),
    errors: totals.error,
    warnings: totals.warning,
    information: totals.information + totals.hint,
    ...(measures?.meanCents !== undefined && { cents: measures.meanCents }),
    ...(measures?.loudness !== undefined && { loudness: measures.loudness }),
    ...(proof && { proof }),
    assumed: noteCounts.assumed,
    approximated: noteCounts.approximated,
    dropped: noteCounts.dropped,
    ...(facts.licence !== undefined && { licence: facts.licence }),
    doubts: record.doubts,
    shapes: figures?.shapes ?? [],
  };
}

/** The first output that is no sample. */
function mainOutput({ outputs, fileName }: InstrumentRecord): string {
  const main = outputs.find(({ path }) => path.split('/').at(-1)?.startsWith(`${fileName}.`)) ?? outputs[0];
  return main.path;
}
