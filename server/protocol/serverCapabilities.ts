import type { ClientCapabilities, ServerCapabilities } from 'vscode-languageserver';
import { CodeActionKind, TextDocumentSyncKind } from 'vscode-languageserver';
import { fixAllKind } from './handlers/actions/codeActions';
import { serverCommands } from './handlers/actions/handleCommands';
import { refactorKinds } from './handlers/actions/refactorActions';
import { formattedOnType } from './handlers/handleFormatting';
import { semanticTokensOptions } from './handlers/handleReadingAids';
import { movedFiles } from './handlers/handleRename';

/** What the server can do for a client, which has commands of its own in the place of some. */
export function serverCapabilities(
  capabilities: ClientCapabilities,
  ownCommands: readonly (string | undefined)[] = [],
): ServerCapabilities {
  return {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    diagnosticProvider: {
      identifier: 'zonewright',
      interFileDependencies: true,
      workspaceDiagnostics: false,
    },
    completionProvider: {
      triggerCharacters: ['<', '=', '/', '\\', '$', '"', '*'],
      resolveProvider: true,
    },
    hoverProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    workspaceSymbolProvider: true,
    renameProvider: capabilities.textDocument?.rename?.prepareSupport ? { prepareProvider: true } : true,
    documentSymbolProvider: true,
    documentLinkProvider: { resolveProvider: true },
    foldingRangeProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: formattedOnType,
    semanticTokensProvider: semanticTokensOptions,
    inlayHintProvider: true,
    codeLensProvider: {},
    selectionRangeProvider: true,
    codeActionProvider: {
      codeActionKinds: [CodeActionKind.QuickFix, fixAllKind, ...refactorKinds],
      resolveProvider: true,
    },
    executeCommandProvider: { commands: serverCommands.filter((command) => !ownCommands.includes(command)) },
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: { willRename: movedFiles, didRename: movedFiles },
    },
  };
}
