import { buildMapScene } from '../../map/scene';
import { drawMapSvg } from '../../map/svg';
import { CommandError } from '../commandError';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { outputFile } from '../output/overwriting';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

/** `zonewright map`: the keyboard map as an SVG file. */
export async function map(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, { output: 'text', force: 'switch', ...tableOptions });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('map takes one file');
  if (options.output === undefined) throw new CommandError('map needs --output FILE.svg');
  const input = await readInputOrFolder(terminal, name);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  const inputs = [input.path, ...instrument.sources.map(({ path }) => path)];
  const file = outputFile(terminal, options.output, switches.has('force'), inputs);
  await write(terminal, file, drawMapSvg(buildMapScene(instrument)));
  return 0;
}
