import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { SampleOutline } from '../model/samples';
import type { Source } from '../model/text/source';
import type { SampleStore } from '../workspace/samples/sampleStore';

/** What a link in a text plays. */
export type PlayedByLink = 'region' | 'sample';

/** What a language feature works on: an instrument as read from a document, and what is known of the files around it. */
export interface ReadDocument {
  notation: Notation;
  instrument: Instrument;
  /** The folder that paths lead from, absolute with `/`; `undefined` for a document that is no file. */
  folder: string | undefined;
  samples: SampleStore;
  /** Reads how a sample file looks, by its absolute path; missing where nobody looks. */
  outline?: (path: string) => Promise<SampleOutline | undefined>;
  /** Where a line of one of the instrument's sources can be opened; missing where there is nothing that opens it. */
  linkTo?: (source: number, line: number) => string | undefined;
  /** What plays the region at a stretch of the document, or its sample alone; missing where nothing plays. */
  playLink?: (what: PlayedByLink, span: { start: number; end: number }) => string | undefined;
}

/** The text of the document itself, with its lines. */
export function mainSource({ instrument }: ReadDocument): Source {
  return instrument.sources[0];
}

/** The number of a canonical opcode name in the instrument's table. */
export function nameNumber(instrument: Instrument, name: string): number {
  return instrument.names.canonical(instrument.names.idOf(name));
}
