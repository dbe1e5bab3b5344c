import { parseArgs } from 'node:util';
import { listText } from '../model/wording/listText';
import { CommandError } from './commandError';

/** The options that a command takes: with one of some words, with any text, once or several times, or without a value. */
export type OptionKinds = Record<string, readonly string[] | 'text' | 'texts' | 'switch'>;

/** A command's words, sorted. */
export interface Words {
  paths: string[];
  options: Record<string, string | undefined>;
  /** The values of options that can be given several times, in order. */
  lists: Record<string, readonly string[] | undefined>;
  switches: ReadonlySet<string>;
}

/** Sorts the words after a command's name. Fails with a {@link CommandError} on an unknown option or value. */
export function readWords(args: readonly string[], kinds: OptionKinds): Words {
  const options: Record<string, { type: 'string' | 'boolean'; multiple: boolean }> = {};
  for (const [name, kind] of Object.entries(kinds))
    options[name] = { type: kind === 'switch' ? 'boolean' : 'string', multiple: kind === 'texts' };
  const words: Words = { paths: [], options: {}, lists: {}, switches: new Set() };
  const switches = new Set<string>();
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    words.paths = positionals;
    for (const [name, value] of Object.entries(values)) {
      if (typeof value === 'string') words.options[name] = checked(name, value, kinds[name]);
      else if (Array.isArray(value))
        words.lists[name] = value.map((one) => checked(name, String(one), undefined));
      else if (value) switches.add(name);
    }
  } catch (error) {
    if (error instanceof CommandError) throw error;
    const reason = error instanceof Error ? error.message.split('\n')[0] : 'the command cannot be understood';
    throw new CommandError(reason.replace(/\. To specify a positional.*$/, ''));
  }
  return { ...words, switches };
}

function checked(name: string, value: string, kind: OptionKinds[string] | undefined): string {
  if (Array.isArray(kind) && !kind.includes(value)) {
    throw new CommandError(`--${name} takes ${listText(kind, 'or')}, not "${value}"`);
  }
  if (value === '') throw new CommandError(`--${name} needs a value`);
  return value;
}
