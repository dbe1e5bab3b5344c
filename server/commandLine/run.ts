import { version } from '../../package.json';
import { visibleText } from '../model/text/visibleText';
import { withFontSamples } from '../soundfont/fontFiles';
import { CommandError } from './commandError';
import { check } from './commands/check';
import { compare } from './commands/compare';
import { convert } from './commands/convert';
import { explain } from './commands/explain';
import { library } from './commands/library';
import { map } from './commands/map';
import { regions } from './commands/regions';
import { render } from './commands/render';
import { report } from './commands/report';
import { sample } from './commands/sample';
import { sweep } from './commands/sweep';
import { vocabulary } from './commands/vocabulary';
import { help } from './help';
import type { Terminal } from './terminal';
import { absolutePath } from './terminalPaths';

const commands: Readonly<Record<string, (args: readonly string[], terminal: Terminal) => Promise<number>>> = {
  check,
  regions,
  convert,
  map,
  sample,
  report,
  explain,
  sweep,
  render,
  compare,
  vocabulary,
  library,
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
    const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
    if (!command)
      throw new CommandError(`there is no command "${name}"; there are ${Object.keys(commands).join(', ')}`);
    const { words, folders } = takeIncludeFolders(rest);
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
