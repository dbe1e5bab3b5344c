import type { DocumentInContext } from '../../../server/features/navigation/subject';
import type { ReadDocument } from '../../../server/features/readDocument';
import { readInstrument } from '../../../server/workspace/analyse';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { notations } from '../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../workspace/memoryFiles';

export interface MarkedDocument {
  document: ReadDocument;
  /** The text without the mark. */
  text: string;
  /** Where `$0` stood. */
  offset: number;
}

/** Reads a text, the place of interest marked with `$0`, as a document in the folder `/music` among other files. */
export async function documentWithMark(
  marked: string,
  files: Record<string, string | Uint8Array> = {},
  format: 'sfz' | 'xml' = 'sfz',
): Promise<MarkedDocument> {
  const offset = marked.indexOf('$0');
  const text = offset < 0 ? marked : marked.slice(0, offset) + marked.slice(offset + 2);
  const memory = new MemoryFiles(files);
  const notation = notations[format];
  const path = format === 'sfz' ? '/music/main.sfz' : '/music/main.instrument.xml';
  const instrument = await readInstrument({ path, text, notation }, new IncludeStore(memory));
  const document = { notation, instrument, folder: '/music', samples: new SampleStore(memory) };
  return { document, text, offset };
}

/** A document as an instrument of its own. */
export function inOwnContext(document: ReadDocument): DocumentInContext {
  return { document, instrument: document.instrument, folder: document.folder, source: 0 };
}
