import { run } from '../commandLine/runInFolder';

interface Place {
  line: number;
  column: number;
}

/** What `compare --format json` says of two instruments in a folder. */
export interface Compared {
  status: number;
  equal: boolean;
  worstDb: number | null;
  notes: number;
  rendered: number;
  differences: {
    key: number;
    velocity: number;
    a: { line: number } | null;
    b: { line: number } | null;
    peakDb: number;
    levelDb: number;
    loudnessLu: number | null;
    bands: { hertz: number; levelDb: number }[];
    pitchCents: number;
    startMs: number;
    lengthMs: number;
    cause: { kind: string; message: string; opcode?: string; a: Place | null; b: Place | null };
  }[];
  unheard: Unheard[];
}

/** Something that the texts say otherwise and that was not heard. */
export interface Unheard {
  regions: number;
  cause: { opcode: string; message: string; a: Place | null; b: Place | null };
}

export async function compared(folder: string, a: string, b: string, ...more: string[]): Promise<Compared> {
  const { status, out } = await run(folder, ['compare', a, b, '--format', 'json', ...more]);
  return { status, ...JSON.parse(out) };
}
