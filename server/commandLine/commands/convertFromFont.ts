import type { OutputContent, OutputSource } from '../../model/output';
import { folderOf, joinPath, nameOf, relativePath, titleOf } from '../../model/paths';
import type { Preset } from '../../soundfont/font';
import type { SampleFile } from '../../soundfont/regions/sampleFiles';
import { FileNames } from '../../soundfont/regions/sampleFiles';
import { fileChunks, filesWithSameAudio, haveSameBytes } from '../../workspace/fonts/fontSamples';
import { CommandError } from '../commandError';
import type { FontInput } from '../input/fontInput';
import { onePreset, presetInput } from '../input/fontInput';
import { loadInstrument } from '../input/input';
import type { Converted } from '../output/convertNotes';
import { giveNotes } from '../output/convertNotes';
import { outputFile } from '../output/overwriting';
import { putOutput } from '../output/putOutput';
import { namedOutput } from '../output/target';
import { makeFolder } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

type Options = Readonly<Record<string, string | undefined>>;

/** Where text and samples go. */
interface Destination {
  /** The folder of the texts. */
  folder: string;
  /** The name of the one text; `undefined` where each preset has a file of its own. */
  fileName: string | undefined;
  /** The folder of the samples, relative to that of the texts. */
  samples: string;
}

/**
 * Writes presets of a SoundFont as text with their samples as WAV files beside it: one preset to the file that `--output`
 * names, or all to a folder. Samples that are there already with the same bytes are left as they are; with `--samples`, text
 * leads to files of that folder that hold the same audio.
 */
export async function convertFromFont(
  terminal: Terminal,
  font: FontInput,
  options: Options,
  force: boolean,
): Promise<number> {
  const target = await namedOutput(terminal, options.to);
  const destination = await destinationOf(terminal, font, options.output, target.ending);
  const presets =
    destination?.fileName === undefined && destination ? font.presets : [onePreset(terminal, font)];
  const existing =
    destination && options.samples !== undefined
      ? await existingOf(terminal, font, options.samples)
      : undefined;
  const used = new Set<string>();
  const names = new FileNames();
  const all = new Map<string, OutputContent>();
  const converted: Converted[] = [];
  for (const preset of presets) {
    const pathOf = (file: SampleFile) => samplePath(file, font, destination, existing, used);
    const input = presetInput(font, preset, options, pathOf);
    const folder = destination?.folder ?? folderOf(font.path);
    const path = joinPath(folder, destination?.fileName ?? fileNameOf(preset, names, target.ending));
    const loaded = await loadInstrument(terminal, { ...input, path });
    if (!loaded) throw new CommandError(`${input.name}: its text cannot be read`);
    const { instrument } = loaded;
    const source: OutputSource = { instrument, name: titleOf(path), folder, notes: input.notes };
    const result = await target.write([source], { fileName: nameOf(path), folder }, terminal.files);
    for (const [name, content] of result.files) all.set(name, content);
    converted.push({ name: nameOf(path), instrument, account: result.accounts[0] });
  }
  if (!destination)
    terminal.error(
      `zonewright: the samples stay in ${font.name}; to write them as well, name a folder with --output\n`,
    );
  await addSamples(terminal, font, destination, used, all);
  const [first] = all.keys();
  if (destination && destination.fileName === undefined)
    await makeFolder(terminal, options.output as string, destination.folder);
  await putOutput(
    terminal,
    all,
    destination && {
      name: joinPath(options.output ?? '', destination.fileName === undefined ? first : '.'),
      path: joinPath(destination.folder, first),
      force,
      inputs: new Set([font.path]),
    },
  );
  await giveNotes(
    terminal,
    font.name,
    converted,
    options.notes === undefined ? undefined : outputFile(terminal, options.notes, force, [font.path]),
  );
  return 0;
}

/** A folder that is there, and a name without an ending, mean a folder; anything else is the file of one preset. */
async function destinationOf(
  terminal: Terminal,
  font: FontInput,
  output: string | undefined,
  ending: string,
): Promise<Destination | undefined> {
  if (output === undefined) return undefined;
  const path = absolutePath(terminal, output);
  const isFolder = (await terminal.files.stat(path))?.kind === 'folder' || !nameOf(path).includes('.');
  if (isFolder && path !== font.path) return { folder: path, fileName: undefined, samples: 'Samples' };
  if (font.presets.length > 1)
    throw new CommandError(
      `${font.name} has ${font.presets.length} presets, but ${output} is one file; name one preset, ${font.name}#bank:preset, or a folder with --output`,
    );
  const title = titleOf(path);
  return { folder: folderOf(path), fileName: nameOf(path) || `preset${ending}`, samples: `${title} Samples` };
}

function fileNameOf({ bank, program, name }: Preset, names: FileNames, ending: string): string {
  const number = (value: number) => String(value).padStart(3, '0');
  return names.take(`${number(bank)}-${number(program)} ${name}`, ending);
}

/** The files of a folder that hold the audio of samples, by the names of these. */
async function existingOf(
  terminal: Terminal,
  font: FontInput,
  samples: string,
): Promise<Map<string, string>> {
  const folder = absolutePath(terminal, samples);
  if ((await terminal.files.stat(folder))?.kind !== 'folder')
    throw new CommandError(`--samples: ${samples} is no folder`);
  const paths = [...font.view.samples.keys()].map((name) => `${font.path}/${name}`);
  const found = await filesWithSameAudio(terminal.files, paths, folder);
  return new Map([...found].map(([path, file]) => [nameOf(path), file]));
}

function samplePath(
  { name }: SampleFile,
  font: FontInput,
  destination: Destination | undefined,
  existing: ReadonlyMap<string, string> | undefined,
  used: Set<string>,
): string {
  if (!destination) return `${nameOf(font.path)}/${name}`;
  const known = existing?.get(name);
  if (known !== undefined) return relativePath(destination.folder, known);
  used.add(name);
  return `${destination.samples}/${name}`;
}

/** Adds the samples that are not there yet. One that is there with other bytes is not written over. */
async function addSamples(
  terminal: Terminal,
  font: FontInput,
  destination: Destination | undefined,
  used: ReadonlySet<string>,
  all: Map<string, OutputContent>,
): Promise<void> {
  if (!destination) return;
  for (const name of used) {
    const path = `${destination.samples}/${name}`;
    const inFont = `${font.path}/${name}`;
    const there = joinPath(destination.folder, path);
    if ((await terminal.files.stat(there)) === undefined)
      all.set(path, await fileChunks(terminal.files, inFont));
    else if (!(await haveSameBytes(terminal.files, inFont, there)))
      throw new CommandError(
        `${path} is there already with other content; choose another folder with --output`,
      );
  }
}
