import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { folderOf, joinPath, nameOf } from '../../model/paths';
import { sfzNotation } from '../../sfz/notation';
import type { PresetNumbers } from '../../soundfont/font';
import { fontsAmong } from '../../soundfont/fontFiles';
import { presetAt } from '../../soundfont/regions/fontView';

/**
 * A preset of the SoundFont at `path` as an instrument, with the folder that its paths lead from; spans are those of
 * the text that an editor is given of it. `undefined` where there is no such font or preset.
 */
export async function presetReading(
  files: Files,
  path: string,
  { bank, program }: PresetNumbers,
): Promise<{ instrument: Instrument; folder: string } | undefined> {
  const font = await fontsAmong(files).at(path);
  const preset = font.kind === 'font' ? presetAt(font.view, bank, program) : undefined;
  if (font.kind !== 'font' || !preset) return undefined;
  const folder = folderOf(path);
  const file = nameOf(path);
  const { text } = font.view.text(preset, file, {
    attenuation: 1,
    samplePath: ({ name }) => joinPath(file, name),
  });
  return { instrument: sfzNotation.read(text, { path: joinPath(folder, 'preset.sfz') }), folder };
}
