import type { FileReader } from '../../model/files';
import type { AudioSource } from '../decode/audioSource';
import { openAudio } from '../decode/openAudio';

/**
 * Values, over all channels, that a measure looks at in one file unless it is asked for the whole: some three minutes of
 * stereo at 44.1 kHz (our choice). A compressed file of a few kilobytes can hold hours of silence.
 */
export const mostMeasuredValues = 1 << 24;
/** Channels of a file that is measured at the most (our choice); a header can claim 65,535 of them. */
export const mostMeasuredChannels = 64;

/** As `openAudio`, but `undefined` for files with more channels than are measured. */
export async function openMeasured(reader: FileReader): Promise<AudioSource | undefined> {
  const audio = await openAudio(reader);
  if (!audio || audio.channels <= mostMeasuredChannels) return audio;
  await audio.close();
  return undefined;
}

/** Whether frames up to `end` can be had without decoding more than a measure looks at. */
export function isWithinReach({ isDecodedInOrder, channels }: AudioSource, end: number): boolean {
  return !isDecodedInOrder || end * channels <= mostMeasuredValues;
}
