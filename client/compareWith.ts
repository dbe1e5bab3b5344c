import type { Disposable, TextDocument } from 'vscode';
import {
  commands,
  Diagnostic,
  DiagnosticSeverity,
  l10n,
  languages,
  ProgressLocation,
  Uri,
  window,
  workspace,
} from 'vscode';
import { isAudioFileName, sampleEndings } from '../server/model/fileNames';
import type { ComparedPlace, CompareResult } from '../server/protocol/requests/comparisonRequests';
import { CompareRecordingRequest, CompareRequest } from '../server/protocol/requests/comparisonRequests';
import { mayHoldInstrument } from './languages';
import { toEditor } from './protocolRange';
import type { ServerClient } from './serverClient';
import { sideColumn } from './sideGroup';

/** The commands that compare how the instrument of a document sounds with another file, and that take the findings away again. */
export function registerComparison(client: ServerClient): Disposable[] {
  const findings = languages.createDiagnosticCollection('zonewright-comparison');
  return [
    findings,
    // What differed stood in the text as it was.
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (contentChanges.length > 0) findings.delete(document.uri);
    }),
    commands.registerCommand('zonewright.clearComparison', () => findings.clear()),
    commands.registerCommand('zonewright.compareWith', async (other?: Uri) => {
      const document = window.activeTextEditor?.document;
      if (!mayHoldInstrument(document)) {
        await window.showWarningMessage(l10n.t('Open the instrument to compare first.'));
        return;
      }
      const chosen = other ?? (await chosenFile(document.uri));
      if (!chosen) return;
      const result = await compared(client, document, chosen);
      if (!result) return;
      if (result.html === undefined) {
        await window.showWarningMessage(result.reason ?? l10n.t('Nothing could be compared.'));
        return;
      }
      findings.clear();
      for (const [uri, places] of byUri(result.places ?? []))
        findings.set(Uri.parse(uri), places.map(diagnosticOf));
      showPage(result.html);
    }),
  ];
}

async function chosenFile(uri: Uri): Promise<Uri | undefined> {
  const [chosen] =
    (await window.showOpenDialog({
      defaultUri: Uri.joinPath(uri, '..'),
      openLabel: l10n.t('Compare'),
      title: l10n.t('Instrument or recording to compare with'),
      filters: {
        [l10n.t('Instruments and recordings')]: ['sfz', 'xml', ...sampleEndings],
        [l10n.t('Recordings of the original playing its sweep')]: [...sampleEndings],
      },
    })) ?? [];
  return chosen;
}

async function compared(
  client: ServerClient,
  document: TextDocument,
  other: Uri,
): Promise<CompareResult | undefined> {
  const uri = document.uri.toString();
  const isRecording = isAudioFileName(other.path);
  // The server reads documents that are open.
  const read = isRecording ? other : (await workspace.openTextDocument(other)).uri;
  const otherUri = read.toString();
  return window.withProgress(
    {
      location: ProgressLocation.Notification,
      title: isRecording ? l10n.t('Comparing it with the recording') : l10n.t('Comparing how both sound'),
      cancellable: true,
    },
    async (_progress, token) => {
      try {
        return await (isRecording
          ? client.sendRequest(CompareRecordingRequest.type, { uri, recordingUri: otherUri }, token)
          : client.sendRequest(CompareRequest.type, { uri, otherUri }, token));
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        throw error;
      }
    },
  );
}

function byUri(places: readonly ComparedPlace[]): Map<string, ComparedPlace[]> {
  const found = new Map<string, ComparedPlace[]>();
  for (const place of places) found.set(place.uri, [...(found.get(place.uri) ?? []), place]);
  return found;
}

function diagnosticOf({ range, message }: ComparedPlace): Diagnostic {
  const diagnostic = new Diagnostic(toEditor(range), message, DiagnosticSeverity.Information);
  diagnostic.source = 'zonewright comparison';
  return diagnostic;
}

/** Shows the page beside the text; it runs no script. */
function showPage(html: string): void {
  const panel = window.createWebviewPanel(
    'zonewright.comparison',
    l10n.t('Comparison'),
    { viewColumn: sideColumn(), preserveFocus: true },
    { enableScripts: false, localResourceRoots: [] },
  );
  panel.webview.html = html;
}
