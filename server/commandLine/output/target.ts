import type { Notation } from '../../model/notation';
import type { Output } from '../../model/output';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { vocabularyNotation } from '../../vocabulary/vocabularyNotation';
import { notations } from '../../workspace/notations/notationOf';
import { notationOutput } from '../../workspace/notations/notationOutput';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import { readInput } from '../input/input';
import type { Terminal } from '../terminal';

/** The output that `--to` names: `sfz`, `xml`, or a file that holds a vocabulary. Fails with a {@link CommandError}. */
export async function namedOutput(terminal: Terminal, to: string | undefined): Promise<Output> {
  const samples = new SampleStore(terminal.files);
  if (to === undefined)
    throw new CommandError('convert needs --to sfz, --to xml, --to sf2 or --to with a vocabulary file');
  if (to === 'sfz' || to === 'xml') return notationOutput(notations[to], samples);
  if (!to.endsWith(vocabularyEnding))
    throw new CommandError(`--to takes sfz, xml, sf2 or a file named *${vocabularyEnding}, not "${to}"`);
  return notationOutput(await vocabularyInput(terminal, to), samples, '.xml');
}

/** XML in the vocabulary that a file holds. Fails with a {@link CommandError} that names the file. */
export async function vocabularyInput(terminal: Terminal, file: string): Promise<Notation> {
  const { name, path, text } = await readInput(terminal, file);
  const { vocabulary, problems } = parseVocabulary(text);
  if (vocabulary) return vocabularyNotation(vocabulary);
  const reason = problems[0]?.message ?? 'it holds no vocabulary';
  throw new CommandError(`${name || path}: this is no vocabulary: ${reason}`);
}
