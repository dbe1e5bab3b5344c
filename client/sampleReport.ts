import type { Disposable } from 'vscode';
import { commands, l10n, ProgressLocation, ViewColumn, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { SampleReportRequest } from '../server/protocol/sampleRequests';
import { mayHoldInstrument } from './languages';

/** The command that opens a report on the samples of the instrument beside its text, unsaved. */
export function registerSampleReport(client: BaseLanguageClient): Disposable {
  return commands.registerCommand('zonewright.sampleReport', async () => {
    const document = window.activeTextEditor?.document;
    if (!mayHoldInstrument(document)) {
      await window.showWarningMessage(
        l10n.t('Open the instrument first whose samples are to be reported on.'),
      );
      return;
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
    if (!result) return;
    if (result.markdown === undefined) {
      await window.showWarningMessage(result.reason ?? l10n.t('There is no report.'));
      return;
    }
    const page = await workspace.openTextDocument({ content: result.markdown, language: 'markdown' });
    await window.showTextDocument(page, { viewColumn: ViewColumn.Beside });
  });
}
