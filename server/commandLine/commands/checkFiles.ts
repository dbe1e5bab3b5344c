import { rules } from '../../checks/rules';
import type { UnusedSamples } from '../../checks/rules/sampleUnused';
import type { Finding, Severity } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { folderOf, joinPath } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import type { Analysis } from '../../workspace/analyse';
import { ProjectSettingsStore } from '../../workspace/projectSettings';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import { isLong, keepHeapSmall } from '../heapGrowth';
import type { CheckCandidate, FoundInstruments } from '../input/checkCandidates';
import { CheckCandidates, placeless } from '../input/checkCandidates';
import type { FoundFiles } from '../input/findInstruments';
import { openSamples } from '../input/openSamples';
import type { CheckedFile, PlacedFinding } from '../output/checkedFile';
import { inText } from '../output/checkedFile';
import type { Terminal } from '../terminal';
import { checkInStages } from './checkStages';

/** Milliseconds between two lines that say how far the work is. */
const progressEvery = 5000;
/** From so many instruments on what is left behind is looked for sooner, as for a long text. */
const many = 100;

/** Is given the files as they are done: each instrument in the order of the paths, behind it the files that it includes. */
export type OnChecked = (files: readonly CheckedFile[]) => Promise<void>;

/**
 * Checks all instruments that were found; those that only others include are checked as parts of these. Samples are
 * measured; with `keeps`, what was found out of them is kept for the next time where the terminal can. Several
 * instruments are under way at one time, and no more are held than those.
 */
export async function checkFiles(
  terminal: Terminal,
  found: FoundFiles,
  keeps: boolean,
  onChecked: OnChecked,
): Promise<void> {
  const opened = openSamples(terminal, keeps);
  try {
    await checkWith(terminal, opened.samples, found, onChecked);
  } finally {
    await opened.close();
  }
}

async function checkWith(
  terminal: Terminal,
  samples: SampleStore,
  found: FoundFiles,
  onChecked: OnChecked,
): Promise<void> {
  const settings = new ProjectSettingsStore(terminal.files, (message) =>
    terminal.error(`zonewright: ${message}\n`),
  );
  const candidates = new CheckCandidates(terminal, found.folders);
  const { mains, included, refused, odd } = await candidates.find(found);
  const first = [...refused, ...(await oddFonts(odd, settings))];
  if (first.length > 0) await onChecked(first);
  if (mains.length >= many || mains.some(({ text }) => text !== undefined && isLong(text)))
    await keepHeapSmall();
  const placing = new Placing(samples, included, found.audio);
  let told = Date.now();
  let done = 0;
  await checkInStages(mains, { candidates, samples, settings }, async (candidate, analysis) => {
    await onChecked(placing.place(candidate, analysis));
    done++;
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${done} of ${counted(mains.length, 'instrument')} checked\n`);
  });
  await onChecked(await unusedSamples(found.audio, settings));
}

/** Places the findings of instruments in their files, and says which samples they use. */
class Placing {
  readonly #samples: SampleStore;
  readonly #included: ReadonlySet<string>;
  readonly #audio: UnusedSamples;
  /** What was found in files that several instruments may include. */
  readonly #seen = new Set<string>();

  constructor(samples: SampleStore, included: ReadonlySet<string>, audio: UnusedSamples) {
    this.#samples = samples;
    this.#included = included;
    this.#audio = audio;
  }

  /** The file of an instrument and those that it includes, with what was not found in them before. */
  place({ path }: CheckCandidate, { instrument, findings }: Analysis): CheckedFile[] {
    if (!this.#audio.isEmpty) this.#noteUsed(path, instrument);
    const byPath = new Map<string, PlacedFinding[]>([[path, []]]);
    const own = new Set<string>();
    for (const finding of findings) {
      const file = instrument.sources[finding.source];
      if (!file) continue;
      const placed = placedIn(file, finding);
      const { code, start, message } = placed;
      const key = `${file.path}\n${code}\n${start.line}:${start.column}\n${message}`;
      const seen = this.#included.has(file.path) ? this.#seen : own;
      if (seen.has(key)) continue;
      seen.add(key);
      const list = byPath.get(file.path);
      if (list) list.push(placed);
      else byPath.set(file.path, [placed]);
    }
    return [...byPath].map(([one, placed]) => ({
      path: one,
      findings: placed.sort(inText),
    }));
  }

  #noteUsed(path: string, instrument: Instrument): void {
    this.#audio.addInstrument(path);
    const folder = folderOf(path);
    const lookup = this.#samples.lookup(folder);
    for (const region of instrument.regions) {
      const sample = instrument.samplePath(region);
      if (sample === undefined) continue;
      const state = lookup.state(sample);
      this.#audio.use(joinPath(folder, state.kind === 'otherCase' ? state.actual : sample));
    }
  }
}

function placedIn(
  file: Instrument['sources'][number],
  { start, end, code, severity, message }: Finding,
): PlacedFinding {
  return {
    code,
    severity,
    message: visibleText(message),
    start: file.positionAt(start),
    end: file.positionAt(end),
  };
}

/** The audio files that no instrument uses, each with its finding. */
async function unusedSamples(audio: UnusedSamples, settings: ProjectSettingsStore): Promise<CheckedFile[]> {
  const message =
    'No instrument in the checked folder uses this audio file. Use it, or leave it out when you share the instrument.';
  const unused: CheckedFile[] = [];
  for (const path of audio.list()) {
    const severity = await severityOf('sample-unused', path, settings);
    if (severity === 'off') continue;
    unused.push({ path, findings: [{ ...placeless('sample-unused', message), severity }] });
  }
  return unused;
}

/** The SoundFonts in which something is odd, each with its findings. */
async function oddFonts(
  odd: FoundInstruments['odd'],
  settings: ProjectSettingsStore,
): Promise<CheckedFile[]> {
  const files: CheckedFile[] = [];
  for (const { path, problems } of odd) {
    const severity = await severityOf('font-structure', path, settings);
    if (severity === 'off') continue;
    const findings = problems.map((message) => ({
      ...placeless('font-structure', visibleText(message)),
      severity,
    }));
    files.push({ path, findings });
  }
  return files;
}

/** The severity of a finding about a whole file. */
async function severityOf(
  code: string,
  path: string,
  settings: ProjectSettingsStore,
): Promise<Severity | 'off'> {
  const { severity } = await settings.settingsFor(folderOf(path));
  return severity[code] ?? rules.find((rule) => rule.code === code)?.severity ?? 'information';
}
