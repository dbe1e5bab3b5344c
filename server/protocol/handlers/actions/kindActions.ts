import type { CodeAction, CodeActionParams } from 'vscode-languageserver';
import { CodeActionKind } from 'vscode-languageserver';
import type { FixKind } from '../../../features/quickFixes';
import { fixesTogether, fixKindOf, onesOfKind, quickFixesAt } from '../../../features/quickFixes';
import type { Judgement } from '../../../workspace/openDocument';
import { offsetOf } from '../../conversion/positions';
import { workspaceEditOf } from '../../conversion/workspaceEdits';
import type { ServerContext } from '../../serverContext';
import { fixFolderCommand } from './handleCommands';

/** What an action holds until its change is asked for. */
interface Postponed {
  fixKind: FixKind;
  uri: string;
  version: number;
}

/** For the fixes at a range: the same everywhere in the file, where it holds more of the kind, and in all open folders. */
export async function kindActions(
  server: ServerContext,
  judgement: Judgement,
  { range, context, textDocument: { uri } }: CodeActionParams,
): Promise<CodeAction[]> {
  if (context.only?.every((only) => only !== '' && only !== CodeActionKind.QuickFix)) return [];
  const { findings, instrument, source } = judgement;
  const [start, end] = [range.start, range.end].map((at) => offsetOf(instrument.sources[source], at));
  const kinds = new Map<string, FixKind>();
  for (const { finding, fix } of quickFixesAt(findings, source, start, end)) {
    const kind = fixKindOf(finding, fix);
    if (!fix.saves) kinds.set(`${kind.code} ${kind.kind}`, kind);
  }
  const { dataSupport, resolveSupport } = server.capabilities.textDocument?.codeAction ?? {};
  const isLater = dataSupport === true && resolveSupport?.properties.includes('edit') === true;
  const actions: CodeAction[] = [];
  for (const kind of kinds.values()) {
    const alike = findings.filter((one) => one.code === kind.code && one.source === source && one.fixes);
    if (alike.length > 1) {
      const data: Postponed = { fixKind: kind, uri, version: server.openDocument(uri)?.version ?? 0 };
      const action: CodeAction = {
        title: `${kind.kind}, everywhere in this file`,
        kind: CodeActionKind.QuickFix,
        data,
      };
      actions.push(isLater ? action : await resolveKind(server, action));
    }
    if (server.folders.length > 0) {
      const title = `${kind.kind}, in all instruments of the folder …`;
      const command = server.fixFolderCommand ?? fixFolderCommand;
      actions.push({
        title,
        kind: CodeActionKind.QuickFix,
        command: { title, command, arguments: [null, kind] },
      });
    }
  }
  return actions;
}

/** Works out the change of such an action; there is none where the document is another by now. */
export async function resolveKind(server: ServerContext, action: CodeAction): Promise<CodeAction> {
  const { fixKind, uri, version } = (action.data ?? {}) as Partial<Postponed>;
  if (fixKind === undefined || uri === undefined || server.openDocument(uri)?.version !== version)
    return action;
  const judgement = await server.documents.judgement(uri);
  const source = judgement?.instrument.sources[judgement.source];
  if (!judgement || !source) return action;
  const { edits } = fixesTogether(judgement.findings, judgement.source, onesOfKind(fixKind));
  return { ...action, edit: workspaceEditOf(server, [{ source, edits }], { unsaved: uri }) };
}
