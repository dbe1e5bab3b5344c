import type { InstrumentEntry, LibraryFile } from '../../library/libraryFile';
import { libraryFileName } from '../../library/libraryFile';
import { newLibrary } from '../../library/pairing/newLibrary';
import { writeLibraryFile } from '../../library/writeLibraryFile';
import { joinPath } from '../../model/paths';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { CommandError } from '../commandError';
import { outputFile } from '../output/overwriting';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readWords } from '../words';

/** `zonewright library new`: writes a library file for what a folder holds, never over one that is there. */
export async function libraryNew(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options } = readWords(args, { format: ['text', 'json'] });
  const [name = '', ...more] = paths;
  if (name === '' || more.length > 0) throw new CommandError('library new takes one folder');
  const folder = absolutePath(terminal, name);
  if ((await terminal.files.stat(folder))?.kind !== 'folder')
    throw new CommandError(`${name}: there is no such folder`);
  const path = joinPath(folder, libraryFileName);
  if (await terminal.files.stat(path))
    throw new CommandError(`${name}/${libraryFileName} is there already; rename it to get a new one`);
  const found = await newLibrary(terminal.files, folder);
  await write(terminal, outputFile(terminal, path, false, []), writeLibraryFile(found));
  await terminal.out(
    options.format === 'json' ? jsonText(found) : textOf(found, `${name}/${libraryFileName}`),
  );
  return 0;
}

/** What was found, in lines for people: what is sure as a number, every doubt and everything left out by name. */
function textOf({ instruments = [], leftOut = [] }: LibraryFile, file: string): string {
  const doubtful = instruments.filter((one) => doubtsOf(one).length > 0);
  const sure = instruments.length - doubtful.length;
  const lines = [
    `${file}: ${counted(instruments.length, 'instrument')}, ${sure} without a doubt`,
    ...doubtful.flatMap((one) => [
      '',
      `${one.name} (${one.source}${one.samples === undefined ? '' : `, samples in ${one.samples}`})`,
      ...doubtsOf(one).map((doubt) => `  ${doubt}`),
    ]),
    ...(leftOut.length > 0 ? ['', 'Left out:'] : []),
    ...leftOut.map(({ path, because }) => `  ${path}: ${because}`),
  ];
  return `${lines.map(visibleText).join('\n')}\n`;
}

function doubtsOf({ pairing }: InstrumentEntry): readonly string[] {
  return pairing?.doubts ?? [];
}
