import type {
  CodeLens,
  InlayHint,
  SelectionRange,
  SemanticTokensLegend,
  SemanticTokensOptions,
} from 'vscode-languageserver';
import { CodeLensRefreshRequest, MarkupKind } from 'vscode-languageserver';
import { headerSummaries, regionsToPlay } from '../../features/codeLenses';
import { inlayTexts } from '../../features/inlayHints';
import type { ReadDocument } from '../../features/readDocument';
import { mainSource } from '../../features/readDocument';
import { selectionsAt } from '../../features/selectionRanges';
import type { TokenKind, TokenMark } from '../../features/semanticTokens';
import { semanticTokens, tokenKinds, tokenMarks } from '../../features/semanticTokens';
import { groupNamesInSteps } from '../../trade/names/groupNames';
import { takeSteps } from '../../workspace/takeSteps';
import { stopIfCancelled } from '../cancellation';
import { offsetOf, positionOf, rangeOf } from '../conversion/positions';
import { ToldTokens, tokenData, tokenEdits } from '../conversion/tokenData';
import { readDocument } from '../requestedDocument';
import type { ServerContext } from '../serverContext';
import { tellingLens } from './tellingLens';
import { vocabularyLenses } from './vocabularyLenses';

/** Names of the protocol for what it has names for; the extension declares the others. */
const typeNames: Readonly<Record<TokenKind, string>> = {
  header: 'class',
  opcode: 'property',
  number: 'number',
  noteName: 'noteName',
  option: 'enumMember',
  path: 'string',
  text: 'string',
  variable: 'variable',
  comment: 'comment',
};

const markNames: Readonly<Record<TokenMark, string>> = {
  definition: 'definition',
  v1: 'v1',
  v2: 'v2',
  extension: 'extension',
  otherSpelling: 'deprecated',
};

const legend: SemanticTokensLegend = {
  tokenTypes: tokenKinds.map((kind) => typeNames[kind]),
  tokenModifiers: tokenMarks.map((mark) => markNames[mark]),
};

/** What the server says of its semantic tokens when it starts. */
export const semanticTokensOptions: SemanticTokensOptions = { legend, range: true, full: { delta: true } };

/** Answers the requests for what helps to read a document: tokens, hints, lenses, selections. */
export function handleReadingAids(server: ServerContext): void {
  answerTokens(server);
  answerHints(server);
  answerLenses(server);
  answerSelections(server);
}

function answerTokens(server: ServerContext): void {
  const { semanticTokens: tokens } = server.connection.languages;
  const told = new ToldTokens();

  tokens.on(async ({ textDocument: { uri } }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return { data: [] };
    stopIfCancelled(token);
    const data = tokenData(mainSource(document), semanticTokens(document.instrument));
    return { resultId: told.note(uri, data), data };
  });

  tokens.onDelta(async ({ textDocument: { uri }, previousResultId }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return { data: [] };
    stopIfCancelled(token);
    const data = tokenData(mainSource(document), semanticTokens(document.instrument));
    const before = told.told(uri, previousResultId);
    const resultId = told.note(uri, data);
    return before ? { resultId, edits: tokenEdits(before, data) } : { resultId, data };
  });

  tokens.onRange(async ({ textDocument: { uri }, range }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return { data: [] };
    stopIfCancelled(token);
    const source = mainSource(document);
    const [from, to] = [offsetOf(source, range.start), offsetOf(source, range.end)];
    return { data: tokenData(source, semanticTokens(document.instrument, from, to)) };
  });
}

function answerHints(server: ServerContext): void {
  server.connection.languages.inlayHint.on(
    async ({ textDocument: { uri }, range }, token): Promise<InlayHint[]> => {
      const [document, aids] = await Promise.all([
        readDocument(server, uri),
        server.settings.readingAids(uri),
      ]);
      if (!document) return [];
      stopIfCancelled(token);
      const source = mainSource(document);
      const [from, to] = [offsetOf(source, range.start), offsetOf(source, range.end)];
      return inlayTexts(document.instrument, from, to, aids).map(({ at, label, more }) => ({
        position: positionOf(source, at),
        label,
        paddingLeft: true,
        ...(more !== undefined && { tooltip: { kind: MarkupKind.Markdown, value: more } }),
      }));
    },
  );
}

function answerLenses(server: ServerContext): void {
  server.connection.onCodeLens(async ({ textDocument: { uri } }, token): Promise<CodeLens[]> => {
    const [document, aids] = await Promise.all([readDocument(server, uri), server.settings.readingAids(uri)]);
    if (!document || !aids.codeLens) return [];
    stopIfCancelled(token);
    const source = mainSource(document);
    await takeSteps(groupNamesInSteps(document.instrument), () => stopIfCancelled(token));
    const reading = await server.documents.reading(uri);
    const lenses = reading ? vocabularyLenses(server, reading) : [];
    const summaries = headerSummaries(document.instrument).flatMap((summary): CodeLens[] => {
      const range = rangeOf(source, { start: summary.start, end: summary.tagEnd });
      const { title } = summary;
      if (!server.mapCommand) return [tellingLens(range, title)];
      const shows = { command: server.mapCommand, arguments: [uri, rangeOf(source, summary)] };
      return [
        { range, command: { title, ...shows } },
        { range, command: { title: 'Show on map', ...shows } },
        ...(server.playCommand === undefined
          ? []
          : [{ range, command: { ...shows, title: 'Play', command: server.playCommand } }]),
      ];
    });
    return [...lenses, ...summaries, ...regionLenses(server, uri, document)];
  });
}

/** What plays single regions, where the client can play them. */
function regionLenses({ playCommand }: ServerContext, uri: string, document: ReadDocument): CodeLens[] {
  if (playCommand === undefined) return [];
  const source = mainSource(document);
  return regionsToPlay(document.instrument).map((region) => ({
    range: rangeOf(source, { start: region.start, end: region.tagEnd }),
    command: { title: 'Play region', command: playCommand, arguments: [uri, rangeOf(source, region)] },
  }));
}

function answerSelections(server: ServerContext): void {
  server.connection.onSelectionRanges(async ({ textDocument: { uri }, positions }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return null;
    stopIfCancelled(token);
    const source = mainSource(document);
    return positions.map((position): SelectionRange => {
      let outer: SelectionRange | undefined;
      for (const stretch of selectionsAt(document, offsetOf(source, position)).reverse()) {
        outer = { range: rangeOf(source, stretch), ...(outer && { parent: outer }) };
      }
      return outer ?? { range: { start: position, end: position } };
    });
  });
}

/** Has the client ask anew for what depends on the settings of the reading aids. */
export function refreshReadingAids({ connection, capabilities }: ServerContext): void {
  const { workspace } = capabilities;
  const failed = (error: unknown) =>
    connection.console.error(`The reading aids could not be renewed: ${error}`);
  if (workspace?.inlayHint?.refreshSupport) connection.languages.inlayHint.refresh().catch(failed);
  if (workspace?.codeLens?.refreshSupport) connection.sendRequest(CodeLensRefreshRequest.type).catch(failed);
}
