import { newFileEndings } from '../../model/fileNames';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { Output, OutputAccount, OutputContent, OutputSource } from '../../model/output';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { convertInstrument } from '../convertInstrument';
import type { SampleStore } from '../samples/sampleStore';

/** A source whose text was read by a vocabulary, so that values which that has no parameter for are told. */
export interface VocabularySource extends OutputSource {
  vocabulary?: Vocabulary | undefined;
  /** What was noted on reading beside the instrument itself. */
  notes?: readonly ConversionNote[];
}

/** Writing text of a notation, a file an instrument. `samples` answers what the notation needs to know of sample files. */
export function notationOutput(
  notation: Notation,
  samples: SampleStore,
  ending: string = newFileEndings[notation.format],
): Output {
  return {
    ending,
    async write(
      sources: readonly VocabularySource[],
      { fileName, folder: target, directives, progress, signal },
    ) {
      const files = new Map<string, OutputContent>();
      const accounts: OutputAccount[] = [];
      for (const source of sources) {
        signal?.throwIfAborted();
        const { folder } = source;
        const move = folder === undefined || target === undefined ? undefined : { from: folder, to: target };
        const { text, notes, kept } = await convertInstrument(
          source,
          notation,
          { ...(directives && { directives }), ...(move && { move }) },
          samples,
        );
        files.set(sources.length === 1 && fileName !== undefined ? fileName : source.name + ending, text);
        accounts.push({ notes, kept });
        progress?.(accounts.length, sources.length);
      }
      return { files, accounts };
    },
  };
}
