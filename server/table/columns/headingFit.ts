import type { ColumnMeaning } from '../../trade/meaning';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';

/** Whether what stands in a column can be what its heading says. */
export type Fit = 'yes' | 'unsure' | 'no';

/** Share of cells from which on a column is taken to be of one kind. */
const most = 0.5;

/**
 * Judges a heading by the cells below it. `otherFiles` tells whether another column of the table holds names of
 * audio files. An empty column contradicts nothing.
 */
export function fitOf(meaning: ColumnMeaning, contents: ColumnContents, otherFiles: boolean): Fit {
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
    case 'key':
    case 'lokey':
    case 'hikey':
    case 'key_range':
      return graded(contents.keys / contents.filled + shareOf(contents, 'note-range', 'number-range'));
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
      return contents.units.has('cents') || contents.units.has('semitones') ? 'no' : graded(numbers);
    case 'tune':
    case 'transpose':
      return contents.units.has('dB') ? 'no' : graded(numbers);
    case 'pan':
      return contents.units.has('dB') || contents.units.has('cents')
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
    case 'seq_length':
      if (files + notes >= most) return 'no';
      return contents.greatest > 999 ? 'no' : numbers >= most ? 'yes' : 'unsure';
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

function graded(share: number): Fit {
  return share >= most ? 'yes' : share >= 0.2 ? 'unsure' : 'no';
}
