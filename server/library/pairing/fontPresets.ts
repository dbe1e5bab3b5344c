import type { Files } from '../../model/files';
import { nameOf, relativePath } from '../../model/paths';
import { FontFiles } from '../../soundfont/fontFiles';
import type { InstrumentEntry, LeftOut } from '../libraryFile';

/** The presets of SoundFonts, an instrument each. */
export async function fontPresets(
  files: Files,
  folder: string,
  fonts: readonly string[],
): Promise<{ entries: InstrumentEntry[]; leftOut: LeftOut[] }> {
  const entries: InstrumentEntry[] = [];
  const leftOut: LeftOut[] = [];
  const reader = new FontFiles(files);
  for (const path of fonts) {
    const shown = relativePath(folder, path);
    const font = await reader.at(path);
    const presets = font.kind === 'font' ? font.view.presets.filter(({ zones }) => zones.length > 0) : [];
    if (font.kind !== 'font' || presets.length === 0)
      leftOut.push({
        path: shown,
        because: font.kind === 'unreadable' ? font.reason : 'It is no SoundFont with presets.',
      });
    for (const { bank, program, name } of presets)
      entries.push({
        name: name.trim() || `${nameOf(path)} ${bank}-${program}`,
        source: `${shown}#${bank}:${program}`,
        pairing: {
          confidence: 1,
          because: ['It is a preset of a SoundFont, which holds its samples.'],
          doubts: [],
        },
      });
  }
  return { entries, leftOut };
}
