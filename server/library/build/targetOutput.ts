import type { Files } from '../../model/files';
import type { Notation } from '../../model/notation';
import type { Output } from '../../model/output';
import { nameOf } from '../../model/paths';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import { vocabularyNotation } from '../../vocabulary/vocabularyNotation';
import { readWholeText } from '../../workspace/files/readWhole';
import { fontOutput } from '../../workspace/fonts/fontOutput';
import { notations } from '../../workspace/notations/notationOf';
import { notationOutput } from '../../workspace/notations/notationOutput';
import type { LibraryInstrument, LibraryTarget } from '../libraryInstrument';
import { BuildError } from './buildError';
import type { ReadingTools } from './readSource';

/** What writes a target, and the notation of its text where it is text. */
export interface TargetOutput {
  output: Output;
  notation?: Notation;
}

/** The output for a target. Fails with a {@link BuildError} where its vocabulary cannot be read. */
export async function targetOutput(
  _one: LibraryInstrument,
  target: LibraryTarget,
  { files, samples }: ReadingTools,
): Promise<TargetOutput> {
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
      const notation = await savedVocabulary(target.vocabulary ?? '', files);
      return { output: notationOutput(notation, samples, '.xml'), notation };
    }
  }
}

async function savedVocabulary(path: string, files: Files): Promise<Notation> {
  const whole = await readWholeText(files, path);
  const reading = whole.kind === 'text' ? parseVocabulary(whole.text) : undefined;
  if (reading?.vocabulary) return vocabularyNotation(reading.vocabulary);
  const reason = reading?.problems[0]?.message ?? 'the file is not there, or no text';
  throw new BuildError(`${nameOf(path)} holds no vocabulary: ${reason}`);
}
