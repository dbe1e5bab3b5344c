import type { FileReader } from '../model/files';
import type { SampleReading } from '../model/samples';
import { readAiff } from './headers/aiff';
import { ByteWindow, fourCharacters } from './headers/byteWindow';
import { readFlac } from './headers/flac';
import { leadingTagBytes } from './headers/leadingTag';
import { readOgg } from './headers/ogg';
import { unreadable } from './headers/unreadable';
import { readWav } from './headers/wav';

/** One read of this size holds everything of use of most files: a page of memory. */
const headBytes = 4096;

const name = {
  aifc: fourCharacters('AIFC'),
  aiff: fourCharacters('AIFF'),
  flac: fourCharacters('fLaC'),
  form: fourCharacters('FORM'),
  ogg: fourCharacters('OggS'),
  wave: fourCharacters('WAVE'),
} as const;

const waveForms: ReadonlySet<number> = new Set(['RIFF', 'RIFX', 'RF64', 'BW64'].map(fourCharacters));

/** Audio that the format does not list, by the bytes at the start of a file. */
const unlisted: ReadonlyMap<number, string> = new Map([
  [fourCharacters('riff'), 'Wave64'],
  [fourCharacters('caff'), 'CAF'],
  [fourCharacters('.snd'), 'AU'],
]);

const listed = 'SFZ lists WAV, AIFF, FLAC and Ogg Vorbis';

/**
 * What the header of an open sample file says; the caller closes the file. What it is is told by its first bytes, not
 * by its name. Reads one page at the start and, where needed, a few small ranges further on, whatever the length of the
 * audio. Frames count from 0. A file that cannot be read is an answer with a reason, never an exception.
 *
 * First bytes: RFC 9639 (FLAC), RFC 3533 (Ogg), Audio Interchange File Format 1.3, 1989 (AIFF); see
 * {@link readWav}, {@link readAiff}, {@link readFlac} and {@link readOgg}.
 */
export async function readSampleFacts(reader: FileReader): Promise<SampleReading> {
  if (reader.size === 0) return unreadable('The file is empty.');
  try {
    const head = await reader.read(0, Math.min(headBytes, reader.size));
    if (head.length === 0) return unreadable('The file is empty.');
    return await readByFirstBytes(new ByteWindow(reader, head), head);
  } catch {
    return unreadable('The file could not be read from its disk.');
  }
}

async function readByFirstBytes(bytes: ByteWindow, head: Uint8Array): Promise<SampleReading> {
  if (head.length < 4) return tooShortOrOther(bytes, head);
  const first = bytes.identifier(0);
  if (waveForms.has(first)) {
    if (head.length < 12) return tooShortOrOther(bytes, head);
    if (bytes.identifier(8) === name.wave) return readWav(bytes);
    return unreadable(`This RIFF file holds no WAVE audio; ${listed}.`);
  }
  if (first === name.flac) return readFlac(bytes, 0);
  if (first === name.ogg) return readOgg(bytes);
  if (first === name.form && head.length >= 12) {
    const form = bytes.identifier(8);
    if (form === name.aiff || form === name.aifc) return readAiff(bytes);
  }
  const at = leadingTagBytes(head);
  if (at > 0) {
    if ((await bytes.hold(at, 4)) && bytes.identifier(at) === name.flac) return readFlac(bytes, at);
    return unreadable(notListed('MP3'));
  }
  const other = unlisted.get(first) ?? (head.length >= 8 && isMpeg4(bytes) ? 'MPEG-4' : undefined);
  if (other) return unreadable(notListed(other));
  if (isMpegFrame(head)) return unreadable(notListed('MPEG (such as MP3)'));
  return tooShortOrOther(bytes, head);
}

function tooShortOrOther(bytes: ByteWindow, head: Uint8Array): SampleReading {
  if (looksLikeText(head)) return unreadable(`The file is not audio but text; ${listed}.`);
  if (bytes.size < 12) {
    return unreadable(`The file is cut short: with ${bytes.size} bytes it is too small for audio.`);
  }
  return unreadable(`The file is not audio of a known kind; ${listed}.`);
}

/** Letters, digits, signs and line ends only, and no start of a WAV file. */
function looksLikeText(head: Uint8Array): boolean {
  const start = String.fromCharCode(...head.subarray(0, 4));
  if ('RIFF'.startsWith(start) || waveForms.has(fourCharacters(start))) return false;
  return head.every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
}

function isMpeg4(bytes: ByteWindow): boolean {
  return bytes.identifier(4) === fourCharacters('ftyp');
}

/** Eleven bits set, then a version, layer, bit rate and sample rate that exist (ISO/IEC 11172-3). */
function isMpegFrame(head: Uint8Array): boolean {
  const second = head[1] ?? 0;
  const third = head[2] ?? 0;
  return (
    head[0] === 0xff &&
    (second & 0xe0) === 0xe0 &&
    (second & 0x18) !== 0x08 &&
    (third & 0xf0) !== 0xf0 &&
    (third & 0x0c) !== 0x0c
  );
}

function notListed(kind: string): string {
  return `This is ${kind} audio, which players need not read; ${listed}.`;
}
