import type { FileReader } from '../../model/files';
import type { MeasuredPitch } from '../../model/samples';
import { mixToMono } from '../decode/readFrames';
import { isWithinReach, openMeasured } from './openMeasured';
import { measurePitch } from './pitch/pitch';

/** As much of a note as its pitch is measured in (our choice). */
const pitchSeconds = 2;
/** Silence before the sound that is skipped at the most (our choice). */
const mostSilentSeconds = 8;
/** Below this, about −60 dB, a stretch counts as silence before the sound (our choice). */
const quiet = 1e-3;

/**
 * The pitch of an open sample file, from the first two seconds that are not silent; the caller closes the file. `null`
 * where nothing was found, or where the file cannot be decoded. Never throws.
 */
export async function measureSamplePitch(reader: FileReader): Promise<MeasuredPitch | null> {
  const audio = await openMeasured(reader);
  if (!audio) return null;
  try {
    const { sampleRate } = audio;
    const count = Math.ceil(pitchSeconds * sampleRate);
    for (let seconds = 0; seconds <= mostSilentSeconds; seconds += pitchSeconds / 2) {
      const start = Math.round(seconds * sampleRate);
      if (start >= audio.frames || !isWithinReach(audio, start + count)) return null;
      const samples = mixToMono(await audio.read(start, count));
      // A sound that only begins in the second half is measured from there.
      if (isQuiet(samples.subarray(0, count / 2)) && start + count / 2 < audio.frames) continue;
      return measurePitch(samples, sampleRate);
    }
    return null;
  } catch {
    return null;
  } finally {
    await audio.close();
  }
}

function isQuiet(samples: Float32Array): boolean {
  return samples.every((value) => Math.abs(value) < quiet);
}
