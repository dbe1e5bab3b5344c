import type { CancellationToken } from 'vscode-languageserver';
import { csvTable } from '../../features/sampleReport/csv';
import { markdownReport } from '../../features/sampleReport/markdown';
import { sampleCells, sampleHeadings } from '../../features/sampleReport/reportCells';
import type { SampleReport } from '../../features/sampleReport/sampleReport';
import { sampleReport } from '../../features/sampleReport/sampleReport';
import { nameOf } from '../../model/paths';
import type { DocumentReading } from '../../workspace/openDocument';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import { stopIfCancelled } from '../cancellation';
import { SampleReportRequest } from '../requests/sampleRequests';
import type { ServerContext } from '../serverContext';

/** Rounds of finding out what a report lacks: folders, files, measures, and those of files that change meanwhile. */
const mostRounds = 70;

/** Answers the request for a report on samples. */
export function handleSamples({ connection, documents }: ServerContext): void {
  connection.onRequest(SampleReportRequest.type, async ({ uri }, token) => {
    const context = await documents.readingInContext(uri);
    stopIfCancelled(token);
    if (!context) return { reason: 'This document holds no instrument.' };
    const { whole } = context;
    if (whole.folder === undefined || whole.document.path === undefined)
      return { reason: 'Save the document to have its samples looked up.' };
    const report = await measuredReport(documents.samples, whole, whole.folder, token);
    return {
      markdown: markdownReport(`Samples of ${nameOf(whole.document.path)}`, report),
      csv: csvTable(sampleHeadings, report.samples.map(sampleCells)),
    };
  });
}

async function measuredReport(
  samples: SampleStore,
  { instrument, notation }: DocumentReading,
  folder: string,
  token: CancellationToken,
): Promise<SampleReport> {
  const { measurements } = samples;
  const lookup = samples.measuringLookup(folder);
  const owner = {};
  const stopping = token.onCancellationRequested(() => measurements?.release(owner));
  const make = () => sampleReport(instrument, notation, lookup);
  const ask = () => (measurements ? measurements.collect(owner, make) : make());
  try {
    let report = ask();
    for (let round = 0; round < mostRounds; round++) {
      if (samples.wants) await samples.loadWanted();
      else if (measurements?.isWaiting(owner)) await measurements.settled(owner);
      else break;
      stopIfCancelled(token);
      report = ask();
    }
    return report;
  } finally {
    stopping.dispose();
    measurements?.release(owner);
  }
}
