import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';

function valuesOf(text: string) {
  const instrument = readSfz(text, { path: 'a.sfz' });
  return effectiveValues(instrument, instrument.regions[0]);
}

describe('values in force', () => {
  it('bear canonical names, with numbers as the text writes them', () => {
    expect(valuesOf('<region> loopstart=1 lfo03_freq=2 EG01_time2=3 pitch=4')).toEqual({
      loop_start: 1,
      lfo03_freq: 2,
      eg01_time2: 3,
      tune: 4,
    });
  });

  it('are the last where one opcode is written in two ways', () => {
    expect(valuesOf('<group> lfo03_freq=2 <region> lfo3_freq=5')).toEqual({ lfo3_freq: 5 });
  });

  it('keep text that is no number', () => {
    expect(valuesOf('<region> lokey=x tune=1x region_label=12 sample=')).toEqual({
      lokey: 'x',
      tune: '1x',
      region_label: '12',
      sample: '',
    });
  });
});
