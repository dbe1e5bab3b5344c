import { templateOutput } from '../../library/templates/templateOutput';
import type { Output } from '../../model/output';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { notations } from '../../workspace/notations/notationOf';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import { includeStore, notationFinder, readInput } from '../input/input';
import type { Terminal } from '../terminal';
import { vocabularyInput } from './target';

/**
 * The output that puts an instrument into a template. Its notation is found from its text; `--to`, where it is said, has to be
 * the same, and names the vocabulary of XML that is not our own. `facts` are `NAME=VALUE`. Fails with a {@link CommandError}.
 */
export async function templateTarget(
  terminal: Terminal,
  name: string,
  to: string | undefined,
  facts: readonly string[],
): Promise<Output> {
  const samples = new SampleStore(terminal.files);
  const { path, text } = await readInput(terminal, name);
  const given = to?.endsWith(vocabularyEnding) ? await vocabularyInput(terminal, to) : undefined;
  const notation = given ?? (await notationFinder(terminal, samples).find({ path, text }))?.notation;
  if (!notation)
    throw new CommandError(`${name}: this template is neither SFZ nor XML with an example region`);
  const isOther = to === 'sf2' || ((to === 'sfz' || to === 'xml') && notation !== notations[to]);
  if (isOther)
    throw new CommandError(`${name}: this template does not fit --to ${to}, which is another notation`);
  const known = factsIn(facts);
  return templateOutput(
    { path, text, notation },
    { includes: includeStore(terminal), samples, factsOf: () => known },
  );
}

function factsIn(facts: readonly string[]): Map<string, string> {
  return new Map(
    facts.map((fact) => {
      const at = fact.indexOf('=');
      if (at < 1) throw new CommandError(`--fact takes NAME=VALUE, such as maker=…, not "${fact}"`);
      return [fact.slice(0, at).trim().toLowerCase(), fact.slice(at + 1)] as const;
    }),
  );
}
