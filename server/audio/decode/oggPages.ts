import { joinedBytes } from '../../model/joinedBytes';
import { ByteWindow } from '../headers/byteWindow';
import { isWholePage, largestPage, pageHeaderBytes, readOggPage } from '../headers/oggPage';
import type { ByteStream } from './byteStream';

/** What one page of an Ogg stream brings to its end. */
export interface OggPackets {
  serial: number;
  isFirst: boolean;
  isLast: boolean;
  /** Position at the end of the page, in the unit of its stream; undefined where no packet ends in it. */
  position: number | undefined;
  /** Packets that end in this page, with what earlier pages held of the first. */
  packets: Uint8Array[];
}

/** Bytes of the longest packet that is put together. */
const longestPacket = 1 << 20;
const continuedFlag = 1;

/**
 * The pages of one stream of an Ogg file from front to back, those of other streams left out; `isWanted` tells, by the
 * first packet of each stream that starts, whether to go on with that one. Bytes that are no whole page are passed over,
 * and so is a packet of which a part is lost. RFC 3533.
 */
export async function* oggPages(
  stream: ByteStream,
  isWanted: (serial: number, firstPacket: Uint8Array) => boolean,
): AsyncGenerator<OggPackets> {
  let serial: number | undefined;
  let sequence = 0;
  let begun: Uint8Array[] = [];
  for (;;) {
    const bytes = await stream.peek(largestPage);
    if (bytes.length < pageHeaderBytes) return;
    const window = new ByteWindow(
      { size: bytes.length, read: async () => bytes, close: async () => {} },
      bytes,
    );
    const page = await readOggPage(window, 0);
    if (!page || page.end > bytes.length || !isWholePage(window, page)) {
      const next = bytes.indexOf(0x4f, 1);
      stream.skip(next < 0 ? bytes.length : next);
      continue;
    }
    const parts = packetsOf(bytes, page.body, page.end);
    const first = parts.packets[0] ?? parts.rest;
    if (page.isFirst && first && isWanted(page.serial, first)) serial = page.serial;
    if (page.serial === serial) {
      const number = window.uint32(18);
      const isContinued = ((bytes[5] ?? 0) & continuedFlag) !== 0;
      if (page.isFirst || number !== sequence + 1 || !isContinued) begun = [];
      const isPartLost = isContinued && begun.length === 0;
      sequence = number;
      const packets: Uint8Array[] = parts.packets.map((packet) => packet.slice());
      if (isContinued && packets[0]) {
        if (isPartLost) packets.shift();
        else packets[0] = joinedBytes([...begun, packets[0]]);
        begun = [];
      }
      if (parts.rest && !(isPartLost && parts.packets.length === 0)) begun.push(parts.rest.slice());
      if (begun.reduce((sum, part) => sum + part.length, 0) > longestPacket) begun = [];
      yield { serial, isFirst: page.isFirst, isLast: page.isLast, position: page.position, packets };
    }
    stream.skip(page.end);
  }
}

/** What a page carries, cut at the segments shorter than 255 bytes; `rest` goes on in the next page. */
function packetsOf(
  bytes: Uint8Array,
  body: number,
  end: number,
): { packets: Uint8Array[]; rest: Uint8Array | undefined } {
  const packets: Uint8Array[] = [];
  let start = body;
  let at = body;
  for (let segment = pageHeaderBytes; segment < body; segment++) {
    const length = bytes[segment] ?? 0;
    at += length;
    if (length === 255) continue;
    packets.push(bytes.subarray(start, at));
    start = at;
  }
  return { packets, rest: start < end ? bytes.subarray(start, end) : undefined };
}
