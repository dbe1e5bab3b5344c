import type { HeadingReading } from '../../trade/headings';
import type { Unit } from '../../trade/meaning';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';

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
  const files = shareOf(contents, 'file');
  const notes = shareOf(contents, 'note', 'note-range');
  const numbers = shareOf(contents, 'number');
  switch (meaning) {
    case 'sample':
      if (files >= most) return 'yes';
      if (otherFiles && files < 0.1) return 'no';
      return shareOf(contents, 'text') >= most ? 'yes' : 'unsure';
    case 'pitch_keycenter':
      if (unit === 'Hz' || unit === 'kHz' || areFrequencies(contents)) return graded(numbers);
      return graded(
        (contents.keys + contents.unmarked) / contents.filled +
          shareOf(contents, 'note-range', 'number-range'),
      );
    case 'key':
    case 'lokey':
    case 'hikey':
    case 'key_range':
      return graded(
        (contents.keys + contents.unmarked) / contents.filled +
          shareOf(contents, 'note-range', 'number-range'),
      );
    case 'lovel':
    case 'hivel':
    case 'velocity_range': {
      // Velocities may be portions of the loudest; 0 and 1 are keys too.
      const whole = contents.keys / contents.filled - shareOf(contents, 'note');
      const numeric = Math.max(whole, contents.portions / contents.filled + contents.bits / contents.filled);
      return notes >= most ? 'no' : graded(numeric + shareOf(contents, 'number-range'));
    }
    case 'volume':
    case 'attenuation':
      return areIn(contents, 'cents', 'semitones') ? 'no' : graded(numbers);
    case 'tune':
    case 'transpose':
      return areIn(contents, 'dB') ? 'no' : graded(numbers);
    case 'pan':
      return areIn(contents, 'dB', 'cents')
        ? 'no'
        : graded(numbers + shareOf(contents, 'pan') + contents.pointed / contents.filled);
    case 'loop':
      return graded(
        shareOf(contents, 'switch', 'number-range') +
          (contents.greatest <= 1 && contents.least >= 0 ? numbers : 0),
      );
    case 'loop_start':
    case 'loop_end':
    case 'loop_length':
    case 'offset':
    case 'end':
      return graded(numbers);
    case 'seq_position':
      if (files + notes >= most) return 'no';
      if (contents.turns >= contents.filled * most) return 'yes';
      if (numbers < most) return 'unsure';
      return runsFromOne(contents) ? 'yes' : 'no';
    case 'seq_length':
      if (files + notes >= most) return 'no';
      return contents.greatest > mostTurns ? 'no' : numbers >= most ? 'yes' : 'unsure';
    case 'trigger':
      return graded(
        (contents.triggers + shareOf(contents, 'switch') * contents.filled + contents.bits) / contents.filled,
      );
    case 'enabled':
    case 'disabled':
      return shareOf(contents, 'switch') + contents.bits / contents.filled >= 0.9 ? 'yes' : 'no';
    case 'mute_group':
    case 'off_by':
    case 'mutes':
      return files + notes >= most || numbers + shareOf(contents, 'text', 'switch') < most ? 'no' : 'yes';
    case 'keyswitch':
      return graded(contents.keys / contents.filled);
    case 'key_count':
      return numbers >= most && contents.fractional === 0 && contents.least >= 1 && contents.greatest <= 128
        ? 'yes'
        : 'no';
    case 'deviation':
      return areIn(contents, 'dB') ? 'no' : graded(numbers);
    case 'random':
      return graded(numbers + shareOf(contents, 'number-range') + contents.turns / contents.filled);
    case 'fade_in':
    case 'fade_out':
      return graded(shareOf(contents, 'number-range'));
    case 'envelope':
      return files >= most ? 'no' : graded(shareOf(contents, 'text', 'number-range', 'number'));
    case 'delay_time':
    case 'attack_time':
    case 'hold_time':
    case 'decay_time':
    case 'sustain_level':
    case 'release_time':
      return graded(numbers);
    case 'sample_rate':
      return numbers >= most && areRates(contents, unit) ? 'yes' : 'no';
    case 'group':
    case 'comment':
    case 'row_number':
      if (files >= 0.8 && !otherFiles) return 'no';
      return meaning !== 'group' && shareOf(contents, 'note', 'note-range') >= 0.8 ? 'no' : 'yes';
    case 'dynamics':
    case 'unknown':
      return 'unsure';
  }
}

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
