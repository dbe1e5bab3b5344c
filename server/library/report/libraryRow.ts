import type { InstrumentRecord } from '../build/instrumentRecord';

/** `stale`: built, and something has changed since; `missing`: never built. */
export type RowState = 'built' | 'stale' | 'failed' | 'missing';

/** What an overview tells of one instrument. */
export interface LibraryRow {
  name: string;
  state: RowState;
  /** Why it failed. */
  message?: string;
  /** From the folder of the library, with the preset behind it. */
  source: string;
  /** The first text or font that was built, from the output folder. */
  text?: string;
  /** The keyboard map, from the output folder. */
  map?: string;
  regions?: number;
  keys?: [low: number, high: number];
  layers?: number;
  missing?: number;
  errors: number;
  warnings: number;
  information: number;
  /** The mean distance from the pitch that root keys claim, in cents, where it was measured. */
  cents?: number;
  /** In LUFS, where it was measured. */
  loudness?: number;
  assumed: number;
  approximated: number;
  dropped: number;
  licence?: string;
  /** What nobody has confirmed yet. */
  doubts: string[];
  /** Of a small drawing of the map: low key, high key, low velocity, high velocity. */
  shapes: [number, number, number, number][];
}

/** The row of an instrument by its record. */
export function rowOf(record: InstrumentRecord, state: RowState = record.state): LibraryRow {
  const { figures, measures, totals, noteCounts, outputs, facts, message } = record;
  return {
    name: record.name,
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
