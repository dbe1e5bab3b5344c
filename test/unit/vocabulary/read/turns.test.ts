import { describe, expect, it } from 'vitest';
import { readSfz } from '../../../../server/sfz/read';
import { turnCounts } from '../../../../server/vocabulary/read/turns';

/** Turns by the text of the header that has the position: `position: turns`. */
function turns(text: string): string[] {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const position = instrument.names.idOf('seq_position');
  return [...turnCounts(instrument)].map(
    ([header, { count }]) => `${instrument.valueText(instrument.effective(header, position))}: ${count}`,
  );
}

/** sfzformat.com: seq_length is how many turns there are; where nobody says so, the greatest position that occurs tells. */
describe('the turns of a round robin', () => {
  it.each([
    ['<region> key=60 seq_position=1 <region> key=60 seq_position=2', ['1: 2', '2: 2']],
    ['<region> key=60 seq_position=3 <region> key=60 seq_position=1', ['3: 3', '1: 3']],
    ['<region> key=60 seq_position=1', []],
    ['<region> key=60', []],
    ['<region> key=60 seq_position=1 <region> key=61 seq_position=2', ['2: 2']],
    ['<region> seq_position=1 hivel=63 <region> seq_position=2 lovel=64', ['2: 2']],
    ['<region> seq_position=1 <region> seq_position=2 hivel=64', ['2: 2']],
    ['<region> seq_position=1 <region> seq_position=2 lokey=1', ['2: 2']],
    ['<region> seq_position=1 <region> seq_position=2 hikey=1', ['2: 2']],
    ['<region> seq_position=1 <region> seq_position=2 trigger=release', ['2: 2']],
    ['<region> lokey=1 hikey=11 seq_position=1 <region> lokey=1 hikey=1 lovel=11 seq_position=2', ['2: 2']],
    ['<region> seq_position=0 <region> seq_position=2', ['2: 2']],
    ['<region> seq_position=x <region> seq_position=2', ['2: 2']],
    // What says its length itself is left as it is.
    ['<region> seq_length=4 seq_position=1 <region> seq_position=2', ['2: 2']],
    ['<group> seq_length=4 <region> seq_position=1 <region> seq_position=2', []],
    // Each position is a group of its own.
    ['<group> seq_position=1 <region> key=60 <group> seq_position=2 <region> key=60', ['1: 2', '2: 2']],
    // Groups that hold several positions count by themselves.
    [
      '<group> <region> seq_position=1 <region> seq_position=2 <group> <region> seq_position=1 <region> seq_position=2 <region> seq_position=3',
      ['1: 2', '2: 2', '1: 3', '2: 3', '3: 3'],
    ],
    // One header for regions of several keys goes by the most.
    [
      '<group> seq_position=1 <region> key=60 <region> key=61 <group> <region> key=61 seq_position=2',
      ['1: 2', '2: 2'],
    ],
    [
      '<group> seq_position=1 <region> key=61 <region> key=60 <group> <region> key=61 seq_position=2',
      ['1: 2', '2: 2'],
    ],
  ])('%s', (text, expected) => {
    expect(turns(text)).toEqual(expected);
  });
});
