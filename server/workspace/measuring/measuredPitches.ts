import { measureSamplePitch } from '../../audio/measure/measureSample';
import type { Files } from '../../model/files';

/** Files that are measured at the most: the octave of a table is the same in all its rows. */
const mostMeasured = 8;
/** A pitch measured with less confidence tells nothing. */
const surely = 0.8;

/**
 * The pitch of some of the files that names lead to, spread evenly, as MIDI keys with a fraction; those without a clear
 * pitch are left out.
 */
export async function measuredPitches(
  files: Files,
  paths: ReadonlyMap<string, string>,
): Promise<Map<string, number>> {
  const all = [...paths];
  const count = Math.min(mostMeasured, all.length);
  const pitches = new Map<string, number>();
  for (let at = 0; at < count; at++) {
    const [name, path] = all[Math.floor((at * all.length) / count)];
    const reader = await files.open(path);
    if (!reader) continue;
    try {
      const pitch = await measureSamplePitch(reader);
      if (pitch && pitch.confidence >= surely) pitches.set(name, pitch.key + pitch.cents / 100);
    } catch {
      // A file that cannot be read is no evidence.
    } finally {
      await reader.close();
    }
  }
  return pitches;
}
