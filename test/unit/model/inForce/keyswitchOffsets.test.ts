import { describe, expect, it } from 'vitest';
import { keyswitchOffsets } from '../../../../server/model/inForce/keyswitchOffsets';
import { readSfz } from '../../../../server/sfz/read';

function offsets(text: string): number[] {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const offsetOf = keyswitchOffsets(instrument);
  return Array.from(instrument.regions, offsetOf);
}

/** sfzformat.com: sw_note_offset and sw_octave_offset move keyswitches besides the offsets of all keys. */
describe('what keyswitches are moved by', () => {
  it.each([
    ['<region>', 0],
    ['<control> <region>', 0],
    ['<control> sw_note_offset=2 <region>', 2],
    ['<control> sw_octave_offset=-1 <region>', -12],
    ['<control> sw_note_offset=2 sw_octave_offset=1 <region>', 14],
    ['<control> note_offset=3 sw_note_offset=2 <region>', 5],
    ['<control> octave_offset=1 <region>', 12],
    ['<control> sw_note_offset=2.9 <region>', 2],
    ['<control> sw_note_offset=-2.9 <region>', -2],
    ['<control> sw_note_offset=x sw_octave_offset=1 <region>', 12],
    ['<control> sw_note_offset=1 <control> <region>', 0],
  ])('%s: %d', (text, offset) => {
    expect(offsets(text)).toEqual([offset]);
  });

  it('goes by the last control header before', () => {
    expect(
      offsets('<region> <control> sw_note_offset=1 <region> <region> <control> sw_note_offset=2 <region>'),
    ).toEqual([0, 1, 1, 2]);
  });
});
