import type { ByteWindow } from './byteWindow';
import type { OggPage } from './oggPage';
import { isWholePage, largestPage, pageHeaderBytes, readOggPage } from './oggPage';

/** What the end of an Ogg file shows of one of its streams. */
export interface OggEnd {
  /** The last whole page of the stream in which a packet ends. */
  page?: OggPage;
  /** The file ends inside a page. */
  isCut: boolean;
  /** A page at the end does not fit its checksum. */
  isDamaged: boolean;
  /** A stream that did not start with the others stands at the end. */
  isChained: boolean;
}

/**
 * Stretches at the end of a file that are looked at, one after the other until a page is found. Most pages are of about
 * 4 KB; the last stretch holds the largest page behind a cut-off one of the same size.
 */
const stretches = [4096, 16384, 2 * largestPage] as const;
/** Pages whose checksums are worked out before giving up, so that bytes made to look like pages cost little. */
const mostPages = 256;

/**
 * Finds the last page of a stream by reading backwards from the end of the file. `serials` are those of all streams
 * that start together at the beginning.
 */
export async function findOggEnd(
  bytes: ByteWindow,
  serial: number,
  serials: ReadonlySet<number>,
): Promise<OggEnd> {
  let found: OggEnd = { isCut: false, isDamaged: false, isChained: false };
  for (const stretch of stretches) {
    const start = Math.max(0, bytes.size - stretch);
    if (!(await bytes.hold(start, bytes.size - start))) break;
    found = await searchBackwards(bytes, start, serial, serials);
    if (found.page || found.isChained || start === 0) break;
  }
  return found;
}

async function searchBackwards(
  bytes: ByteWindow,
  start: number,
  serial: number,
  serials: ReadonlySet<number>,
): Promise<OggEnd> {
  const found: OggEnd = { isCut: endsInCapture(bytes, start), isDamaged: false, isChained: false };
  let pages = 0;
  const stretch = bytes.part(start, bytes.size);
  let place = stretch.length - pageHeaderBytes + 1;
  while (place > 0 && pages < mostPages) {
    // The capture pattern is looked for by its first letter.
    place = stretch.lastIndexOf(0x4f, place - 1);
    if (place < 0) break;
    const page = await readOggPage(bytes, start + place);
    if (!page) continue;
    if (page.end > bytes.size) {
      found.isCut = true;
      continue;
    }
    pages++;
    if (!isWholePage(bytes, page)) {
      found.isDamaged = true;
      continue;
    }
    if (!serials.has(page.serial)) {
      found.isChained = true;
      return found;
    }
    if (page.serial !== serial || page.position === undefined) continue;
    found.page = page;
    return found;
  }
  return found;
}

/** Whether the file ends with the start of a page, too short for a page header. */
function endsInCapture(bytes: ByteWindow, start: number): boolean {
  const from = Math.max(start, bytes.size - pageHeaderBytes + 1);
  for (let at = from; at + 4 <= bytes.size; at++) {
    if (bytes.identifier(at) === 0x4f676753) return true;
  }
  return false;
}
