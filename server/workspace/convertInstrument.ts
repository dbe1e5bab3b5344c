import type { Instrument } from '../model/instrument';
import type { Notation, WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import type { OutputAccount } from '../model/output';
import { OutputError } from '../model/output';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { assumedOnReading, lostOnReading } from '../model/writing/readingNotes';
import { unsaidNotes } from '../playing/plain/unsaidRegions';
import { unreadValuesInSteps } from '../vocabulary/read/unreadValues';
import type { Vocabulary } from '../vocabulary/vocabulary';
import { readBack, unsaidIn } from './readBack';
import { sampleFactsIn } from './samples/sampleFactsIn';
import type { SampleStore } from './samples/sampleStore';
import { takeSteps } from './takeSteps';

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
export interface Conversion extends Pick<Written, 'text' | 'pieces'> {
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
  // Before the text is written, so that what either takes is not needed at one time.
  const lost = await takeSteps(lostBefore(source));
  const write = (leaveOut?: ReadonlySet<number>): Promise<Written> =>
    takeSteps(
      notation.writeInSteps(instrument, {
        ...options,
        ...(leaveOut && { leaveOut }),
        readingNotes,
        ...(folder !== undefined && { sampleFacts: sampleFactsIn(samples, folder) }),
      }),
    );
  let written = await write();
  for (let round = 0; samples.wants && round < mostRounds; round++) {
    await samples.loadWanted();
    written = await write();
  }
  const sampleFacts = folder === undefined ? undefined : sampleFactsIn(samples, folder);
  // A notation with places for some values alone may say of a region nothing but its keys, though it sounds at other times.
  const unsaid = notation.parameters ? unsaidIn(instrument, notation, written.text, sampleFacts) : new Map();
  const leftOut = new Set(unsaid.keys());
  if (leftOut.size === instrument.regions.length && leftOut.size > 0) {
    const [first] = unsaidNotes(instrument, unsaid, 'this notation');
    throw new OutputError(`no region can be said in this notation; the first reason: ${first.message}`);
  }
  if (leftOut.size > 0) written = await write(leftOut);
  const assumed = [...readingNotes.values()].flat();
  const kept = written.kept ?? instrument.parameters.count;
  const account = wholeAccount(
    source,
    { notes: [...written.notes, ...unsaidNotes(instrument, unsaid, 'this notation')], kept },
    assumed,
    lost,
  );
  // A notation with places for some values alone may take one for another.
  const misread = notation.parameters
    ? readBack(
        instrument,
        notation,
        { text: written.text, notes: account.notes },
        options.move !== undefined,
        sampleFacts,
        leftOut,
      )
    : [];
  return {
    get text() {
      return written.text;
    },
    ...(written.pieces && { pieces: written.pieces }),
    notes: [...account.notes, ...misread],
    kept: Math.max(0, account.kept - misread.length),
  };
}

/** What a writer says of an instrument, with what was said on reading it, in the order of its text. */
export function wholeAccount(
  source: ConversionSource,
  written: OutputAccount,
  assumed: readonly ConversionNote[] = [...assumedOnReading(source.instrument).values()].flat(),
  lost: readonly ConversionNote[] = finish(lostBefore(source)),
): OutputAccount {
  const notes = [...(source.notes ?? []), ...assumed, ...lost, ...written.notes].sort(
    (a, b) => a.source - b.source || a.start - b.start,
  );
  // A writer that does not place the notes on reading has counted their values as kept.
  const uncounted = assumed.filter((note) => !note.written).length;
  return { notes, kept: Math.max(0, written.kept - uncounted) };
}

/** Values of a text that are lost before anything is written. */
function* lostBefore({ instrument, vocabulary }: ConversionSource): Steps<ConversionNote[]> {
  const unread = vocabulary ? yield* unreadValuesInSteps(instrument, vocabulary) : [];
  return [...lostOnReading(instrument), ...unread];
}
