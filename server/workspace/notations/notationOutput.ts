import { newFileEndings } from '../../model/fileNames';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { ByteChunks, Output, OutputAccount, OutputContent, OutputSource } from '../../model/output';
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
      { fileName, folder: target, directives, inPieces, progress, signal },
    ) {
      const files = new Map<string, OutputContent>();
      const accounts: OutputAccount[] = [];
      for (const source of sources) {
        signal?.throwIfAborted();
        const { folder } = source;
        const move = folder === undefined || target === undefined ? undefined : { from: folder, to: target };
        const conversion = await convertInstrument(
          source,
          notation,
          { ...(directives && { directives }), ...(move && { move }) },
          samples,
        );
        const content = inPieces && conversion.pieces ? encoded(conversion.pieces) : conversion.text;
        files.set(sources.length === 1 && fileName !== undefined ? fileName : source.name + ending, content);
        accounts.push({ notes: conversion.notes, kept: conversion.kept });
        progress?.(accounts.length, sources.length);
      }
      return { files, accounts };
    },
  };
}

/** Pieces of a text as bytes, each made when it is asked for. */
function encoded(pieces: readonly string[]): ByteChunks {
  return {
    async *chunks() {
      const encoder = new TextEncoder();
      for (const piece of pieces) yield encoder.encode(piece);
    },
  };
}
