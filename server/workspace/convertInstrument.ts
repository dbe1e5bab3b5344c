import type { Instrument } from '../model/instrument';
import type { Notation, WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import type { OutputAccount } from '../model/output';
import { assumedOnReading, lostOnReading } from '../model/writing/readingNotes';
import { unreadValues } from '../vocabulary/read/unreadValues';
import type { Vocabulary } from '../vocabulary/vocabulary';
import { readBack } from './readBack';
import { sampleFactsIn } from './samples/sampleFactsIn';
import type { SampleStore } from './samples/sampleStore';

/** Rounds of writing while what is known of samples grows. */
const mostRounds = 20;

/** What is converted. */
export interface ConversionSource {
  instrument: Instrument;
  /** The vocabulary that it was read by, where it was. */
  vocabulary?: Vocabulary | undefined;
  /** The folder that its paths start from; `undefined` for a text that is no file. */
  folder: string | undefined;
  /** What was noted on reading beside the instrument itself. */
  notes?: readonly ConversionNote[];
}

/** A text with an account of every value. */
export interface Conversion {
  text: string;
  /** What was assumed, written in another way, left out or not used, in the order of the instrument's text. */
  notes: ConversionNote[];
  /** How many values were carried over exactly. */
  kept: number;
}

/** Writes an instrument in another notation, fetching what that needs to know of samples, and accounts for every value of its text. */
export async function convertInstrument(
  source: ConversionSource,
  notation: Notation,
  options: Omit<WriteOptions, 'sampleFacts' | 'readingNotes'>,
  samples: SampleStore,
): Promise<Conversion> {
  const { instrument, folder } = source;
  const readingNotes = assumedOnReading(instrument);
  const write = (): Written =>
    notation.write(instrument, {
      ...options,
      readingNotes,
      ...(folder !== undefined && { sampleFacts: sampleFactsIn(samples, folder) }),
    });
  let written = write();
  for (let round = 0; samples.wants && round < mostRounds; round++) {
    await samples.loadWanted();
    written = write();
  }
  const assumed = [...readingNotes.values()].flat();
  const kept = written.kept ?? instrument.parameters.count;
  const account = wholeAccount(source, { notes: written.notes, kept }, assumed);
  // A notation with places for some values alone may take one for another.
  const misread = notation.parameters
    ? readBack(
        instrument,
        notation,
        { text: written.text, notes: account.notes },
        options.move !== undefined,
        folder === undefined ? undefined : sampleFactsIn(samples, folder),
      )
    : [];
  return {
    text: written.text,
    notes: [...account.notes, ...misread],
    kept: Math.max(0, account.kept - misread.length),
  };
}

/** What a writer says of an instrument, with what was said on reading it, in the order of its text. */
export function wholeAccount(
  { instrument, vocabulary, notes: earlier = [] }: ConversionSource,
  written: OutputAccount,
  assumed: readonly ConversionNote[] = [...assumedOnReading(instrument).values()].flat(),
): OutputAccount {
  const notes = [
    ...earlier,
    ...assumed,
    ...lostOnReading(instrument),
    ...(vocabulary ? unreadValues(instrument, vocabulary) : []),
    ...written.notes,
  ].sort((a, b) => a.source - b.source || a.start - b.start);
  // A writer that does not place the notes on reading has counted their values as kept.
  const uncounted = assumed.filter((note) => !note.written).length;
  return { notes, kept: Math.max(0, written.kept - uncounted) };
}
