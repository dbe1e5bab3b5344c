import type { HeadingReading } from '../../trade/headings/headings';
import type { ColumnMeaning, Unit } from '../../trade/meaning';
import type { ColumnContents } from '../columns/columnContents';
import { shareOf } from '../columns/columnContents';

/** Whether what stands in a column can be what its heading says. */
export type Fit = 'yes' | 'unsure' | 'no';

/** Share of cells from which on a column is taken to be of one kind. */
const most = 0.5;
/** Round robins have fewer turns (our choice). */
const mostTurns = 64;

/**
 * Judges a heading by the cells below it. `otherFiles` tells whether another column of the table holds names of
 * audio files. An empty column contradicts nothing.
 */
export function fitOf(
  { meaning, unit }: Pick<HeadingReading, 'meaning' | 'unit'>,
  contents: ColumnContents,
  otherFiles: boolean,
): Fit {
  if (contents.filled === 0) return 'unsure';
  return fits[meaning]({
    contents,
    unit,
    otherFiles,
    files: shareOf(contents, 'file'),
    notes: shareOf(contents, 'note', 'note-range'),
    numbers: shareOf(contents, 'number'),
  });
}

/** A column that is judged, with the shares of its cells that are names of files, note names and numbers. */
interface Judged {
  contents: ColumnContents;
  unit: Unit | undefined;
  otherFiles: boolean;
  files: number;
  notes: number;
  numbers: number;
}

type Judge = (column: Judged) => Fit;

const areKeys: Judge = ({ contents }) =>
  graded(
    (contents.keys + contents.unmarked + contents.wholes) / contents.filled +
      shareOf(contents, 'note-range', 'number-range'),
  );
const areVelocities: Judge = ({ contents, notes }) => {
  // Velocities may be portions of the loudest; 0 and 1 are keys too.
  const whole = contents.keys / contents.filled - shareOf(contents, 'note');
  const numeric = Math.max(whole, contents.portions / contents.filled + contents.bits / contents.filled);
  return notes >= most
    ? 'no'
    : graded(numeric + shareOf(contents, 'number-range') + contents.wholes / contents.filled);
};
const areNumbers: Judge = ({ numbers }) => graded(numbers);
const areLevels: Judge = ({ contents, numbers }) =>
  areIn(contents, 'cents', 'semitones') ? 'no' : graded(numbers);
const areTunings: Judge = ({ contents, numbers }) => (areIn(contents, 'dB') ? 'no' : graded(numbers));
const areSwitches: Judge = ({ contents }) =>
  shareOf(contents, 'switch') + contents.bits / contents.filled >= 0.9 ? 'yes' : 'no';
const areGroups: Judge = ({ contents, files, notes, numbers }) =>
  files + notes >= most || numbers + shareOf(contents, 'text', 'switch') < most ? 'no' : 'yes';
const areRanges: Judge = ({ contents }) => graded(shareOf(contents, 'number-range'));
const areWords: Judge = ({ files, otherFiles }) => (files >= 0.8 && !otherFiles ? 'no' : 'yes');
const areRemarks: Judge = (column) => (column.notes >= 0.8 ? 'no' : areWords(column));
const isUnsure: Judge = () => 'unsure';

/** How the cells of a column are judged by what its heading says that they are. */
const fits: Readonly<Record<ColumnMeaning, Judge>> = {
  sample: ({ contents, files, otherFiles }) => {
    if (files >= most) return 'yes';
    if (otherFiles && files < 0.1) return 'no';
    return shareOf(contents, 'text') >= most ? 'yes' : 'unsure';
  },
  pitch_keycenter: (column) =>
    column.unit === 'Hz' || column.unit === 'kHz' || areFrequencies(column.contents)
      ? graded(column.numbers)
      : areKeys(column),
  key: areKeys,
  lokey: areKeys,
  hikey: areKeys,
  key_range: areKeys,
  lovel: areVelocities,
  hivel: areVelocities,
  velocity_range: areVelocities,
  volume: areLevels,
  attenuation: areLevels,
  tune: areTunings,
  transpose: areTunings,
  deviation: areTunings,
  pan: ({ contents, numbers }) =>
    areIn(contents, 'dB', 'cents')
      ? 'no'
      : graded(numbers + shareOf(contents, 'pan') + contents.pointed / contents.filled),
  loop: ({ contents, numbers }) =>
    graded(
      shareOf(contents, 'switch', 'number-range') +
        (contents.greatest <= 1 && contents.least >= 0 ? numbers : 0),
    ),
  loop_start: areNumbers,
  loop_end: ({ contents, numbers }) => graded(numbers + contents.fileEnds / contents.filled),
  loop_length: areNumbers,
  offset: areNumbers,
  end: areNumbers,
  length: areNumbers,
  seq_position: ({ contents, files, notes, numbers }) => {
    if (files + notes >= most) return 'no';
    if (contents.turns >= contents.filled * most) return 'yes';
    if (numbers < most) return 'unsure';
    return runsFromOne(contents) ? 'yes' : 'no';
  },
  seq_length: ({ contents, files, notes, numbers }) => {
    if (files + notes >= most) return 'no';
    return contents.greatest > mostTurns ? 'no' : numbers >= most ? 'yes' : 'unsure';
  },
  trigger: ({ contents }) =>
    graded(
      (contents.triggers + shareOf(contents, 'switch') * contents.filled + contents.bits) / contents.filled,
    ),
  enabled: areSwitches,
  disabled: areSwitches,
  mute_group: areGroups,
  off_by: areGroups,
  mutes: areGroups,
  keyswitch: ({ contents }) => graded(contents.keys / contents.filled),
  key_count: ({ contents: { fractional, least, greatest }, numbers }) =>
    numbers >= most && fractional === 0 && least >= 1 && greatest <= 128 ? 'yes' : 'no',
  random: ({ contents, numbers }) =>
    graded(numbers + shareOf(contents, 'number-range') + contents.turns / contents.filled),
  fade_in: areRanges,
  fade_out: areRanges,
  envelope: ({ contents, files }) =>
    files >= most ? 'no' : graded(shareOf(contents, 'text', 'number-range', 'number')),
  delay_time: areNumbers,
  attack_time: areNumbers,
  hold_time: areNumbers,
  decay_time: areNumbers,
  sustain_level: areNumbers,
  release_time: areNumbers,
  sample_rate: ({ contents, unit, numbers }) => (numbers >= most && areRates(contents, unit) ? 'yes' : 'no'),
  group: areWords,
  comment: areRemarks,
  row_number: areRemarks,
  dynamics: isUnsure,
  unknown: isUnsure,
};

/** Whether at least half of the cells have one of some units. */
function areIn({ units, filled }: ColumnContents, ...some: Unit[]): boolean {
  return some.reduce((sum, unit) => sum + (units.get(unit) ?? 0), 0) > filled * most;
}

/** Round robin positions run from 1, or 0, without a gap (common practice). */
export function runsFromOne({ least, greatest, distinct, fractional, counts }: ColumnContents): boolean {
  const isFirst = least === 1 || least === 0;
  return (
    counts.number > 0 && isFirst && fractional === 0 && greatest <= mostTurns && greatest - least < distinct
  );
}

/** Numbers that are no keys, within the range of pitches in Hz. */
function areFrequencies({ least, greatest, fractional, negative }: ColumnContents): boolean {
  return negative === 0 && least >= 8 && greatest <= 13_300 && (fractional > 0 || greatest > 127);
}

/** Sample rates in Hz or kHz. */
function areRates({ least, greatest }: ColumnContents, unit: Unit | undefined): boolean {
  return least >= (unit === 'Hz' ? 4000 : 4) && greatest <= 768_000;
}

function graded(share: number): Fit {
  return share >= most ? 'yes' : share >= 0.2 ? 'unsure' : 'no';
}
