import type { PresetNumbers } from '../soundfont/font';
import { presetReading } from '../workspace/fonts/presetReading';
import { pathOfUri } from './conversion/uris';
import type { ServerContext } from './serverContext';

/** What is answered where {@link presetAtUri} finds nothing. */
export const noPreset = 'The SoundFont has no such preset any more, or it cannot be read.';

/** A preset of the SoundFont at a URI as an instrument; `undefined` where there is none. */
export async function presetAtUri(
  { documents }: Pick<ServerContext, 'documents'>,
  uri: string,
  preset: PresetNumbers,
): ReturnType<typeof presetReading> {
  const path = pathOfUri(uri);
  return path === undefined ? undefined : presetReading(documents.files, path, preset);
}
