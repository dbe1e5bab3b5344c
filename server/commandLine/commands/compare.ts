import { Buffer } from 'node:buffer';
import type { ComparedInstrument, Comparison } from '../../comparison/compareInstruments';
import { compareInstruments } from '../../comparison/compareInstruments';
import { pageOfComparison } from '../../comparison/page/pageOfComparison';
import { nameOf } from '../../model/paths';
import { measureMemory } from '../../workspace/comparing/measureMemory';
import { sumOf } from '../../workspace/measuring/cacheFolder';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { soundInput } from '../input/soundInput';
import type { ComparisonTold } from '../output/comparisonOutput';
import { comparisonJson, comparisonText, wordedOf } from '../output/comparisonOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';
import { compareWithRecording } from './compareWithRecording';

/** Differences of up to so many dB are none: below the steps of 16 bits at full scale, −90.3 dB. */
const usualToleranceDb = -90;
const sampleRate = 44100;
/** The status of a program that SIGINT, signal 2, ended (common practice: 128 and the signal). */
const stoppedStatus = 130;
/** Milliseconds between two lines that say how far it is. */
const progressEvery = 5000;

interface NamedSide extends ComparedInstrument {
  path: string;
}

/** `zonewright compare`: whether two instruments sound alike, and where and why not; status 1 where they do not. */
export async function compare(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    tolerance: 'text',
    recording: 'text',
    notes: 'text',
    'no-cache': 'switch',
    format: ['text', 'json', 'markdown', 'html'],
    ...tableOptions,
    ...fontOptions,
  });
  const { recording } = options;
  const [first, second, ...more] = paths;
  if (recording !== undefined) {
    if (first === undefined || second !== undefined)
      throw new CommandError('compare takes one instrument with --recording');
    return compareWithRecording(terminal, first, { ...options, recording });
  }
  if (options.notes !== undefined) throw new CommandError('--notes needs --recording');
  if (first === undefined || second === undefined || more.length > 0)
    throw new CommandError('compare takes two instruments');
  const toleranceDb = options.tolerance === undefined ? usualToleranceDb : Number(options.tolerance);
  if (!(toleranceDb <= 0) || options.tolerance?.trim() === '')
    throw new CommandError(
      `--tolerance takes a number of dB, 0 or less, such as -60, not "${options.tolerance}"`,
    );
  const sides = [await sideOf(terminal, first, options), await sideOf(terminal, second, options)];
  const [a, b] = sides;
  try {
    const comparison = await compared(terminal, a, b, toleranceDb, !switches.has('no-cache'));
    const told: ComparisonTold = {
      terminal,
      names: [nameOf(first), nameOf(second)],
      instruments: [a.instrument, b.instrument],
      comparison,
      toleranceDb,
    };
    await terminal.out(await toldAs(options.format, told, [a, b]));
    return comparison.differences.length === 0 ? 0 : 1;
  } catch (error) {
    if (!(error instanceof Error && error.name === 'AbortError')) throw error;
    terminal.error('zonewright: stopped; what was compared so far is remembered\n');
    return stoppedStatus;
  } finally {
    for (const { samples } of sides) await samples.close();
  }
}

/** Compares in threads where there are some, with what was measured before. */
async function compared(
  terminal: Terminal,
  a: NamedSide,
  b: NamedSide,
  toleranceDb: number,
  remembers: boolean,
): Promise<Comparison> {
  const options = { toleranceDb, sampleRate, seed: 0 };
  const sent = ({ program, playable, paths }: ComparedInstrument) => ({ program, playable, paths });
  const measure = terminal.comparing?.threads({ a: sent(a), b: sent(b), options });
  const signal = terminal.comparing?.stopped();
  const storage = remembers ? terminal.measuring?.storage() : undefined;
  const memory =
    storage && (await measureMemory(storage, `compared ${a.path} ${b.path}`, terminal.files, sumOf));
  try {
    return await compareInstruments(
      a,
      b,
      {
        ...options,
        progress: progressTo(terminal),
        ...(measure && { measure }),
        ...(signal && { signal }),
        ...(memory && { memory }),
      },
      terminal.files,
    );
  } finally {
    await memory?.keep();
    await measure?.close();
  }
}

async function toldAs(
  format: string | undefined,
  told: ComparisonTold,
  sides: readonly [ComparedInstrument, ComparedInstrument],
): Promise<string> {
  if (format === 'json') return comparisonJson(told);
  if (format === 'html') {
    const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');
    return pageOfComparison({ worded: wordedOf(told), names: told.names, sides, sampleRate, base64 });
  }
  return comparisonText(told, format === 'markdown');
}

async function sideOf(
  terminal: Terminal,
  name: string,
  options: Readonly<Record<string, string | undefined>>,
): Promise<NamedSide> {
  const input = await readInputOrFolder(terminal, name, options);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  return { path: input.path, ...(await soundInput(terminal, input, instrument)) };
}

function progressTo(terminal: Terminal): (done: number, all: number) => void {
  let told = Date.now();
  return (done, all) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${done} of ${all} rendered and compared\n`);
  };
}
