import type { FileReader } from '../../model/files';
import { leadingTagBytes } from '../headers/leadingTag';
import { readSampleFacts } from '../readSampleFacts';
import type { AudioSource } from './audioSource';
import { flacSource } from './flacSource';
import { oggSource } from './oggSource';
import { plainSource } from './plainSource';
import { readFrameLayout } from './readFrameLayout';

/** Bytes of the header of a tag before the audio. */
const tagHeaderBytes = 10;

/**
 * The audio of an open sample file, whatever its container; the caller closes the source, then the file. `undefined`
 * where the file cannot be read or its encoding is not decoded: PCM, floating-point numbers and G.711 in WAV and AIFF
 * files,
 * FLAC, and Vorbis, Opus and FLAC in Ogg files are. Reads no more than the header; never throws.
 */
export async function openAudio(reader: FileReader): Promise<AudioSource | undefined> {
  const layout = await readFrameLayout(reader);
  if (layout) return plainSource(reader, layout);
  const reading = await readSampleFacts(reader);
  if (reading.kind !== 'facts') return undefined;
  const { container, sampleRate, channels, bitsPerSample } = reading.facts;
  // Where the file does not say how long it is, its audio goes on to its end.
  const frames = reading.facts.frames || Number.MAX_SAFE_INTEGER;
  const format = { sampleRate, channels, bitsPerSample, frames };
  if (container === 'ogg') return oggSource(reader, format);
  if (container !== 'flac') return undefined;
  try {
    return flacSource(reader, leadingTagBytes(await reader.read(0, tagHeaderBytes)), format);
  } catch {
    return undefined;
  }
}
