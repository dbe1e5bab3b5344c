import type { Output } from '../../model/output';
import type { FontOptions, FontSource } from '../../soundfont/write/writeSoundFont';
import { writeSoundFont } from '../../soundfont/write/writeSoundFont';
import type { ConversionSource } from '../convertInstrument';
import { wholeAccount } from '../convertInstrument';

/** Writing a SoundFont: one file of all instruments, each a preset or several. */
export function fontOutput(options: Omit<FontOptions, 'name'>): Output {
  const ending = '.sf2';
  return {
    ending,
    async write(sources: readonly (FontSource & ConversionSource)[], { fileName, progress, signal }, files) {
      const file = fileName ?? `${sources[0].name}${ending}`;
      const name = file.replace(/\.[^.]*$/, '');
      const { bytes, accounts } = await writeSoundFont(sources, { ...options, name }, files, {
        progress,
        signal,
      });
      return {
        files: new Map([[file, bytes]]),
        accounts: accounts.map((account, at) => wholeAccount(sources[at], account)),
      };
    },
  };
}
