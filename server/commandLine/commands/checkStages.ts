import type { CheckContext, SeveritySettings } from '../../checks/rule';
import type { Finding } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { folderOf } from '../../model/paths';
import type { Analysis } from '../../workspace/analyse';
import { checkFetching } from '../../workspace/analyse';
import { vocabularyFindings } from '../../workspace/notations/vocabularyFindings';
import type { ProjectSettingsStore } from '../../workspace/projectSettings';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import type { CheckCandidate, CheckCandidates } from '../input/checkCandidates';

/** Instruments that go through a stage together. */
const together = 16;
/** Groups after which what is known of samples one by one is let go. */
const heldGroups = 8;

/** What checking needs. */
export interface CheckTools {
  candidates: CheckCandidates;
  samples: SampleStore;
  settings: ProjectSettingsStore;
}

/** An instrument that was checked as far as its text and the headers of its samples tell. */
interface Prepared {
  candidate: CheckCandidate;
  context: CheckContext;
  severity: SeveritySettings;
  findings: Finding[];
  /** Whether more is to be measured before the findings are all there. */
  waits: boolean;
}

/**
 * Checks instruments, some together: while the samples of one group are measured the next group is read and checked. Tells
 * of each in its order.
 */
export async function checkInStages(
  all: readonly CheckCandidate[],
  tools: CheckTools,
  onChecked: (candidate: CheckCandidate, analysis: Analysis) => Promise<void>,
): Promise<void> {
  let before = Promise.resolve();
  for (let from = 0, group = 0; from < all.length; from += together, group++) {
    if (group % heldGroups === heldGroups - 1) {
      await before;
      tools.samples.release();
    }
    const prepared = await prepare(all.slice(from, from + together), tools);
    await before;
    before = finish(prepared, tools, onChecked);
    // Whoever waits for it is told of what goes wrong; until then it is nobody's fault.
    before.catch(() => {});
  }
  await before;
}

/** Reads a group, looks at its samples and checks what can be checked by that. */
async function prepare(
  group: readonly CheckCandidate[],
  { candidates, samples, settings }: CheckTools,
): Promise<Prepared[]> {
  const read: [CheckCandidate, Instrument][] = [];
  for (const candidate of group) {
    const instrument = await candidates.read(candidate);
    if (instrument) read.push([candidate, instrument]);
  }
  await lookAtSamples(read, samples);
  const prepared: Prepared[] = [];
  for (const [candidate, instrument] of read) {
    const folder = folderOf(candidate.path);
    const { severity } = await settings.settingsFor(folder);
    const context = { instrument, notation: candidate.notation, samples: samples.lookup(folder) };
    const one: Prepared = { candidate, context, severity, findings: [], waits: false };
    const { measurements } = samples;
    one.findings = await checkFetching(context, samples, severity, () => false, one);
    one.waits = measurements?.isWaiting(one) ?? false;
    prepared.push(one);
  }
  return prepared;
}

/** Asks for the samples of all instruments of a group at once, so that they are looked at together and checked once. */
async function lookAtSamples(
  group: readonly [CheckCandidate, Instrument][],
  samples: SampleStore,
): Promise<void> {
  for (;;) {
    for (const [{ path }, instrument] of group) {
      const lookup = samples.lookup(folderOf(path));
      let asked = '';
      for (const region of instrument.regions) {
        const sample = instrument.samplePath(region);
        if (sample === undefined || sample === '' || sample[0] === '*') continue;
        if (lookup.state(sample).kind !== 'missing') continue;
        // Of what is missing the checks look whether its folder is there.
        if (sample.lastIndexOf('/') === asked.length && sample.startsWith(asked)) continue;
        asked = folderOf(sample);
        if (asked !== '') lookup.state(asked);
      }
    }
    if (!samples.wants) return;
    await samples.loadWanted();
  }
}

/** Waits for what is measured of a group, checks again what that concerns, and tells of it. */
async function finish(
  prepared: readonly Prepared[],
  { samples }: CheckTools,
  onChecked: (candidate: CheckCandidate, analysis: Analysis) => Promise<void>,
): Promise<void> {
  const { measurements } = samples;
  for (const one of prepared) {
    const { candidate, context, severity } = one;
    while (one.waits && measurements) {
      await measurements.settled(one);
      one.findings = await checkFetching(context, samples, severity, () => false, one);
      one.waits = measurements.isWaiting(one);
    }
    measurements?.release(one);
    const { notation, vocabulary } = candidate;
    if (vocabulary) one.findings.push(...vocabularyFindings(vocabulary, folderOf(candidate.path), severity));
    await onChecked(candidate, { notation, instrument: context.instrument, findings: one.findings });
  }
}
