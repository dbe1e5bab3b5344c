import type { ComparedInstrument } from '../../comparison/compareInstruments';
import { compareInstruments } from '../../comparison/compareInstruments';
import { nameOf } from '../../model/paths';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInput } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { soundInput } from '../input/soundInput';
import { comparisonHtml } from '../output/comparisonHtml';
import type { ComparisonTold } from '../output/comparisonOutput';
import { comparisonJson, comparisonText } from '../output/comparisonOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';
import { compareWithRecording } from './compareWithRecording';

/** Differences of up to so many dB are none: below the steps of 16 bits at full scale, −90.3 dB. */
const usualToleranceDb = -90;
const sampleRate = 44100;
/** Milliseconds between two lines that say how far it is. */
const progressEvery = 5000;

/** `zonewright compare`: whether two instruments sound alike, and where and why not; status 1 where they do not. */
export async function compare(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options } = readWords(args, {
    tolerance: 'text',
    recording: 'text',
    notes: 'text',
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
  if (options.notes !== undefined) throw new CommandError('--notes goes with --recording');
  if (first === undefined || second === undefined || more.length > 0)
    throw new CommandError('compare takes two instruments');
  const toleranceDb = options.tolerance === undefined ? usualToleranceDb : Number(options.tolerance);
  if (!(toleranceDb <= 0) || options.tolerance?.trim() === '')
    throw new CommandError(`--tolerance takes dB of 0 or less, not "${options.tolerance}"`);
  const sides = [await sideOf(terminal, first, options), await sideOf(terminal, second, options)];
  const [a, b] = sides;
  try {
    const progress = progressTo(terminal);
    const comparison = await compareInstruments(
      a,
      b,
      { toleranceDb, sampleRate, seed: 0, progress },
      terminal.files,
    );
    const told: ComparisonTold = {
      terminal,
      names: [nameOf(first), nameOf(second)],
      instruments: [a.instrument, b.instrument],
      comparison,
      toleranceDb,
    };
    await terminal.out(await toldAs(options.format, told, [a, b]));
    return comparison.differences.length === 0 ? 0 : 1;
  } finally {
    for (const { samples } of sides) await samples.close();
  }
}

async function toldAs(
  format: string | undefined,
  told: ComparisonTold,
  sides: readonly [ComparedInstrument, ComparedInstrument],
): Promise<string> {
  if (format === 'json') return comparisonJson(told);
  if (format === 'html') return comparisonHtml(told, sides, sampleRate);
  return comparisonText(told, format === 'markdown');
}

async function sideOf(
  terminal: Terminal,
  name: string,
  options: Readonly<Record<string, string | undefined>>,
): Promise<ComparedInstrument> {
  const input = await readInput(terminal, name, options);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  return { instrument, ...(await soundInput(terminal, input, instrument)) };
}

function progressTo(terminal: Terminal): (done: number, all: number) => void {
  let told = Date.now();
  return (done, all) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${done} of ${all} notes compared\n`);
  };
}
