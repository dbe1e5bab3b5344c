import type { SampleProblem, SampleReading } from '../../model/samples';
import type { ByteWindow } from './byteWindow';
import { findLinkEnd } from './oggChain';
import type { OggEnd } from './oggEnd';
import { findOggEnd } from './oggEnd';
import type { OggPage } from './oggPage';
import { pageHeaderBytes, readOggPage } from './oggPage';
import type { DamagedStream, OggStream } from './oggStream';
import { longestIdentification, readOggStream } from './oggStream';
import { unreadable } from './unreadable';

/** Streams side by side whose first packets are looked at. */
const mostStreams = 16;

/** What the pages at the start of an Ogg file say. */
interface Start {
  stream?: OggStream;
  serial: number;
  damage?: string;
  serials: Set<number>;
  /** Offset behind the pages that start streams. */
  end: number;
}

/**
 * Reads what an Ogg file says of its first audio stream: Vorbis, or Opus or FLAC in Ogg. `bytes` holds the start of the
 * file, which begins with `OggS`. The length is the position of the stream's last page, found from the end; what lies
 * between is never read. Other streams beside it are passed over; those of the same kind that follow it are counted.
 *
 * Sources: RFC 3533 (Ogg); Vorbis I specification, Xiph.Org; RFC 7845 (Ogg Opus); RFC 9639 (FLAC in Ogg).
 */
export async function readOgg(bytes: ByteWindow): Promise<SampleReading> {
  const start = await readStart(bytes, 0);
  const { stream } = start;
  if (!stream) {
    if (start.damage) return unreadable(`This Ogg file is damaged. ${start.damage}`);
    return unreadable(
      start.end === 0 || start.end > bytes.size
        ? `This Ogg file is cut short or damaged: its first page makes no sense.`
        : 'This Ogg file holds no Vorbis audio; SFZ lists WAV, AIFF, FLAC and Ogg Vorbis.',
    );
  }
  const { end, frames, recordings } = await readLength(bytes, { ...start, stream });
  return {
    kind: 'facts',
    facts: {
      container: 'ogg',
      encoding: stream.encoding,
      sampleRate: stream.sampleRate,
      channels: stream.channels,
      bitsPerSample: stream.bitsPerSample,
      frames,
      lengthSeconds: frames / stream.sampleRate,
      loops: [],
      rootKey: null,
      fineTuneCents: null,
      problems: problemsOf(end, frames, recordings),
    },
  };
}

/** Recordings one behind the other that are looked at. */
const mostRecordings = 16;

/** The length of a stream and of those like it that follow; its end is `isChained` where that cannot be told. */
async function readLength(
  bytes: ByteWindow,
  first: Start & { stream: OggStream },
): Promise<{ end: OggEnd; frames: number; recordings: number }> {
  let start: Start = first;
  let frames = 0;
  for (let recordings = 1; ; recordings++) {
    const { stream, serial, serials } = start;
    const end = await findOggEnd(bytes, serial, serials);
    const counts =
      stream?.encoding === first.stream.encoding &&
      stream.channels === first.stream.channels &&
      stream.sampleRate === first.stream.sampleRate;
    const add = (position: number) => {
      if (counts) frames += Math.max(0, position - stream.skipped);
    };
    if (!end.isChained) {
      // Too many reads were needed to come to the end.
      if (recordings > 1 && !end.page) return { end: { ...end, isChained: true }, frames: 0, recordings };
      add(end.page?.position ?? 0);
      return { end, frames, recordings };
    }
    const link = recordings < mostRecordings && (await findLinkEnd(bytes, start.end, serial, serials));
    if (!link) return { end, frames: 0, recordings };
    add(link.position);
    start = await readStart(bytes, link.end);
  }
}

/** Walks the pages that start streams, from an offset on; they all stand before any other page. */
async function readStart(bytes: ByteWindow, from: number): Promise<Start> {
  const start: Start = { serial: 0, serials: new Set(), end: from };
  for (let count = 0; count < mostStreams; count++) {
    const page = await pageAt(bytes, start.end);
    if (!page || (count > 0 && !page.isFirst)) break;
    start.serials.add(page.serial);
    start.end = page.end;
    const length = Math.min(page.end - page.body, longestIdentification);
    if (start.stream || !(await bytes.hold(page.body, length))) continue;
    const stream = readOggStream(bytes, page.body, length);
    if (!stream) continue;
    if (isDamaged(stream)) start.damage ??= stream.damage;
    else {
      start.stream = stream;
      start.serial = page.serial;
    }
  }
  return start;
}

async function pageAt(bytes: ByteWindow, at: number): Promise<OggPage | undefined> {
  return (await bytes.hold(at, pageHeaderBytes)) ? readOggPage(bytes, at) : undefined;
}

function isDamaged(stream: OggStream | DamagedStream): stream is DamagedStream {
  return 'damage' in stream;
}

function problemsOf(end: OggEnd, frames: number, recordings: number): SampleProblem[] {
  if (end.isChained) {
    return [
      {
        kind: 'size-wrong',
        message: 'The file holds several recordings one after the other; its length is not known.',
      },
    ];
  }
  if (recordings > 1) {
    return [
      {
        kind: 'size-wrong',
        message: `The file holds ${recordings} recordings one after the other; some players play only the first.`,
      },
    ];
  }
  if (end.isCut) {
    return [
      { kind: 'cut-short', message: `The file ends in the middle of a page; ${frames} frames are whole.` },
    ];
  }
  if (end.isDamaged) {
    return [
      {
        kind: 'chunk-broken',
        message: `The last page of the file is damaged; the ${frames} frames before it are counted.`,
      },
    ];
  }
  if (frames === 0) {
    return [{ kind: 'chunk-broken', message: 'The file holds no audio: it is 0 frames long.' }];
  }
  if (end.page && !end.page.isLast) {
    return [
      {
        kind: 'size-wrong',
        message:
          'The last page of the file is not marked as its end; the recording may have been broken off.',
      },
    ];
  }
  return [];
}
