import { checkInSteps } from '../checks/checkInstrument';
import type { CheckContext, SeveritySettings } from '../checks/rule';
import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import { folderOf } from '../model/paths';
import type { Steps } from '../model/steps';
import type { IncludeStore } from './files/includeStore';
import type { Wish } from './measuring/measuredFile';
import type { Measurements } from './measuring/measurements';
import type { VocabularyInForce } from './notations/notationFinder';
import { vocabularyFindings } from './notations/vocabularyFindings';
import { sampleFactsIn } from './samples/sampleFactsIn';
import type { SampleStore } from './samples/sampleStore';
import type { AfterStep } from './takeSteps';
import { takeSteps } from './takeSteps';

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

/**
 * Reads an instrument, fetching the files that it includes. Where all are known already nothing is waited for but other work,
 * which is let run where reading takes long; what `afterStep` throws ends it.
 */
export async function readInstrument(
  source: InstrumentText,
  includes: IncludeStore,
  afterStep?: AfterStep,
): Promise<Instrument> {
  const { samples } = source;
  const folder = folderOf(source.path);
  for (let round = 0; ; round++) {
    const loads = samples?.loads;
    let lacksInclude = false;
    const include = (path: string) => {
      const found = includes.includedBy(folder, path);
      if (found.kind === 'pending') lacksInclude = true;
      return found;
    };
    const { notation, text, path, previous } = source;
    const facts = samples && { sampleFacts: sampleFactsIn(samples, folder) };
    const steps = notation.readInSteps(text, { path, previous, include, ...facts });
    const instrument = await takeSteps(steps, afterStep);
    // What was lacking may have been fetched for others while this was read.
    const lacksSamples = samples?.wants || samples?.loads !== loads;
    if (round === mostRounds || !(lacksInclude || lacksSamples)) return instrument;
    await includes.loadWanted();
    await samples?.loadWanted();
  }
}

/**
 * Checks an instrument, fetching what the checks need to know of its samples. Other work is let run between rules that take
 * long together. `stopped` ends it early, with the findings of before. Where measuring goes on in the background, what was
 * lacking is measured for an owner.
 */
export async function checkFetching(
  context: CheckContext,
  samples: SampleStore,
  severities: SeveritySettings = {},
  stopped: () => boolean = () => false,
  owner?: object,
): Promise<Finding[]> {
  const measurements = owner && samples.measurements;
  let loads = samples.loads;
  let checked = await checkOnce(context, severities, measurements, stopped);
  // What was lacking may have been fetched for others while this was checked.
  for (let round = 0; round < mostRounds && !stopped(); round++) {
    if (samples.wants) await samples.loadWanted(stopped);
    else if (samples.loads === loads) break;
    loads = samples.loads;
    checked = await checkOnce(context, severities, measurements, stopped);
  }
  if (checked.asked && !stopped()) measurements?.hold(owner, checked.asked);
  return checked.findings;
}

/** The findings by what is known now, and what they lacked of measures. */
async function checkOnce(
  context: CheckContext,
  severities: SeveritySettings,
  measurements: Measurements | undefined,
  stopped: () => boolean,
): Promise<{ findings: Finding[]; asked?: Set<Wish> }> {
  const asked = new Set<Wish>();
  const steps = checkInSteps(context, severities);
  const next = () => steps.next();
  const gathered: Steps<Finding[]> = (function* () {
    for (;;) {
      const step = measurements?.gather(next);
      for (const wish of step?.asked ?? []) asked.add(wish);
      const { done, value } = step?.result ?? next();
      if (done) return value;
      if (stopped()) return [];
      yield value;
    }
  })();
  const findings = await takeSteps(gathered);
  return { findings, ...(measurements && { asked }) };
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
