import type {
  CodeAction,
  CodeActionParams,
  TextEdit as ProtocolEdit,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { CodeActionKind } from 'vscode-languageserver';
import { allSafeEdits, quickFixesAt } from '../../../features/quickFixes';
import type { Fix, TextEdit } from '../../../model/finding';
import type { Judgement } from '../../../workspace/openDocument';
import type { DiagnosticOptions } from '../../conversion/diagnostics';
import { diagnosticOf } from '../../conversion/diagnostics';
import { offsetOf, rangeOf } from '../../conversion/positions';

/** The kind of the action that applies all safe fixes. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.zonewright`;

/** What turning fixes into code actions needs to know. */
export interface CodeActionOptions extends DiagnosticOptions {
  /** The version of an open document; `null` for a file that is not open. */
  versionOf: (uri: string) => number | null;
  /** Whether the client takes edits for a certain version of a document. */
  versionedEdits: boolean;
  /** The client's command that writes a file; without it the file is created by an edit and saved by the person. */
  saveCommand: string | undefined;
}

/** The writing of a whole file, as the client's command or as an edit. */
function savedFile(
  title: string,
  { path, text, replaces }: NonNullable<Fix['saves']>,
  { uriOf, saveCommand }: CodeActionOptions,
): Pick<CodeAction, 'command' | 'edit'> {
  const uri = uriOf(path);
  if (saveCommand !== undefined)
    return { command: { title, command: saveCommand, arguments: [uri, text, replaces] } };
  const start = { line: 0, character: 0 };
  return {
    edit: {
      documentChanges: [
        { kind: 'create', uri, options: { overwrite: replaces, ignoreIfExists: !replaces } },
        { textDocument: { uri, version: null }, edits: [{ range: { start, end: start }, newText: text }] },
      ],
    },
  };
}

/** The fixes for a range, and all safe ones together where that is asked for. */
export function codeActionsOf(
  judgement: Judgement,
  { range, context }: CodeActionParams,
  options: CodeActionOptions,
): CodeAction[] {
  const wants = (kind: string) =>
    !context.only || context.only.some((only) => only === '' || kind === only || kind.startsWith(`${only}.`));
  const source = judgement.instrument.sources[judgement.source];
  const actions: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) {
    const start = offsetOf(source, range.start);
    const end = offsetOf(source, range.end);
    for (const { finding, fix, isPreferred } of quickFixesAt(
      judgement.findings,
      judgement.source,
      start,
      end,
    )) {
      actions.push({
        title: fix.title,
        kind: CodeActionKind.QuickFix,
        diagnostics: [diagnosticOf(finding, judgement, options)],
        ...(isPreferred && { isPreferred }),
        ...(fix.saves
          ? savedFile(fix.title, fix.saves, options)
          : { edit: workspaceEdit(judgement, fix.edits, options) }),
      });
    }
  }
  // Only where asked for: working out every fix is no work for each move of the cursor.
  if (context.only && wants(fixAllKind)) {
    const edits = allSafeEdits(judgement.findings, judgement.source);
    if (edits.length > 0) {
      actions.push({
        title: 'Apply all safe fixes',
        kind: fixAllKind,
        edit: workspaceEdit(judgement, edits, options),
      });
    }
  }
  return actions;
}

function workspaceEdit(
  judgement: Judgement,
  edits: readonly TextEdit[],
  { uri, uriOf, versionOf, versionedEdits }: CodeActionOptions,
): WorkspaceEdit {
  const byUri = new Map<string, ProtocolEdit[]>();
  for (const edit of edits) {
    const source = judgement.instrument.sources[edit.source];
    const target = edit.source === judgement.source ? uri : uriOf(source.path);
    const list = byUri.get(target) ?? [];
    list.push({ range: rangeOf(source, edit), newText: edit.newText });
    byUri.set(target, list);
  }
  if (!versionedEdits) return { changes: Object.fromEntries(byUri) };
  return {
    documentChanges: [...byUri].map(([target, list]) => ({
      textDocument: { uri: target, version: versionOf(target) },
      edits: list,
    })),
  };
}
