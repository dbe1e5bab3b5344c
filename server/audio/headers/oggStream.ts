import type { ByteWindow } from './byteWindow';
import { fourCharacters } from './byteWindow';
import { readStreamInfo, streamInfoBytes } from './flacStreamInfo';

/** What the first packet of an audio stream in an Ogg file says. */
export interface OggStream {
  encoding: 'vorbis' | 'opus' | 'flac';
  channels: number;
  /** Frames a second of the positions in the file. */
  sampleRate: number;
  /** 0 where the encoding has no fixed depth. */
  bitsPerSample: number;
  /** Frames at the start that are decoded and not played. */
  skipped: number;
}

/** Bytes of the first packet that are looked at, at the most. */
export const longestIdentification = 64;

/** A first packet of a kind that is known and damaged. */
export interface DamagedStream {
  damage: string;
}

/**
 * Reads the first packet of a stream, `length` bytes of which are held in memory; undefined for a stream that is not
 * audio of a kind that is known here.
 */
export function readOggStream(
  bytes: ByteWindow,
  at: number,
  length: number,
): OggStream | DamagedStream | undefined {
  if (length < 8) return undefined;
  const start = bytes.identifier(at);
  if (start === vorbisStart && matches(bytes, at + 4, 'bis')) return readVorbis(bytes, at, length);
  if (start === opusStart && matches(bytes, at + 4, 'Head')) return readOpus(bytes, at, length);
  if (start === flacStart && matches(bytes, at + 4, 'C')) return readFlacMapping(bytes, at, length);
  return undefined;
}

const vorbisStart = fourCharacters('\x01vor');
const opusStart = fourCharacters('Opus');
const flacStart = fourCharacters('\x7fFLA');

const tooShort: DamagedStream = { damage: 'Its first packet is too short.' };

/**
 * Packet type and `vorbis`, version (32 bits), channels (8), sample rate (32), three bit rates (32 each), two block
 * sizes as powers of two (4 each), one framing bit. Vorbis I specification, Xiph.Org, section 4.2.2.
 */
function readVorbis(bytes: ByteWindow, at: number, length: number): OggStream | DamagedStream {
  if (length < 30) return tooShort;
  bytes.littleEndian = true;
  const version = bytes.uint32(at + 7);
  const channels = bytes.uint8(at + 11);
  const sampleRate = bytes.uint32(at + 12);
  if (version !== 0) return { damage: `It says that its audio is of version ${version}; there is only 0.` };
  if (channels === 0) return { damage: 'It says that it has no channels.' };
  if (sampleRate === 0) return { damage: 'It says that its sample rate is 0.' };
  return { encoding: 'vorbis', channels, sampleRate, bitsPerSample: 0, skipped: 0 };
}

/**
 * `OpusHead`, version (8 bits), channels (8), pre-skip (16), rate of what was encoded (32), gain (16), mapping (8).
 * Positions count frames of 48 kHz, whatever was encoded. RFC 7845, sections 4 and 5.1.
 */
function readOpus(bytes: ByteWindow, at: number, length: number): OggStream | DamagedStream {
  if (length < 19) return tooShort;
  bytes.littleEndian = true;
  const version = bytes.uint8(at + 8);
  const channels = bytes.uint8(at + 9);
  // The upper four bits change when older readers cannot go on.
  if (version >= 16)
    return { damage: `It says that its audio is of version ${version}, which is not known.` };
  if (channels === 0) return { damage: 'It says that it has no channels.' };
  return { encoding: 'opus', channels, sampleRate: 48000, bitsPerSample: 0, skipped: bytes.uint16(at + 10) };
}

/** `0x7F FLAC`, version (two bytes), header packets (16 bits), `fLaC`, a block header and STREAMINFO. RFC 9639, 10.1. */
function readFlacMapping(bytes: ByteWindow, at: number, length: number): OggStream | DamagedStream {
  if (length < 17 + streamInfoBytes) return tooShort;
  const info = readStreamInfo(bytes, at + 17);
  if (typeof info === 'string') return { damage: info };
  const { channels, sampleRate, bitsPerSample } = info;
  return { encoding: 'flac', channels, sampleRate, bitsPerSample, skipped: 0 };
}

function matches(bytes: ByteWindow, at: number, text: string): boolean {
  return [...text].every((character, position) => bytes.uint8(at + position) === character.charCodeAt(0));
}
