import type { KeptChunk } from './keptChunks';

/** What an encoder knows of its stream when it is done. */
export interface StreamSummary {
  leastFrameBytes: number;
  mostFrameBytes: number;
  /** MD5 of the decoded audio as 32 hexadecimal digits. */
  md5: string;
}

/** The marker, the header of the first block and that block. */
const infoStart = 8;
const infoBytes = 34;

/**
 * A FLAC stream with what is known only at its end put into its first block, and chunks that say how the sample is played
 * in blocks of their own behind that, each as the published registry of identifiers has it. Source: RFC 9639, sections 8.1
 * to 8.4.
 */
export function completeFlac(
  stream: Uint8Array,
  summary: StreamSummary,
  chunks: readonly KeptChunk[],
): Uint8Array[] {
  const first = stream.slice(0, infoStart + infoBytes);
  put24(first, infoStart + 4, summary.leastFrameBytes);
  put24(first, infoStart + 7, summary.mostFrameBytes);
  for (let byte = 0; byte < 16; byte++)
    first[infoStart + 18 + byte] = Number.parseInt(summary.md5.slice(byte * 2, byte * 2 + 2), 16);
  const blocks = chunks.map(({ owner, bytes }) => {
    const block = new Uint8Array(8 + bytes.length);
    block[0] = 2;
    put24(block, 1, 4 + bytes.length);
    for (let at = 0; at < 4; at++) block[4 + at] = owner.charCodeAt(at);
    block.set(bytes, 8);
    return block;
  });
  return [first, ...blocks, stream.subarray(infoStart + infoBytes)];
}

function put24(bytes: Uint8Array, at: number, value: number): void {
  bytes[at] = value >>> 16;
  bytes[at + 1] = value >>> 8;
  bytes[at + 2] = value;
}
