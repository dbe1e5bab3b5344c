import type { SeveritySettings } from '../../checks/rule';
import { sampleReport } from '../../features/sampleReport/sampleReport';
import type { MapScene } from '../../map/mapScene';
import type { Finding } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { median } from '../../model/median';
import type { Notation } from '../../model/notation';
import { folderOf, relativePath } from '../../model/paths';
import type { SampleLookup } from '../../model/samples';
import { visibleText } from '../../model/text/visibleText';
import { checkFetching, readInstrument } from '../../workspace/analyse';
import { figuresOf } from './figures';
import type { InstrumentFigures, InstrumentMeasures, RecordFinding } from './instrumentRecord';
import type { ReadingTools } from './readSource';

/** Findings that a record keeps; the others are counted. */
const mostFindings = 200;
/** Rounds of asking what is known of samples. */
const mostRounds = 70;

/** What the checks say of an instrument that was built, and what it is like. */
export interface CheckedInstrument {
  findings: Finding[];
  kept: RecordFinding[];
  figures: InstrumentFigures;
  measures?: InstrumentMeasures;
  scene: MapScene;
}

/** A text that was built. */
export interface BuiltText {
  name: string;
  /** Where it stands, absolute. */
  path: string;
  text: string;
  notation: Notation;
}

/** Reads a text that was built as a player would and checks it. `output` is the folder that paths are told from. */
export async function checkBuilt(
  built: BuiltText,
  output: string,
  severities: SeveritySettings,
  { samples, includes }: ReadingTools,
): Promise<CheckedInstrument> {
  const { path, text, notation, name } = built;
  const needsSamples = notation.parameters !== undefined;
  const instrument = await readInstrument(
    { path, text, notation, ...(needsSamples && { samples }) },
    includes,
  );
  const lookup = samples.lookup(folderOf(path));
  const findings = await checkFetching({ instrument, notation, samples: lookup }, samples, severities);
  const measures = samples.measurements && (await measuresOf(instrument, notation, lookup, () => samples));
  const { figures, scene } = figuresOf(instrument, lookup, name);
  const kept = findings.slice(0, mostFindings).map((finding) => recordFinding(instrument, finding, output));
  return { findings, kept, figures, ...(measures && { measures }), scene };
}

function recordFinding(
  { sources }: Instrument,
  { source, start, code, severity, message }: Finding,
  output: string,
): RecordFinding {
  const file = sources[source];
  const place = file?.positionAt(start);
  return {
    code,
    severity,
    message: visibleText(message),
    line: place?.line ?? 1,
    column: place?.column ?? 1,
    file: relativePath(output, file?.path ?? output),
  };
}

async function measuresOf(
  instrument: Instrument,
  notation: Notation,
  lookup: SampleLookup,
  store: () => ReadingTools['samples'],
): Promise<InstrumentMeasures> {
  let report = sampleReport(instrument, notation, lookup);
  for (let round = 0; store().wants && round < mostRounds; round++) {
    await store().loadWanted();
    report = sampleReport(instrument, notation, lookup);
  }
  const cents = report.samples.flatMap(({ centsOff }) =>
    centsOff === undefined ? [] : [Math.abs(centsOff)],
  );
  const loudness = report.samples.flatMap(
    ({ survey }) => survey?.loudness ?? survey?.momentaryLoudness ?? [],
  );
  return {
    samples: report.samples.filter(({ survey }) => survey !== null).length,
    ...(cents.length > 0 && {
      meanCents: tenths(cents.reduce((sum, one) => sum + one, 0) / cents.length),
      greatestCents: tenths(Math.max(...cents)),
    }),
    ...(loudness.length > 0 && { loudness: tenths(median(loudness)) }),
  };
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
