import { checkInstrument } from '../checks/checkInstrument';
import type { CheckContext, SeveritySettings } from '../checks/rule';
import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import { folderOf } from '../model/paths';
import type { IncludeStore } from './includeStore';
import type { SampleStore } from './sampleStore';

/** Text, with what is needed to read it. */
export interface InstrumentText {
  /** Absolute path with `/`. */
  path: string;
  text: string;
  notation: Notation;
  /** What an earlier version of the text gave. */
  previous?: Instrument | undefined;
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
  for (let round = 0; includes.wants && round < mostRounds; round++) {
    await includes.loadWanted();
    instrument = readKnown(source, includes);
  }
  return instrument;
}

function readKnown({ notation, text, path, previous }: InstrumentText, includes: IncludeStore): Instrument {
  return notation.read(text, { path, previous, include: (included) => includes.get(included) });
}

/**
 * Checks an instrument, fetching what the checks need to know of its samples. Where all is known already nothing is
 * waited for. `stopped` ends the fetching early.
 */
export async function checkFetching(
  context: CheckContext,
  samples: SampleStore,
  severities: SeveritySettings = {},
  stopped: () => boolean = () => false,
): Promise<Finding[]> {
  let findings = checkInstrument(context, severities);
  for (let round = 0; samples.wants && round < mostRounds && !stopped(); round++) {
    await samples.loadWanted(stopped);
    findings = checkInstrument(context, severities);
  }
  return findings;
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
  const context = { instrument, notation, samples: samples.lookup(folderOf(source.path)) };
  return { notation, instrument, findings: await checkFetching(context, samples, severities, stopped) };
}
