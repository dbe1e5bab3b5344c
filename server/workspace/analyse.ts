import { checkInstrument } from '../checks/checkInstrument';
import type { CheckContext, SeveritySettings } from '../checks/rule';
import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import { folderOf } from '../model/paths';
import type { IncludeStore } from './files/includeStore';
import type { VocabularyInForce } from './notations/notationFinder';
import { vocabularyFindings } from './notations/vocabularyFindings';
import { sampleFactsIn } from './samples/sampleFactsIn';
import type { SampleStore } from './samples/sampleStore';

/** Text, with what is needed to read it. */
export interface InstrumentText {
  /** Absolute path with `/`. */
  path: string;
  text: string;
  notation: Notation;
  /** What an earlier version of the text gave. */
  previous?: Instrument | undefined;
  /** Where a notation finds what it needs to know of samples; missing for one that needs nothing. */
  samples?: SampleStore;
  /** The vocabulary of XML that is not in our own notation. */
  vocabulary?: VocabularyInForce;
}

/** An instrument with what the checks found in it. */
export interface Analysis {
  notation: Notation;
  instrument: Instrument;
  findings: Finding[];
}

/** Included files can include others, so reading may have to start over this often. */
const mostRounds = 70;

/** Reads an instrument, fetching the files that it includes. Where all are known already nothing is waited for. */
export async function readInstrument(source: InstrumentText, includes: IncludeStore): Promise<Instrument> {
  let instrument = readKnown(source, includes);
  for (let round = 0; (includes.wants || source.samples?.wants) && round < mostRounds; round++) {
    await includes.loadWanted();
    await source.samples?.loadWanted();
    instrument = readKnown(source, includes);
  }
  return instrument;
}

function readKnown(
  { notation, text, path, previous, samples }: InstrumentText,
  includes: IncludeStore,
): Instrument {
  return notation.read(text, {
    path,
    previous,
    include: (included) => includes.includedBy(folderOf(path), included),
    ...(samples && { sampleFacts: sampleFactsIn(samples, folderOf(path)) }),
  });
}

/**
 * Checks an instrument, fetching what the checks need to know of its samples. Where all is known already nothing is
 * waited for. `stopped` ends the fetching early. Where measuring goes on in the background, what was lacking is measured
 * for an owner.
 */
export async function checkFetching(
  context: CheckContext,
  samples: SampleStore,
  severities: SeveritySettings = {},
  stopped: () => boolean = () => false,
  owner?: object,
): Promise<Finding[]> {
  const measurements = owner && samples.measurements;
  const check = () => checkInstrument(context, severities);
  const checkOnce = () => measurements?.gather(check) ?? { result: check(), asked: undefined };
  let checked = checkOnce();
  for (let round = 0; samples.wants && round < mostRounds && !stopped(); round++) {
    await samples.loadWanted(stopped);
    checked = checkOnce();
  }
  if (checked.asked && !stopped()) measurements?.hold(owner, checked.asked);
  return checked.result;
}

/** Reads and checks an instrument, fetching what that needs. `stopped` ends the fetching early. */
export async function analyse(
  source: InstrumentText,
  includes: IncludeStore,
  samples: SampleStore,
  severities: SeveritySettings = {},
  stopped: () => boolean = () => false,
): Promise<Analysis> {
  const { notation } = source;
  const instrument = await readInstrument(source, includes);
  const folder = folderOf(source.path);
  const context = { instrument, notation, samples: samples.lookup(folder) };
  const findings = await checkFetching(context, samples, severities, stopped);
  if (source.vocabulary) findings.push(...vocabularyFindings(source.vocabulary, folder, severities));
  return { notation, instrument, findings };
}
