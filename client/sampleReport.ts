import type { Disposable, TextDocument, WebviewPanel } from 'vscode';
import { commands, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { SampleReportResult } from '../server/protocol/requests/sampleRequests';
import { SampleReportRequest } from '../server/protocol/requests/sampleRequests';
import { mayHoldInstrument } from './languages';
import { showPage } from './markdownPage';
import type { ServerClient } from './serverClient';
import { sideColumn } from './sideGroup';

const viewType = 'zonewright.sampleReport';

/** A report that is shown, with the instrument that it is of. */
interface ShownReport {
  panel: WebviewPanel;
  html: string;
  instrument: Uri;
}

/**
 * The commands that report on the samples of the instrument of a document: as a page beside its text, which is saved on
 * request, and as comma-separated values for a spreadsheet.
 */
export function registerSampleReport(client: ServerClient): Disposable[] {
  let shown: ShownReport | undefined;
  const show = (html: string, instrument: Uri) => {
    const panel =
      shown?.panel ??
      window.createWebviewPanel(
        viewType,
        l10n.t('Report on Samples'),
        { viewColumn: sideColumn(), preserveFocus: true },
        { enableScripts: false, localResourceRoots: [], enableFindWidget: true },
      );
    if (!shown) {
      panel.onDidDispose(() => {
        shown = undefined;
      });
    }
    shown = { panel, html, instrument };
    panel.webview.html = html;
    panel.reveal(undefined, true);
  };
  return [
    commands.registerCommand('zonewright.sampleReport', async (uri?: unknown) => {
      const made = await report(client, uri);
      if (made?.result.html !== undefined) show(made.result.html, made.document.uri);
    }),
    commands.registerCommand('zonewright.sampleReportTable', async () => {
      const made = await report(client);
      if (made?.result.csv !== undefined) await showPage('csv', made.result.csv);
    }),
    commands.registerCommand('zonewright.saveSampleReport', async () => {
      if (shown) await save(shown);
      else await window.showWarningMessage(l10n.t('Show the report on samples first, then save it.'));
    }),
  ];
}

/** A report on the instrument of a URI, else on that in the active editor; says why where there is none. */
async function report(
  client: ServerClient,
  uri?: unknown,
): Promise<{ document: TextDocument; result: SampleReportResult } | undefined> {
  const document =
    uri instanceof Uri ? await workspace.openTextDocument(uri) : window.activeTextEditor?.document;
  if (!mayHoldInstrument(document)) {
    await window.showWarningMessage(l10n.t('Open the instrument to report on first.'));
    return undefined;
  }
  const result = await window.withProgress(
    {
      location: ProgressLocation.Notification,
      title: l10n.t('Measuring the samples for the report'),
      cancellable: true,
    },
    async (_progress, token) => {
      try {
        return await client.sendRequest(SampleReportRequest.type, { uri: document.uri.toString() }, token);
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        throw error;
      }
    },
  );
  if (!result) return undefined;
  if (result.html === undefined) {
    await window.showWarningMessage(result.reason ?? l10n.t('There is no report.'));
    return undefined;
  }
  return { document, result };
}

/** Asks where a report is to go, and writes it there. */
async function save({ html, instrument }: ShownReport): Promise<void> {
  const name = instrument.path
    .slice(instrument.path.lastIndexOf('/') + 1)
    .replace(/(\.instrument)?\.\w+$/, '');
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(instrument, '..', `${name} samples.html`),
    filters: { HTML: ['html'] },
    saveLabel: l10n.t('Save Report'),
  });
  if (target) await workspace.fs.writeFile(target, new TextEncoder().encode(html));
}
