import type { FlacFrameHeader } from '../headers/flacFrame';
import { checksum16, longestFrameHeader, readFlacFrameHeader } from '../headers/flacFrame';
import type { ByteStream } from './byteStream';

/** One whole frame of a FLAC stream. */
export interface FlacFrame {
  header: FlacFrameHeader;
  bytes: Uint8Array;
}

/** Bytes that are searched at first; most frames are smaller. */
const firstSearch = 1 << 15;
/** Bytes of checksum behind a frame. */
const footerBytes = 2;
/** Damaged frames that are searched through before giving up, so that bytes made to look like frames cost little. */
const mostFailures = 256;
/** What programs write behind the last frame: tags of other kinds (common practice). */
const tails = ['TAG', 'ID3', 'APE'];

/**
 * Splits a FLAC stream into its frames, `stream` standing where its metadata ends. A frame ends where its checksum fits
 * and another frame, or the end of the audio, follows; what is damaged is passed over. RFC 9639, section 9.
 */
export async function* flacFrames(stream: ByteStream, channels: number): AsyncGenerator<FlacFrame> {
  // No frame is larger than its numbers written out in 33 bits each, as side channels can have (section 9.2.3).
  const mostBytes = (blockSize: number) => Math.ceil((blockSize * channels * 33) / 8) + 16 * channels + 64;
  let failures = 0;
  while (failures < mostFailures) {
    let bytes = await stream.peek(longestFrameHeader);
    if (bytes.length === 0) return;
    const header = readFlacFrameHeader(bytes, 0);
    if (header?.channels !== channels) {
      const next = bytes.indexOf(0xff, 1);
      stream.skip(next < 0 ? bytes.length : next);
      continue;
    }
    const most = mostBytes(header.blockSize);
    const search: Search = { at: header.length, sum: checksum16(bytes, 0, header.length), end: undefined };
    for (let wanted = Math.min(firstSearch, most); ; wanted = Math.min(most, wanted * 4)) {
      bytes = await stream.peek(wanted + longestFrameHeader);
      const isEnd = bytes.length < wanted + longestFrameHeader;
      searchEnd(bytes, search, isEnd ? bytes.length : wanted, isEnd, channels);
      if (search.end !== undefined || isEnd || wanted >= most) break;
    }
    if (search.end === undefined) {
      failures++;
      stream.skip(1);
    } else {
      yield { header, bytes: bytes.slice(0, search.end) };
      stream.skip(search.end);
    }
  }
}

/** How far the end of a frame has been looked for. */
interface Search {
  at: number;
  /** The checksum of all bytes before. */
  sum: number;
  end: number | undefined;
}

function searchEnd(bytes: Uint8Array, search: Search, limit: number, isEnd: boolean, channels: number): void {
  while (search.at < limit) {
    const sync = bytes.indexOf(0xff, search.at);
    const to = sync < 0 || sync > limit ? limit : sync;
    if (isEnd) {
      // A tag can stand behind the last frame, so each of its starts is tried as well.
      for (; search.at < to; search.at++) {
        if (search.sum === 0 && search.at > footerBytes && isTail(bytes, search.at)) {
          search.end = search.at;
          return;
        }
        search.sum = checksum16(bytes, search.at, search.at + 1, search.sum);
      }
    } else {
      search.sum = checksum16(bytes, search.at, to, search.sum);
      search.at = to;
    }
    if (to >= limit) break;
    if (search.sum === 0 && readFlacFrameHeader(bytes, to)?.channels === channels) {
      search.end = to;
      return;
    }
    search.sum = checksum16(bytes, to, to + 1, search.sum);
    search.at = to + 1;
  }
  if (isEnd && search.sum === 0) search.end = limit;
}

function isTail(bytes: Uint8Array, at: number): boolean {
  return tails.some((tail) => [...tail].every((letter, place) => bytes[at + place] === letter.charCodeAt(0)));
}
