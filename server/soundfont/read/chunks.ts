import type { FileReader } from '../../model/files';
import { FontError } from './fontError';

/** A part of a RIFF file. */
export interface Chunk {
  /** Its four letters; of a list the letters of its kind. */
  name: string;
  /** The byte of the file where its data starts. */
  start: number;
  /** Bytes of data that are there. */
  size: number;
  /** Bytes of data that it is said to have; more than {@link size} where the file is cut short. */
  statedSize: number;
}

const headerBytes = 8;
const kindBytes = 4;
/** Chunks of one list that are looked at; the format has at most eleven, and a few unknown ones do no harm. */
const mostChunks = 64;

/**
 * The chunks between two bytes of a file (Multimedia Programming Interface and Data Specifications 1.0, 1991: four
 * letters, size, data, a pad byte after an odd size). `LIST` chunks are named by their kind. Only headers are read. The last
 * one may be cut short by `end`; one that says so anywhere else cannot be told from nonsense.
 */
export async function chunksIn(reader: FileReader, start: number, end: number): Promise<Chunk[]> {
  const chunks: Chunk[] = [];
  for (let at = start; at + headerBytes <= end; ) {
    if (chunks.length === mostChunks) throw new FontError(`there are too many chunks before byte ${at}`);
    const header = await reader.read(at, headerBytes + kindBytes);
    if (header.length < headerBytes) break;
    const name = lettersAt(header, 0);
    const stated = new DataView(header.buffer, header.byteOffset).getUint32(4, true);
    const isList = name === 'LIST' && stated >= kindBytes && header.length === headerBytes + kindBytes;
    const skip = isList ? kindBytes : 0;
    const body = at + headerBytes + skip;
    chunks.push({
      name: isList ? lettersAt(header, headerBytes) : name,
      start: body,
      size: Math.max(0, Math.min(stated - skip, end - body)),
      statedSize: stated - skip,
    });
    at = body + stated - skip + (stated % 2);
  }
  return chunks;
}

/** Four bytes as letters; `?` stands for those that are none. */
export function lettersAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(
    ...bytes.subarray(at, at + 4).map((code) => (code < 32 || code > 126 ? 63 : code)),
  );
}
