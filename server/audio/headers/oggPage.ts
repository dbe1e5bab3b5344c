import type { ByteWindow } from './byteWindow';
import { fourCharacters } from './byteWindow';

/** The header of an Ogg page. */
export interface OggPage {
  /** Offset of the page in the file. */
  at: number;
  isFirst: boolean;
  isLast: boolean;
  /** Position at the end of the page, in the unit of its stream; undefined where no packet ends in it. */
  position: number | undefined;
  serial: number;
  /** Offset of what the page carries. */
  body: number;
  /** Offset behind the page, which may lie behind the end of a file that is cut short. */
  end: number;
}

/** Bytes of a page header before its list of segments. */
export const pageHeaderBytes = 27;
/** Bytes of the largest page: a header, 255 segments and 255 bytes in each. */
export const largestPage = pageHeaderBytes + 255 + 255 * 255;

const capture = fourCharacters('OggS');
const checksumAt = 22;
const firstFlag = 2;
const lastFlag = 4;

/**
 * Reads the page header at an offset that is held in memory to its 27 bytes; undefined where there is none. The list of
 * segments is brought into memory where it is not. Layout: RFC 3533, section 6.
 */
export async function readOggPage(bytes: ByteWindow, at: number): Promise<OggPage | undefined> {
  if (bytes.identifier(at) !== capture || bytes.uint8(at + 4) !== 0) return undefined;
  bytes.littleEndian = true;
  const flags = bytes.uint8(at + 5);
  const granule = bytes.uint64(at + 6);
  const serial = bytes.uint32(at + 14);
  const segments = bytes.uint8(at + 26);
  const body = at + pageHeaderBytes + segments;
  if (!(await bytes.hold(at, pageHeaderBytes + segments))) return undefined;
  let end = body;
  for (let segment = at + pageHeaderBytes; segment < body; segment++) end += bytes.uint8(segment);
  return {
    at,
    isFirst: (flags & firstFlag) !== 0,
    isLast: (flags & lastFlag) !== 0,
    // All bits set: no packet ends here. A number that large is no position either.
    position: Number.isSafeInteger(granule) ? granule : undefined,
    serial,
    body,
    end,
  };
}

/** One step of the checksum for each value of a byte: polynomial 0x04c11db7, highest bit first. */
const table = Uint32Array.from({ length: 256 }, (_, value) => {
  let rest = value << 24;
  for (let bit = 0; bit < 8; bit++) rest = (rest << 1) ^ (rest < 0 ? 0x04c11db7 : 0);
  return rest >>> 0;
});

/** Whether the checksum of a page that is held in memory is right (RFC 3533, section 6). */
export function isWholePage(bytes: ByteWindow, { at, end }: OggPage): boolean {
  const page = bytes.part(at, end);
  let sum = 0;
  for (let place = 0; place < page.length; place++) {
    // The checksum itself counts as zeros.
    const byte = place >= checksumAt && place < checksumAt + 4 ? 0 : page[place];
    sum = (sum << 8) ^ table[(sum >>> 24) ^ byte];
  }
  bytes.littleEndian = true;
  return sum >>> 0 === bytes.uint32(at + checksumAt);
}
