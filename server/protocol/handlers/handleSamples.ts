import type { CancellationToken } from 'vscode-languageserver';
import { csvTable } from '../../features/sampleReport/csv';
import { reportViews } from '../../features/sampleReport/page/reportViews';
import { samplePage } from '../../features/sampleReport/page/samplePage';
import { sampleCells, sampleHeadings } from '../../features/sampleReport/reportCells';
import { sampleReport } from '../../features/sampleReport/sampleReport';
import { nameOf } from '../../model/paths';
import type { SampleLookup } from '../../model/samples';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { SampleReportRequest } from '../requests/sampleRequests';
import type { ServerContext } from '../serverContext';

/** Rounds of finding out what a report lacks: folders, files, measures, and those of files that change meanwhile. */
const mostRounds = 70;

/** Answers the request for a report on samples. */
export function handleSamples(answer: AnswerRequest, { documents }: ServerContext): void {
  answer(SampleReportRequest.type, async ({ uri }, token) => {
    const context = await documents.readingInContext(uri);
    stopIfCancelled(token);
    if (!context) return { reason: 'This document holds no instrument.' };
    const { whole } = context;
    if (whole.folder === undefined || whole.document.path === undefined)
      return { reason: 'Save the document to look up its samples.' };
    const { instrument, notation } = whole;
    const { report, views } = await onceMeasured(documents.samples, whole.folder, token, (samples) => ({
      report: sampleReport(instrument, notation, samples),
      views: reportViews({ instrument, notation, samples }),
    }));
    return {
      html: samplePage(`Samples of ${nameOf(whole.document.path)}`, report, views),
      csv: csvTable(sampleHeadings, report.samples.map(sampleCells)),
    };
  });
}

/** What `make` gives once all that it asks for is measured. Sample facts come from a lookup for the folder of an instrument. */
export async function onceMeasured<Result>(
  samples: SampleStore,
  folder: string,
  token: CancellationToken,
  make: (lookup: SampleLookup) => Result,
): Promise<Result> {
  const { measurements } = samples;
  const lookup = samples.measuringLookup(folder);
  const owner = {};
  const stopping = token.onCancellationRequested(() => measurements?.release(owner));
  const ask = () => (measurements ? measurements.collect(owner, () => make(lookup)) : make(lookup));
  try {
    let made = ask();
    for (let round = 0; round < mostRounds; round++) {
      if (samples.wants) await samples.loadWanted();
      else if (measurements?.isWaiting(owner)) await measurements.settled(owner);
      else break;
      stopIfCancelled(token);
      made = ask();
    }
    return made;
  } finally {
    stopping.dispose();
    measurements?.release(owner);
  }
}
