import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Instrument } from '../../../server/model/instrument';
import { sfzNotation } from '../../../server/sfz/notation';
import { analyse } from '../../../server/workspace/analyse';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { Measurements } from '../../../server/workspace/measuring/measurements';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { timeOf } from '../compare';
import { keystrokesIn } from '../keystrokes';
import { namedSounds } from '../namedSounds';
import type { AddRow } from '../table';
import { quantilesRow } from '../table';

/**
 * A keystroke in a large document to all findings of it, files known already, within one process: where facts alone are known, and
 * where all is measured.
 */
export async function measureKeystroke(add: AddRow, text: string, folder: string): Promise<void> {
  const what = 'Keystroke in 10,000 regions to findings, in one process';
  add(quantilesRow(what, await keystrokes(text, folder, new SampleStore(nodeFiles)), 'p95 ≤ 16 ms'));
  const measures = new Measurements(nodeFiles, { measurer: namedSounds });
  const measured = await keystrokes(text, folder, new SampleStore(nodeFiles, { measures }));
  add(quantilesRow('The same with pitch, survey and seam of all samples known', measured, 'p95 ≤ 12 ms'));
}

async function keystrokes(text: string, folder: string, samples: SampleStore): Promise<number[]> {
  const path = `${folder}/large.sfz`;
  const includes = new IncludeStore(nodeFiles);
  let document = TextDocument.create('file:///large.sfz', 'sfz', 0, text);
  let previous: Instrument | undefined;
  const findings = async () => {
    const source = { path, text: document.getText(), notation: sfzNotation, previous };
    const analysis = await analyse(source, includes, samples);
    previous = analysis.instrument;
    return analysis.findings;
  };
  const first = await findings();
  if (first.length > 0) throw new Error(`The large instrument is not clean: ${first[0]?.message}`);

  const milliseconds: number[] = [];
  for (const stroke of keystrokesIn(text, 140)) {
    milliseconds.push(
      await timeOf(() => {
        document = TextDocument.update(document, [stroke], document.version + 1);
        return findings();
      }),
    );
  }
  return milliseconds.slice(40);
}
