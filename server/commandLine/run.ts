import { version } from '../../package.json';
import { visibleText } from '../model/text/visibleText';
import { withFontSamples } from '../soundfont/fontFiles';
import { CommandError } from './commandError';
import { help } from './help';
import type { Terminal } from './terminal';
import { absolutePath } from './terminalPaths';

type Command = (args: readonly string[], terminal: Terminal) => Promise<number>;

/** Each is loaded when it is run, so that one does not wait for what the others need. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import('./commands/check')).check,
  regions: async () => (await import('./commands/regions')).regions,
  convert: async () => (await import('./commands/convert')).convert,
  map: async () => (await import('./commands/map')).map,
  sample: async () => (await import('./commands/sample')).sample,
  report: async () => (await import('./commands/report')).report,
  explain: async () => (await import('./commands/explain')).explainCommand,
  sweep: async () => (await import('./commands/sweep')).sweep,
  render: async () => (await import('./commands/render')).render,
  compare: async () => (await import('./commands/compare')).compare,
  vocabulary: async () => (await import('./commands/vocabulary')).vocabulary,
  library: async () => (await import('./commands/library')).library,
};

/**
 * Runs one command and answers its exit status: 0 done; 1 `check` found something; 2 the words of the command are off
 * or an input cannot be read, said in one line on standard error.
 */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...rest] = args;
  try {
    if (name === '--version') {
      await terminal.out(`${version}\n`);
      return 0;
    }
    if (name === '--help' || name === 'help' || rest.includes('--help')) {
      await terminal.out(help);
      return 0;
    }
    if (name === undefined)
      throw new CommandError(`a command is needed: ${Object.keys(commands).join(', ')} (or --help)`);
    const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
    if (!load)
      throw new CommandError(`there is no command "${name}"; there are ${Object.keys(commands).join(', ')}`);
    const { words, folders } = takeIncludeFolders(rest);
    const command = await load();
    return await command(words, {
      ...terminal,
      files: withFontSamples(terminal.files),
      includeFolders: folders.map((folder) => absolutePath(terminal, folder)),
      error: (line) => terminal.error(visibleLine(line)),
    });
  } catch (error) {
    terminal.error(visibleLine(`zonewright: ${oneLine(error)}\n`));
    return 2;
  }
}

/** Takes `--include-folder FOLDER`, which every command knows, out of the words of a command. */
function takeIncludeFolders(args: readonly string[]): { words: string[]; folders: string[] } {
  const option = '--include-folder';
  const words: string[] = [];
  const folders: string[] = [];
  for (let at = 0; at < args.length; at++) {
    const word = args[at] as string;
    if (word === '--') return { words: [...words, ...args.slice(at)], folders };
    const folder =
      word === option
        ? (args[++at] ?? '')
        : word.startsWith(`${option}=`)
          ? word.slice(option.length + 1)
          : undefined;
    if (folder === '') throw new CommandError(`${option} needs a folder`);
    if (folder === undefined) words.push(word);
    else folders.push(folder);
  }
  return { words, folders };
}

/** One line as a terminal shows it, whatever stands in the names and values that it quotes. */
function visibleLine(line: string): string {
  return `${visibleText(line.replace(/\n$/, ''))}\n`;
}

function oneLine(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.replace(/\s*[\r\n]+\s*/g, ' ');
}
