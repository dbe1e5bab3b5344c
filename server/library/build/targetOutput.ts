import type { Files } from '../../model/files';
import type { Notation } from '../../model/notation';
import type { Output } from '../../model/output';
import { nameOf } from '../../model/paths';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import { vocabularyNotation } from '../../vocabulary/vocabularyNotation';
import { readWholeText } from '../../workspace/files/readWhole';
import { fontOutput } from '../../workspace/fonts/fontOutput';
import { NotationFinder } from '../../workspace/notations/notationFinder';
import { notations } from '../../workspace/notations/notationOf';
import { notationOutput } from '../../workspace/notations/notationOutput';
import type { LibraryInstrument, LibraryTarget } from '../libraryInstrument';
import { templateOutput } from '../templates/templateOutput';
import { BuildError } from './buildError';
import type { ReadingTools } from './readSource';

/** What writes a target, and the notation of its text where it is text. */
export interface TargetOutput {
  output: Output;
  notation?: Notation;
}

/** The output for a target. Fails with a {@link BuildError} where its vocabulary cannot be read. */
export async function libraryOutput(
  one: LibraryInstrument,
  target: LibraryTarget,
  tools: ReadingTools,
): Promise<TargetOutput> {
  const { files, samples } = tools;
  if (target.template !== undefined) return templateTarget(one, target, target.template, tools);
  switch (target.notation) {
    case 'sf2':
      return {
        output: fontOutput({
          bits: 'samples',
          attenuation: 1,
          rates: 'keep',
          keyswitches: 'presets',
          takes: 'first',
        }),
      };
    case 'sfz':
    case 'xml': {
      const notation = notations[target.notation];
      return { output: notationOutput(notation, samples), notation };
    }
    case 'vocabulary': {
      const notation = await vocabularyTarget(target.vocabulary ?? '', files);
      return { output: notationOutput(notation, samples, '.xml'), notation };
    }
  }
}

/** What puts the instrument into a template, which has to be in the notation of the target. */
async function templateTarget(
  { facts }: LibraryInstrument,
  target: LibraryTarget,
  path: string,
  { files, samples, includes }: ReadingTools,
): Promise<TargetOutput> {
  if (target.notation === 'sf2') throw new BuildError('A SoundFont takes no template. Remove "template".');
  const whole = await readWholeText(files, path);
  if (whole.kind !== 'text') throw new BuildError(`The template ${nameOf(path)} is not there, or no text.`);
  const finder = new NotationFinder(files, samples, () => {});
  const notation =
    target.notation === 'vocabulary'
      ? await vocabularyTarget(target.vocabulary ?? '', files)
      : (await finder.find({ path, text: whole.text }))?.notation;
  if (!notation || (target.notation !== 'vocabulary' && notation !== notations[target.notation]))
    throw new BuildError(`The template ${nameOf(path)} is not in the notation ${target.notation}.`);
  const known = new Map(
    Object.entries(facts).map(([name, value]) => [name, Array.isArray(value) ? value.join(', ') : value]),
  );
  const output = templateOutput(
    { path, text: whole.text, notation },
    { includes, samples, factsOf: () => known },
  );
  return { output, notation };
}

/** The notation of a vocabulary file. Fails with a {@link BuildError} where it holds none. */
export async function vocabularyTarget(path: string, files: Files): Promise<Notation> {
  const whole = await readWholeText(files, path);
  const reading = whole.kind === 'text' ? parseVocabulary(whole.text) : undefined;
  if (reading?.vocabulary) return vocabularyNotation(reading.vocabulary);
  const reason = reading?.problems[0]?.message ?? 'the file is not there, or no text';
  throw new BuildError(`${nameOf(path)} holds no vocabulary: ${reason}`);
}
