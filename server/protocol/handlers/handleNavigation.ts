import type { DocumentHighlight, Location, Position, SymbolInformation } from 'vscode-languageserver';
import { DocumentHighlightKind, SymbolKind } from 'vscode-languageserver';
import { definitionAt } from '../../features/navigation/definition';
import { highlightsAt } from '../../features/navigation/highlights';
import { referencesOf } from '../../features/navigation/references';
import type { DocumentInContext } from '../../features/navigation/subject';
import { subjectAt } from '../../features/navigation/subject';
import type { PlaceInFile } from '../../features/navigation/symbolIndex';
import { openPlaces, SymbolIndex } from '../../features/navigation/symbolIndex';
import { matchesQuery } from '../../features/navigation/workspaceSymbols';
import { nameOf } from '../../model/paths';
import { stopIfCancelled } from '../cancellation';
import { offsetOf, rangeOf } from '../conversion/positions';
import { uriOfPath } from '../conversion/uris';
import type { ServerContext } from '../serverContext';

/** Symbols of the workspace that are answered at the most; who looks for others types more of their name. */
const mostSymbols = 1000;

const symbolKinds: Readonly<Record<PlaceInFile['kind'], SymbolKind>> = {
  instrument: SymbolKind.Module,
  header: SymbolKind.Class,
  sample: SymbolKind.File,
  variable: SymbolKind.Variable,
};

const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Answers where things come from and where else they are used. */
export function handleNavigation(server: ServerContext): void {
  const { connection, documents } = server;
  answerWorkspaceSymbols(server);

  connection.onDefinition(async ({ textDocument: { uri }, position }, token) => {
    const at = await contextAt(server, uri, position);
    if (!at) return null;
    stopIfCancelled(token);
    const definition = await definitionAt(at.context, documents.samples, at.offset);
    if (!definition) return null;
    const { uriOf } = server.diagnosticOptions(uri);
    const locations = definition.targets.map((target) =>
      target.kind === 'file'
        ? { uri: uriOf(target.path), range: nowhere }
        : locationOf(server, uri, at.context, target),
    );
    return locations.length === 1 ? locations[0] : locations;
  });

  connection.onReferences(async ({ textDocument: { uri }, position, context: wanted }, token) => {
    const at = await contextAt(server, uri, position);
    if (!at) return null;
    stopIfCancelled(token);
    const found = subjectAt(at.context, at.offset);
    if (!found) return null;
    return referencesOf(at.context.instrument, found.subject)
      .filter(({ isDeclaration }) => wanted.includeDeclaration || !isDeclaration)
      .map((reference) => locationOf(server, uri, at.context, reference));
  });

  connection.onDocumentHighlight(async ({ textDocument: { uri }, position }, token) => {
    const at = await contextAt(server, uri, position);
    if (!at) return null;
    stopIfCancelled(token);
    const highlights = highlightsAt(at.context, at.offset);
    // Without an answer the editor marks equal words by itself.
    if (highlights.length === 0) return null;
    return highlights.map(
      (place): DocumentHighlight => ({
        range: rangeOf(at.source, place),
        kind: place.isDeclaration ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
      }),
    );
  });
}

function answerWorkspaceSymbols(server: ServerContext): void {
  const { connection, documents } = server;
  const symbols = new SymbolIndex(documents.files, documents.includes, documents.notations);

  connection.onWorkspaceSymbol(async ({ query }, token) => {
    const all = await symbols.places(server.folders);
    stopIfCancelled(token);
    const open = await Promise.all(
      server.openDocuments.map(async ({ uri, path }) => {
        const reading = path === undefined ? undefined : await documents.reading(uri);
        return reading && path !== undefined
          ? { path, uri, places: openPlaces(path, reading.instrument) }
          : undefined;
      }),
    );
    const openByPath = new Map(open.flatMap((one) => (one ? [[one.path, one] as const] : [])));
    const places = [
      ...[...openByPath.values()].flatMap((one) => one.places),
      ...all.filter(({ path }) => !openByPath.has(path)),
    ];
    return places
      .filter(({ name }) => matchesQuery(name, query))
      .sort((a, b) => a.name.length - b.name.length)
      .slice(0, mostSymbols)
      .map(
        ({ name, kind, path, start, end }): SymbolInformation => ({
          name,
          kind: symbolKinds[kind],
          location: { uri: openByPath.get(path)?.uri ?? uriOfPath(path), range: { start, end } },
          ...(kind !== 'instrument' && { containerName: nameOf(path) }),
        }),
      );
  });
}

/** A document in the instrument that it belongs to, with the offset of a position; `undefined` where it holds none. */
export async function contextAt(server: ServerContext, uri: string, position: Position) {
  const reading = await server.documents.readingInContext(uri);
  if (!reading) return undefined;
  const { own, whole, source } = reading;
  const context: DocumentInContext = {
    document: { ...own, samples: server.documents.samples },
    instrument: whole.instrument,
    folder: whole.folder,
    source,
  };
  const text = own.instrument.sources[0];
  return { context, whole, source: text, offset: offsetOf(text, position) };
}

function locationOf(
  server: ServerContext,
  uri: string,
  { instrument, source: own }: DocumentInContext,
  place: { source: number; start: number; end: number },
): Location {
  const source = instrument.sources[place.source];
  const { uriOf } = server.diagnosticOptions(uri);
  return { uri: place.source === own ? uri : uriOf(source.path), range: rangeOf(source, place) };
}
