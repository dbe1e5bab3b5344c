import { surveySample } from '../../audio/measure/survey';
import { joinPath } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { withFontSamples } from '../../soundfont/fontFiles';
import { refusalWords } from '../../workspace/files/refusalWords';
import { CommandError } from '../commandError';
import { readFontInput } from '../input/fontInput';
import type { OpenSamples } from '../input/openSamples';
import { openSamples, progressEvery } from '../input/openSamples';
import { sampleJson } from '../output/sampleJson';
import type { AskedMeasures, ListedSample } from '../output/sampleText';
import { sampleText } from '../output/sampleText';
import type { Terminal } from '../terminal';
import { absolutePath, shownPath } from '../terminalPaths';
import { readWords } from '../words';

/** `zonewright sample`: what the headers of sample files say, and what is measured in their audio where it is asked for. */
export async function sample(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    format: ['text', 'json'],
    pitch: 'switch',
    measure: 'switch',
    whole: 'switch',
    'no-cache': 'switch',
  });
  if (paths.length === 0) throw new CommandError('sample takes at least one file');
  const whole = switches.has('whole');
  const all = whole || switches.has('measure');
  const asked = { pitch: all || switches.has('pitch'), all };
  const opened = openSamples(terminal, !switches.has('no-cache'));
  const failed: string[] = [];
  try {
    const found = await readFacts(opened, terminal, await withSamplesOfFonts(terminal, paths), failed);
    const measuredNow = () => found.map((one) => measured(opened, terminal, one, asked));
    measuredNow();
    await opened.measurements.loadWanted();
    for (const known of measuredNow()) {
      const isCut = whole && known.survey?.isWhole === false;
      const one = isCut ? { ...known, survey: await wholeSurvey(terminal, known) } : known;
      await terminal.out(options.format === 'json' ? `${sampleJson(one)}\n` : sampleText(one, asked));
    }
  } finally {
    await opened.close();
  }
  if (failed.length > 0) throw new CommandError(failed.join('; '));
  return 0;
}

/** The paths, each SoundFont replaced by the samples in it. */
async function withSamplesOfFonts(terminal: Terminal, names: readonly string[]): Promise<string[]> {
  const all: string[] = [];
  for (const name of names) {
    const font = await readFontInput(terminal, name);
    if (!font) all.push(name);
    else all.push(...[...font.view.samples.keys()].map((sample) => `${font.path}/${sample}`));
  }
  return all;
}

interface Found {
  path: string;
  facts: SampleFacts;
}

/** The files that can be read; what is wrong with the others is added to `failed`. */
async function readFacts(
  { samples }: OpenSamples,
  terminal: Terminal,
  names: readonly string[],
  failed: string[],
): Promise<Found[]> {
  const paths = names.map((name) => absolutePath(terminal, name));
  for (const path of paths) samples.reading(path);
  await samples.loadWanted();
  const found: Found[] = [];
  for (const [at, path] of paths.entries()) {
    const reading = samples.reading(path);
    if (reading?.kind === 'facts') {
      found.push({ path, facts: reading.facts });
      continue;
    }
    const isThere = (await terminal.files.stat(path))?.kind === 'file';
    const refusal = isThere ? undefined : await terminal.files.refusal?.(path);
    const reason = refusal
      ? `it ${refusalWords(refusal)}`
      : isThere && reading
        ? reading.reason
        : 'there is no such file, or it cannot be read';
    failed.push(`${names[at]}: ${reason}`);
  }
  return found;
}

/** The survey of a file from its first frame to its last, however long it is; says on standard error how far it is. */
async function wholeSurvey(
  { files, error, folder }: Terminal,
  { path, facts }: ListedSample,
): Promise<SampleSurvey | null> {
  const reader = await withFontSamples(files).open(joinPath(folder, path));
  if (!reader) return null;
  let told = Date.now();
  const onFrames = (frames: number) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    const of = facts.frames > 0 ? ` of ${facts.frames}` : '';
    error(`zonewright: ${path}: ${frames}${of} frames measured\n`);
  };
  try {
    return await surveySample(reader, { whole: true, onFrames });
  } finally {
    await reader.close();
  }
}

/** What is known of a file by now; what is not is asked for. */
function measured(
  { measurements }: OpenSamples,
  terminal: Terminal,
  { path, facts }: Found,
  asked: AskedMeasures,
): ListedSample {
  const file = measurements.file(path);
  return {
    path: shownPath(terminal, path),
    facts,
    pitch: (asked.pitch && measurements.pitch(file)) || null,
    survey: (asked.all && measurements.survey(file)) || null,
    seams: asked.all
      ? facts.loops.map(({ start, end }) => measurements.loopSeam(file, start, end) ?? null)
      : [],
  };
}
