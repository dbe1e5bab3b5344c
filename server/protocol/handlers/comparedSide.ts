import type { ComparedInstrument } from '../../comparison/compareInstruments';
import { nameOf } from '../../model/paths';
import { SampleSource } from '../../sound/samples/sampleSource';
import type { DocumentReading } from '../../workspace/openDocument';
import type { ServerContext } from '../serverContext';
import { audible } from './handleSound';

/** Places of one comparison that are shown in the texts. */
export const mostPlaces = 500;

/** A document that is compared. */
export interface ReadSide extends ComparedInstrument {
  uri: string;
  name: string;
}

/** What is needed to play a document. Its samples have to be closed. */
export async function sideOf({ documents }: ServerContext, reading: DocumentReading): Promise<ReadSide> {
  const { instrument: made, paths } = await audible(documents.samples, reading);
  const { uri, path } = reading.document;
  return {
    uri,
    name: path === undefined ? 'a text that is not saved' : nameOf(path),
    instrument: reading.instrument,
    program: made.program,
    playable: made.playable,
    paths: made.program.samples.map((sample) => paths.get(sample)),
    samples: new SampleSource(documents.files),
  };
}

/** Where a region stands, by its position among the regions. */
export function regionSpan({ instrument }: ReadSide, region: number) {
  return instrument.headerSpan(instrument.regions[region]);
}

/** Where something stands, for a person. */
export function shownLineOf({ instrument }: ReadSide, { source, start }: { source: number; start: number }) {
  const file = instrument.sources[source];
  return { line: file.positionAt(start).line, ...(source > 0 && { file: nameOf(file.path) }) };
}
