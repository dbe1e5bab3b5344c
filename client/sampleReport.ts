import type { Disposable } from 'vscode';
import { commands, l10n, ProgressLocation, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { SampleReportRequest } from '../server/protocol/requests/sampleRequests';
import { mayHoldInstrument } from './languages';
import { showPage } from './markdownPage';

/**
 * The commands that open a report on the samples of the instrument beside its text, unsaved: as a page, shown as it reads, and
 * as comma-separated values for a spreadsheet.
 */
export function registerSampleReport(client: BaseLanguageClient): Disposable[] {
  const report = async (language: 'markdown' | 'csv') => {
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
    await showPage(language, result[language] ?? '');
  };
  return [
    commands.registerCommand('zonewright.sampleReport', () => report('markdown')),
    commands.registerCommand('zonewright.sampleReportTable', () => report('csv')),
  ];
}
