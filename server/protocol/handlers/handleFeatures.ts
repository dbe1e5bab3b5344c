import type { DocumentLink } from 'vscode-languageserver';
import { completionsAt, documentationOf } from '../../features/completion/completion';
import { foldedLines } from '../../features/folding';
import { hoverAt } from '../../features/hover/hover';
import { fileLinks } from '../../features/navigation/links';
import { headerSymbols, mostListed } from '../../features/navigation/symbols';
import { mainSource } from '../../features/readDocument';
import { groupNamesInSteps } from '../../trade/names/groupNames';
import { takeSteps } from '../../workspace/takeSteps';
import { stopIfCancelled } from '../cancellation';
import { completionItems, withDocumentation } from '../conversion/completionItems';
import { documentSymbols, flatSymbols } from '../conversion/documentSymbols';
import { markupFor } from '../conversion/markup';
import { rangeOf } from '../conversion/positions';
import { uriOfPath } from '../conversion/uris';
import type { FolderFindings } from '../folderFindings';
import { readAt, readDocument } from '../requestedDocument';
import type { ServerContext } from '../serverContext';
import { codeActionsOf } from './actions/codeActions';
import { folderActions } from './actions/folderActions';
import { handleCommands } from './actions/handleCommands';
import { kindActions, resolveKind } from './actions/kindActions';
import { refactorActions, resolveRefactor } from './actions/refactorActions';
import { handleFormatting } from './handleFormatting';
import { handleNavigation } from './handleNavigation';
import { handleRename } from './handleRename';

/** Answers the requests of the protocol that are about what stands in a document. */
export function handleFeatures(server: ServerContext, folderFindings: FolderFindings): void {
  handleFormatting(server);
  handleCommands(server, folderFindings);
  handleNavigation(server);
  handleRename(server);
  answerCompletion(server);
  answerHover(server);
  answerOutline(server);
  answerLinks(server);
  answerFolding(server);
  answerActions(server);
}

function answerCompletion(server: ServerContext): void {
  const { connection } = server;
  connection.onCompletion(async ({ textDocument, position }, token) => {
    const read = await readAt(server, textDocument.uri, position);
    if (!read) return null;
    stopIfCancelled(token);
    const offers = await completionsAt(read.document, read.offset);
    stopIfCancelled(token);
    const { completionItem } = server.capabilities.textDocument?.completion ?? {};
    const items = completionItems(offers, (span) => rangeOf(read.source, span), {
      snippets: completionItem?.snippetSupport === true,
      labelDetails: completionItem?.labelDetailsSupport === true,
      suggestCommand: server.suggestCommand,
    });
    // Numbers that are typed go into the names that are offered.
    return { items, isIncomplete: offers.some(({ kind }) => kind === 'opcode') };
  });

  connection.onCompletionResolve((item) =>
    withDocumentation(
      item,
      typeof item.data === 'string' ? documentationOf(item.data) : undefined,
      server.capabilities.textDocument?.completion?.completionItem?.documentationFormat,
    ),
  );
}

function answerHover(server: ServerContext): void {
  const { connection } = server;
  connection.onHover(async ({ textDocument, position }, token) => {
    const read = await readAt(server, textDocument.uri, position);
    if (!read) return null;
    stopIfCancelled(token);
    const hover = await hoverAt(read.document, read.offset);
    if (!hover) return null;
    return {
      contents: markupFor(server.capabilities.textDocument?.hover?.contentFormat, hover.markdown),
      range: rangeOf(read.source, hover),
    };
  });
}

function answerOutline(server: ServerContext): void {
  const { connection } = server;
  connection.onDocumentSymbol(async ({ textDocument: { uri } }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return null;
    stopIfCancelled(token);
    await takeSteps(groupNamesInSteps(document.instrument), () => stopIfCancelled(token));
    const source = mainSource(document);
    const symbols = headerSymbols(document.instrument, mostListed);
    const { hierarchicalDocumentSymbolSupport } = server.capabilities.textDocument?.documentSymbol ?? {};
    return hierarchicalDocumentSymbolSupport
      ? documentSymbols(source, symbols)
      : flatSymbols(source, symbols, uri);
  });
}

function answerLinks(server: ServerContext): void {
  const { connection } = server;
  connection.onDocumentLinks(async ({ textDocument: { uri } }, token) => {
    // The checks look at the samples.
    await server.documents.judgement(uri);
    const document = await readDocument(server, uri);
    if (!document) return null;
    stopIfCancelled(token);
    const source = mainSource(document);
    return fileLinks(document).map(
      (link): DocumentLink => ({ range: rangeOf(source, link), data: link.path }),
    );
  });

  connection.onDocumentLinkResolve((link) =>
    typeof link.data === 'string' ? { ...link, target: uriOfPath(link.data) } : link,
  );
}

function answerFolding(server: ServerContext): void {
  const { connection } = server;
  connection.onFoldingRanges(async ({ textDocument: { uri } }, token) => {
    const document = await readDocument(server, uri);
    if (!document) return null;
    stopIfCancelled(token);
    const { instrument } = document;
    const comments = instrument.directives.filter(({ kind, source }) => kind === 'comment' && source === 0);
    return foldedLines(mainSource(document), headerSymbols(instrument, mostListed), comments);
  });
}

function answerActions(server: ServerContext): void {
  const { connection } = server;
  connection.onCodeAction(async (params, token) => {
    const { uri } = params.textDocument;
    const judgement = await server.documents.judgement(uri);
    if (!judgement) return null;
    stopIfCancelled(token);
    const fixes = codeActionsOf(judgement, params, {
      ...server.diagnosticOptions(uri),
      versionOf: (target) => server.openDocument(target)?.version ?? null,
      versionedEdits: server.capabilities.workspace?.workspaceEdit?.documentChanges === true,
      saveCommand: server.saveVocabularyCommand,
    });
    const folders = await folderActions(server, judgement, params);
    const kinds = await kindActions(server, judgement, params);
    return [...fixes, ...kinds, ...folders, ...(await refactorActions(server, params))];
  });

  connection.onCodeActionResolve(async (action) =>
    resolveKind(server, await resolveRefactor(server, action)),
  );
}
