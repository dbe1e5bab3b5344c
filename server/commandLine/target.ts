import type { Notation } from '../model/notation';
import { sfzNotation } from '../sfz/notation';
import { parseVocabulary } from '../vocabulary/parseVocabulary';
import { vocabularyEnding } from '../vocabulary/vocabulary';
import { vocabularyNotation } from '../vocabulary/vocabularyNotation';
import { xmlNotation } from '../xml/notation';
import { CommandError } from './commandError';
import { readInput } from './input';
import type { Terminal } from './terminal';

const notations: Readonly<Record<string, Notation>> = { sfz: sfzNotation, xml: xmlNotation };

/** The notation that `--to` names: `sfz`, `xml`, or a file that holds a vocabulary. Fails with a {@link CommandError}. */
export async function targetNotation(terminal: Terminal, to: string | undefined): Promise<Notation> {
  if (to === undefined)
    throw new CommandError('convert needs --to sfz, --to xml or --to with a vocabulary file');
  if (Object.hasOwn(notations, to)) return notations[to];
  if (!to.endsWith(vocabularyEnding))
    throw new CommandError(`--to takes sfz, xml or a file named *${vocabularyEnding}, not "${to}"`);
  const { name, path, text } = await readInput(terminal, to);
  const { vocabulary, problems } = parseVocabulary(text);
  if (vocabulary) return vocabularyNotation(vocabulary);
  const reason = problems[0]?.message ?? 'it holds no vocabulary';
  throw new CommandError(`${name || path}: this is no vocabulary: ${reason}`);
}
