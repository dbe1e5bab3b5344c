import type { ByteWindow } from './byteWindow';
import { checksum16, longestFrameHeader, readFlacFrameHeader } from './flacFrame';
import type { FlacStreamInfo } from './flacStreamInfo';

/** What the end of a FLAC stream shows of its length. */
export interface FlacEnd {
  /** Audio frames up to the end of the last whole frame of the stream. */
  frames: number;
  /** Bytes behind that frame are not whole. */
  isCut: boolean;
}

/** Stretches at the end of a file that are looked at, one after the other until a whole frame is found. */
const stretches = [4096, 16384, 131072] as const;
/** Frame headers that are tried, so that bytes made to look like frames cost little. */
const mostCandidates = 64;
/** A tag that programs write behind the audio, of this length (common practice). */
const tag = { start: [0x54, 0x41, 0x47], bytes: 128 } as const;

/**
 * Finds how long a stream is that does not say so, by the number that the header of its last whole frame holds;
 * `undefined` where none is found in the last 128 KB of the file. RFC 9639, section 9.1.5.
 */
export async function findFlacEnd(
  bytes: ByteWindow,
  audioStart: number,
  info: FlacStreamInfo,
): Promise<FlacEnd | undefined> {
  for (const stretch of stretches) {
    const start = Math.max(audioStart, bytes.size - stretch);
    if (start >= bytes.size || !(await bytes.hold(start, bytes.size - start))) return undefined;
    const found = searchBackwards(bytes.part(start, bytes.size), info);
    if (found || start === audioStart) return found;
  }
  return undefined;
}

function searchBackwards(bytes: Uint8Array, info: FlacStreamInfo): FlacEnd | undefined {
  const tagAt = bytes.length - tag.bytes;
  const isTagged = tagAt >= 0 && tag.start.every((byte, place) => bytes[tagAt + place] === byte);
  const end = isTagged ? tagAt : bytes.length;
  /** Where the frame that is looked for could end: at the end of the audio, or before a later frame. */
  const ends = [end];
  for (let at = end - 1; at >= 0 && ends.length <= mostCandidates; ) {
    at = bytes.lastIndexOf(0xff, at);
    if (at < 0) break;
    const header = readFlacFrameHeader(bytes, at);
    if (header && header.channels === info.channels) {
      let sum = 0;
      let from = at;
      for (const to of ends.slice().reverse()) {
        // Of a frame that is cut off, so little can be left that its header cannot be told.
        const least = to === end ? Math.max(from, end - longestFrameHeader) : to;
        sum = checksum16(bytes, from, least, sum);
        let whole = sum === 0 ? least : undefined;
        for (from = least; from < to; from++) {
          sum = checksum16(bytes, from, from + 1, sum);
          if (sum === 0) whole = from + 1;
        }
        if (whole === undefined || whole === at) continue;
        const first = header.isVariable ? header.number : header.number * info.largestBlock;
        return { frames: first + header.blockSize, isCut: whole !== end };
      }
      ends.push(at);
    }
    at--;
  }
  return undefined;
}
