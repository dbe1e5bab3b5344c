import { joinPath, nameOf, titleOf } from '../../model/paths';
import type { FontSource } from '../../soundfont/write/writeSoundFont';
import { fontOutput } from '../../workspace/fonts/fontOutput';
import { CommandError } from '../commandError';
import { presetInput, readFontInput } from '../input/fontInput';
import type { Input } from '../input/input';
import { folderOfInput, readInput } from '../input/input';
import { readAny } from '../input/readAny';
import { giveNotes } from '../output/convertNotes';
import { outputFile } from '../output/overwriting';
import { putOutput } from '../output/putOutput';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

/** The options of writing a SoundFont. */
export const fontTargetOptions = {
  bits: ['16', '24'],
  rates: ['keep', 'lower'],
  keyswitches: ['presets', 'first'],
  takes: ['first', 'presets'],
} as const;

type Options = Readonly<Record<string, string | undefined>>;

/** An instrument for a font, with the input that it was read from. */
type NamedSource = FontSource & { input: Input };

const withPlace = /^(.+)#(\d+):(\d+)$/;

/** Writes one SoundFont of all inputs: instruments, tables, and the presets of other SoundFonts. */
export async function convertToFont(
  terminal: Terminal,
  names: readonly string[],
  options: Options,
  force: boolean,
): Promise<number> {
  const sources: NamedSource[] = [];
  for (const name of names) sources.push(...(await sourcesOf(terminal, name, options)));
  const output = options.output === undefined ? undefined : absolutePath(terminal, options.output);
  const target = fontOutput({
    bits: options.bits === undefined ? 'samples' : options.bits === '16' ? 16 : 24,
    attenuation: options.attenuation === '0.4' ? 0.4 : 1,
    rates: options.rates === 'lower' ? 'lower' : 'keep',
    keyswitches: options.keyswitches === 'first' ? 'first' : 'presets',
    takes: options.takes === 'presets' ? 'presets' : 'first',
  });
  const { files, accounts } = await target.write(
    sources,
    { fileName: output === undefined ? undefined : nameOf(output) },
    terminal.files,
  );
  const inputs = new Set(sources.flatMap(readPaths));
  const file = (name: string | undefined) =>
    name === undefined ? undefined : outputFile(terminal, name, force, inputs);
  await putOutput(terminal, files, file(options.output));
  const converted = sources.map(({ input, instrument }, at) => ({
    name: input.name,
    instrument,
    account: accounts[at],
  }));
  await giveNotes(
    terminal,
    names.length === 1 ? (names[0] as string) : 'all',
    converted,
    file(options.notes),
  );
  return 0;
}

/** All files that an instrument is made of: its texts, its font, its samples. */
function readPaths({ input, instrument, folder = '' }: NamedSource): string[] {
  const texts = [input.path.replace(/#\d+:\d+$/, ''), ...instrument.sources.map(({ path }) => path)];
  const samples = [...instrument.regions].map((region) => instrument.samplePath(region) ?? '*');
  return [...texts, ...samples.filter((path) => !path.startsWith('*')).map((path) => joinPath(folder, path))];
}

async function sourcesOf(terminal: Terminal, written: string, options: Options): Promise<NamedSource[]> {
  const font = await readFontInput(terminal, written);
  if (font) {
    const sources = [];
    const taken = new Set<string>();
    for (const preset of font.presets) {
      if (preset.zones.length === 0) continue;
      const input = presetInput(font, preset, options);
      const { bank, program, name } = preset;
      sources.push({
        ...(await sourceOf(terminal, input, options)),
        name,
        // Of presets that share a place the first keeps it.
        place: taken.has(`${bank}:${program}`) ? undefined : { bank, program },
      });
      taken.add(`${bank}:${program}`);
    }
    if (sources.length === 0) throw new CommandError(`${written}: no preset of it has any zones`);
    return sources;
  }
  const [, before = '', bank, program] = withPlace.exec(written) ?? [];
  const isWhole = before === '' || (await terminal.files.stat(absolutePath(terminal, written))) !== undefined;
  const input = await readInput(terminal, isWhole ? written : before, options);
  const place = isWhole ? undefined : { bank: Number(bank), program: Number(program) };
  return [{ ...(await sourceOf(terminal, input, options)), name: titleOf(input.path), place }];
}

async function sourceOf(terminal: Terminal, input: Input, options: Options) {
  const folder = folderOfInput(input);
  const { instrument, notes, vocabulary } = await readAny(terminal, input, options, folder);
  return { input, instrument, notes, vocabulary, folder };
}
