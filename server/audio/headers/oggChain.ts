import type { ByteWindow } from './byteWindow';
import type { OggPage } from './oggPage';
import { isWholePage, pageHeaderBytes, readOggPage } from './oggPage';

/** Where some of the streams of a file end, as other streams follow them. */
export interface LinkEnd {
  /** The last page of the stream in which a packet ends. */
  position: number;
  /** Where the streams that follow start. */
  end: number;
}

/** Bytes that are looked at for a page at first; most pages are of about 4 KB. */
const probeBytes = 4608;
/** A stretch that is read page by page rather than halved again. */
const walkedBytes = 16384;

/**
 * Finds where streams that start together end, in a file in which others follow, by halving the stretch in which that
 * has to be; `from` lies on a page of theirs, and the page at the end of the file is of another stream. `undefined`
 * where the pages make no sense or cost too many reads.
 */
export async function findLinkEnd(
  bytes: ByteWindow,
  from: number,
  serial: number,
  serials: ReadonlySet<number>,
): Promise<LinkEnd | undefined> {
  let low = from;
  let high = bytes.size;
  /** The first page known to be of another stream. */
  let next: OggPage | undefined;
  let position: number | undefined;
  const take = (page: OggPage) => {
    if (page.serial === serial && page.position !== undefined) position = page.position;
    return page.end;
  };
  while (high - low > walkedBytes) {
    const middle = Math.floor((low + high) / 2);
    const page = await firstPageFrom(bytes, middle, high);
    if (page && serials.has(page.serial)) low = take(page);
    else {
      high = middle;
      if (page) next = page;
    }
  }
  await bytes.hold(low, Math.min(bytes.size, Math.max(high, low) + probeBytes) - low);
  let at = low;
  while (at < (next?.at ?? bytes.size)) {
    const page = await firstPageFrom(bytes, at, bytes.size);
    if (!page || !serials.has(page.serial)) {
      next = page ?? next;
      break;
    }
    at = take(page);
  }
  if (position === undefined || !next) return undefined;
  return { position, end: next.at };
}

/** The first whole page at or behind an offset, before another one. */
async function firstPageFrom(bytes: ByteWindow, from: number, to: number): Promise<OggPage | undefined> {
  for (let at = from; at + pageHeaderBytes <= to; at++) {
    const there = Math.min(probeBytes, bytes.size - at);
    if (!bytes.holds(at, pageHeaderBytes) && !(await bytes.hold(at, there))) return undefined;
    const held = bytes.part(at, bytes.heldEnd);
    const place = held.indexOf(0x4f);
    at += place < 0 ? held.length - 1 : place;
    if (place < 0 || at + pageHeaderBytes > bytes.size) continue;
    if (!(await bytes.hold(at, pageHeaderBytes))) return undefined;
    const page = await readOggPage(bytes, at);
    if (page && page.end <= bytes.size && (await bytes.hold(at, page.end - at)) && isWholePage(bytes, page)) {
      return page;
    }
  }
  return undefined;
}
