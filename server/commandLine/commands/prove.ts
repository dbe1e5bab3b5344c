import { compareInstruments } from '../../comparison/compareInstruments';
import { explainedBy } from '../../comparison/explainedBy';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { byCount, counted } from '../../model/wording/counted';
import type { Input } from '../input/input';
import { folderOfInput, readInput } from '../input/input';
import { readAny } from '../input/readAny';
import { soundInput } from '../input/soundInput';
import { comparisonText } from '../output/comparisonOutput';
import type { Terminal } from '../terminal';

/** What a conversion must null to: below the steps of 16 bits at full scale, −90.3 dB. */
const toleranceDb = -90;
const sampleRate = 44100;

/** A conversion that is to be proved. */
export interface Proof {
  input: Input;
  instrument: Instrument;
  notes: readonly ConversionNote[];
  /** The file that was written, as the command names it. */
  output: string;
}

/**
 * Reads what a conversion wrote, plays both and tells on standard error what came of it; answers whether all differs only
 * where a note says that something was approximated or dropped.
 */
export async function prove(
  terminal: Terminal,
  { input, instrument, notes, output }: Proof,
): Promise<boolean> {
  const written = await readInput(terminal, output);
  const { instrument: result } = await readAny(terminal, written, {}, folderOfInput(written));
  const a = await soundInput(terminal, input, instrument);
  const b = await soundInput(terminal, written, result);
  try {
    const comparison = await compareInstruments(a, b, { toleranceDb, sampleRate, seed: 0 }, terminal.files);
    const isExplained = explainedBy(instrument, notes);
    const unexplained = comparison.differences.filter((one) => !isExplained(one));
    const explained = comparison.differences.length - unexplained.length;
    if (explained > 0)
      terminal.error(
        `zonewright: ${explained} of ${counted(comparison.notes, 'note')} ${byCount(explained, 'differs', 'differ')}, and notes of the conversion say why\n`,
      );
    const told = {
      terminal,
      names: [input.name, output] as const,
      instruments: [instrument, result] as const,
      comparison: { ...comparison, differences: unexplained },
      toleranceDb,
    };
    // What is told on standard error is told line by line.
    for (const line of comparisonText(told, false).trimEnd().split('\n')) terminal.error(`${line}\n`);
    return unexplained.length === 0;
  } finally {
    await a.samples.close();
    await b.samples.close();
  }
}
