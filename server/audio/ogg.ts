import type { SampleProblem, SampleReading } from '../model/samples';
import type { ByteWindow } from './byteWindow';
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
 * between is never read. Other streams beside it are passed over.
 *
 * Sources: RFC 3533 (Ogg); Vorbis I specification, Xiph.Org; RFC 7845 (Ogg Opus); RFC 9639 (FLAC in Ogg).
 */
export async function readOgg(bytes: ByteWindow): Promise<SampleReading> {
  const start = await readStart(bytes);
  const { stream, serial, serials } = start;
  if (!stream) {
    if (start.damage) return unreadable(`This Ogg file is damaged. ${start.damage}`);
    return unreadable(
      start.end === 0 || start.end > bytes.size
        ? `This Ogg file is cut short or damaged: its first page makes no sense.`
        : 'This Ogg file holds no Vorbis audio; SFZ lists WAV, AIFF, FLAC and Ogg Vorbis.',
    );
  }
  const end = await findOggEnd(bytes, serial, serials);
  const frames = Math.max(0, (end.page?.position ?? 0) - stream.skipped);
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
      problems: problemsOf(end, frames),
    },
  };
}

/** Walks the pages that start streams; they all stand before any other page. */
async function readStart(bytes: ByteWindow): Promise<Start> {
  const start: Start = { serial: 0, serials: new Set(), end: 0 };
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

function problemsOf(end: OggEnd, frames: number): SampleProblem[] {
  if (end.isChained) {
    return [
      {
        kind: 'size-wrong',
        message: 'The file holds several recordings one behind the other; its length is not known.',
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
