import type { Position } from 'vscode-languageserver';
import type { ReadDocument } from '../features/readDocument';
import { mainSource } from '../features/readDocument';
import type { Source } from '../model/text/source';
import { offsetOf, rangeOf } from './conversion/positions';
import type { ServerContext } from './serverContext';

/** The document that a request is about, as read from its latest version; `undefined` where it holds no instrument. */
export async function readDocument(server: ServerContext, uri: string): Promise<ReadDocument | undefined> {
  const reading = await server.documents.reading(uri);
  if (!reading) return undefined;
  const { uriOf } = server.diagnosticOptions(uri);
  return {
    ...reading,
    samples: server.documents.samples,
    outline: (path) => server.outlines.outline(path),
    linkTo(source, line) {
      const file = reading.instrument.sources[source];
      const target = source === 0 ? uri : file && uriOf(file.path);
      return target === undefined ? undefined : `${target}#L${line}`;
    },
    playLink(what, span) {
      const command = { region: server.playCommand, sample: server.playSampleCommand }[what];
      const source = reading.instrument.sources[0];
      return (
        command && `command:${command}?${encodeURIComponent(JSON.stringify([uri, rangeOf(source, span)]))}`
      );
    },
  };
}

/** The document and the place in it that a request is about. */
export async function readAt(
  server: ServerContext,
  uri: string,
  position: Position,
): Promise<{ document: ReadDocument; source: Source; offset: number } | undefined> {
  const document = await readDocument(server, uri);
  if (!document) return undefined;
  const source = mainSource(document);
  return { document, source, offset: offsetOf(source, position) };
}
