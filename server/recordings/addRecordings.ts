import { readEdited } from '../model/editing/changedInstrument';
import { effectiveValues } from '../model/effectiveValues';
import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import { noteNameOf } from '../model/keys';
import type { Notation } from '../model/notation';
import { keyWritingOf } from '../model/style/keySpeller';
import { lineEndAt } from '../model/text/textLayout';
import { counted } from '../model/wording/counted';
import { noteReadings } from './noteNames';
import type { Placed } from './placed';
import { placedAt } from './placed';
import { readRecordings } from './readRecordings';
import { placedInstrument } from './recordedInstrument';
import type { Recording } from './recording';
import { findRoots } from './roots';

/** Recordings that are to be added to an instrument. */
export interface RecordingsToAdd {
  recordings: readonly Recording[];
  /** The path of a recording as it is written where `defaultPath` stands before it. */
  samplePath(path: string, defaultPath: string): string;
  /** The key that a recording without a root of its own gets. */
  key?: number | undefined;
  /** The region behind which a single recording goes, by its header; else all go to the end, in a group of their own. */
  after?: number | undefined;
}

/** Edits that add recordings, and what was decided, as sentences. */
export interface AddedRecordings {
  edits: TextEdit[];
  told: string[];
}

/**
 * Adds recordings to an instrument: one plays on its root key, by its pitch, its name, the file itself or else `key`; several are
 * placed as a folder of recordings is. All other regions stay as they are: what comes out is read again.
 */
export function addRecordings(
  notation: Notation,
  instrument: Instrument,
  toAdd: RecordingsToAdd,
): AddedRecordings | { refusal: string } {
  const { recordings, after } = toAdd;
  const placing = recordings.length === 1 ? placeOne(recordings[0], toAdd.key) : placeAll(recordings);
  if ('refusal' in placing) return placing;
  const { placed, told } = placing;
  const isInGroup = recordings.length === 1 && after !== undefined && instrument.headerSource(after) === 0;
  const offset = isInGroup ? endOf(instrument, after) : endOfRegions(instrument);
  const { defaultPath } = instrument.controlAt(0, offset);
  const made = placedInstrument('', recordings, placed, {
    samplePath: (path) => toAdd.samplePath(path, defaultPath),
    keyText: keyWritingOf(instrument),
    isApart: !isInGroup && instrument.regions.length > 0,
  });
  const { edits } = notation.edit(instrument, { kind: 'insert', offset, instrument: made.instrument });
  const position = isInGroup ? instrument.regionNumber(after) + 1 : instrument.regions.length;
  if (!isAdded(instrument, readEdited(notation, instrument, edits), position, made.instrument))
    return { refusal: unwritable };
  return { edits, told };
}

const unwritable =
  'This would change something else as well, so the text was left as it is. Write the region in the text.';

type Placing = { placed: Placed[]; told: string[] } | { refusal: string };

function placeOne(recording: Recording, key: number | undefined): Placing {
  const { path } = recording;
  const root = findRoots([recording]).roots[0];
  const named = root ? undefined : noteReadings([path])[0]?.keys[0];
  const found = root?.key ?? named ?? key;
  if (found === undefined)
    return { refusal: `The root key of "${path}" is not known. Drop it on the key that it is for.` };
  const from = root
    ? because[root.from]
    : named === undefined
      ? 'the key it was dropped on, because its root key is not known'
      : because.name;
  const placed = placedAt(recording, root ?? { key: found, tuneCents: 0 });
  return { placed: [placed], told: [`"${path}" is at ${noteNameOf(found)}, ${from}.`] };
}

const because = {
  pitch: 'which is the pitch that it sounds',
  name: 'as its name says',
  file: 'as the file itself says',
};

function placeAll(recordings: readonly Recording[]): Placing {
  const { placed, leftOut, notes } = readRecordings(recordings);
  if (placed.length === 0)
    return { refusal: 'Neither the names nor the sound of these files say which notes they are.' };
  const left = leftOut.map(({ path, because: why }) => `"${path}" is left out: ${why}.`);
  return { placed, told: [`${counted(placed.length, 'recording')} added.`, ...left, ...notes] };
}

function endOf(instrument: Instrument, region: number): number {
  return lineEndAt(instrument.sources[0].text, instrument.bodySpan(region).end);
}

/** Behind the last region of the main file, else its end. */
function endOfRegions(instrument: Instrument): number {
  const last = instrument.regions.findLast((region) => instrument.headerSource(region) === 0);
  return last === undefined ? instrument.sources[0].text.length : endOf(instrument, last);
}

/** Whether the regions that were made stand at a position, on their keys, and all others are as they were. */
function isAdded(before: Instrument, after: Instrument, position: number, made: Instrument): boolean {
  const count = made.regions.length;
  if (after.regions.length !== before.regions.length + count) return false;
  for (let at = 0; at < count; at++) {
    const [wanted, region] = [made.regions[at], after.regions[position + at]];
    if (after.lowKey[region] !== made.lowKey[wanted] || after.highKey[region] !== made.highKey[wanted])
      return false;
    if (after.rootKey(region) !== made.rootKey(wanted)) return false;
  }
  return before.regions.every((region, at) => {
    const now = after.regions[at < position ? at : at + count];
    return JSON.stringify(effectiveValues(before, region)) === JSON.stringify(effectiveValues(after, now));
  });
}
