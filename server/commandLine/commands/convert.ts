import { basename } from 'node:path';
import { folderOf, joinPath, nameOf, titleOf } from '../../model/paths';
import type { VocabularySource } from '../../workspace/notations/notationOutput';
import { CommandError } from '../commandError';
import { isLong, keepHeapSmall } from '../heapGrowth';
import { fontOptions, readFontInput } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { giveNotes } from '../output/convertNotes';
import { outputFile } from '../output/overwriting';
import { putOutput } from '../output/putOutput';
import { namedOutput } from '../output/target';
import { templateTarget } from '../output/templateTarget';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readWords } from '../words';
import { convertFromFont } from './convertFromFont';
import { convertToFont, fontTargetOptions } from './convertToFont';
import { prove } from './prove';

const convertOptions = {
  to: 'text',
  output: 'text',
  notes: 'text',
  inline: 'switch',
  force: 'switch',
  prove: 'switch',
  template: 'text',
  fact: 'texts',
  ...tableOptions,
  ...fontOptions,
  ...fontTargetOptions,
} as const;

/** `zonewright convert`: an instrument or a copied table in another notation. */
export async function convert(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, lists, switches } = readWords(args, convertOptions);
  const [name, ...more] = paths;
  const force = switches.has('force');
  if (options.to === 'sf2' && switches.has('prove')) throw new CommandError(proofOfFont);
  if (options.to === 'sf2' && name !== undefined) return convertToFont(terminal, paths, options, force);
  if (name === undefined || more.length > 0)
    throw new CommandError('convert takes one file, or several with --to sf2');
  tellUnusedOptions(terminal, options);
  if (lists.fact && options.template === undefined)
    throw new CommandError('--fact fills places of a template, so it needs --template');
  const font = await readFontInput(terminal, name);
  if (font && switches.has('prove')) throw new CommandError(proofOfFont);
  if (font) return convertFromFont(terminal, font, options, force);
  const target =
    options.template === undefined
      ? await namedOutput(terminal, options.to)
      : await templateTarget(terminal, options.template, options.to, lists.fact ?? []);
  const input = await readInputOrFolder(terminal, name);
  if (isLong(input.text)) await keepHeapSmall();
  const outputPath = outputPathOf(terminal, options);
  const outputFolder = outputPath === undefined ? folderOfInput(input) : folderOf(outputPath);
  if (switches.has('prove') && options.output === undefined)
    throw new CommandError('--prove plays what was written, so it needs --output');
  const { fromTable, instrument, ...read } = await readAny(terminal, input, options, outputFolder);
  // A table's sample names were looked up from the output's folder already, or stand as the table gives them.
  const folder = fromTable ? outputFolder : folderOfInput(input);
  const source: VocabularySource = { ...read, instrument, name: titleOf(input.path), folder };
  const { files, accounts } = await target.write(
    [source],
    {
      fileName: outputPath === undefined ? undefined : nameOf(outputPath),
      folder: outputFolder,
      directives: switches.has('inline') ? 'inline' : 'keep',
      inPieces: options.output !== undefined,
    },
    terminal.files,
  );
  const templates = options.template === undefined ? [] : [absolutePath(terminal, options.template)];
  const inputs = [input.path, ...templates, ...instrument.sources.map((one) => one.path)];
  const file = (named: string) => outputFile(terminal, named, force, inputs);
  await putOutput(terminal, files, options.output === undefined ? undefined : file(options.output));
  const converted = { name: input.name, instrument, account: accounts[0] };
  const title = options.notes === undefined ? input.name : basename(input.path);
  await giveNotes(
    terminal,
    title,
    [converted],
    options.notes === undefined ? undefined : file(options.notes),
  );
  if (!switches.has('prove') || options.output === undefined) return 0;
  // The paths of a table's samples start from the folder that it was written to.
  const played = fromTable ? { ...input, path: joinPath(outputFolder, nameOf(input.path)) } : input;
  const proof = { input: played, instrument, notes: accounts[0].notes, output: options.output };
  return (await prove(terminal, proof)) ? 0 : 1;
}

/** A SoundFont is one preset or many, and few instruments are one preset. */
const proofOfFont =
  '--prove plays instruments that are text; compare a preset of a SoundFont instead: zonewright compare A FILE.sf2#bank:preset';

function outputPathOf(
  terminal: Terminal,
  { output, notes }: { output?: string | undefined; notes?: string | undefined },
): string | undefined {
  const path = output === undefined ? undefined : absolutePath(terminal, output);
  if (path !== undefined && notes !== undefined && path === absolutePath(terminal, notes))
    throw new CommandError('--output and --notes name the same file');
  return path;
}

function tellUnusedOptions(terminal: Terminal, options: Readonly<Record<string, string | undefined>>): void {
  for (const name of Object.keys(fontTargetOptions))
    if (options[name] !== undefined)
      terminal.error(`zonewright: --${name} is for --to sf2, so it has no effect\n`);
}
