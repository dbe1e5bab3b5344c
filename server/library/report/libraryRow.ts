/** `stale`: built, and something has changed since; `missing`: never built. */
export type RowState = 'built' | 'stale' | 'failed' | 'missing';

/** How the texts of an instrument sound beside their source; where there are several the one that differs most. */
export interface RowProof {
  /** `noted`: it differs only where a note on the conversion says so. */
  verdict: 'alike' | 'noted' | 'differs';
  /** In dB to full scale; `null` where there is no difference at all. */
  worstDb: number | null;
  /** Where it differs most and why, and what was not heard; empty where there is nothing to say. */
  where: string;
}

/** What an overview tells of one instrument. */
export interface LibraryRow {
  name: string;
  /** What its files are called; no other instrument of the library has the same. */
  fileName: string;
  state: RowState;
  /** Why it failed, or which of its targets did. */
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
  proof?: RowProof;
  assumed: number;
  approximated: number;
  dropped: number;
  licence?: string;
  /** What nobody has confirmed yet. */
  doubts: string[];
  /** Of a small drawing of the map: low key, high key, low velocity, high velocity. */
  shapes: [number, number, number, number][];
}
