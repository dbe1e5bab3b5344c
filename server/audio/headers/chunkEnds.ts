import type { ByteWindow } from './byteWindow';

/** Bytes of a chunk's identifier and size, in the RIFF and AIFF families alike. */
export const chunkHeaderBytes = 8;

/**
 * Where the next chunk starts: on an even byte, except in files whose writer forgot the pad byte, which is told by one
 * of the `known` identifiers standing where the pad byte should be.
 */
export async function nextChunk(
  bytes: ByteWindow,
  body: number,
  length: number,
  known: ReadonlySet<number>,
): Promise<number> {
  const end = body + length;
  if (length % 2 === 0) return end;
  const unpadded =
    end + chunkHeaderBytes <= bytes.size &&
    (bytes.holds(end, chunkHeaderBytes) || (await bytes.hold(end, chunkHeaderBytes))) &&
    known.has(bytes.identifier(end));
  return unpadded ? end : end + 1;
}
