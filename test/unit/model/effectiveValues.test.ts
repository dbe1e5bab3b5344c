import { describe, expect, it } from 'vitest';
import { effectiveValues, playedKey } from '../../../server/model/effectiveValues';
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

  it('take an opcode that nobody knows as its text has it', () => {
    expect(valuesOf('<region> warmth=3 tone=dark')).toEqual({ warmth: 3, tone: 'dark' });
  });

  // A word that an opcode can be is no number, even where it looks like one.
  it('keep choices as text', () => {
    expect(valuesOf('<region> loop_mode=1')).toEqual({ loop_mode: '1' });
  });

  it('have samples after their default path, with slashes (sfzformat.com, default_path: a prefix)', () => {
    expect(valuesOf('<control> default_path=Tuba\\ <region> sample=soft\\a.wav')).toEqual({
      sample: 'Tuba/soft/a.wav',
    });
  });
});

/** sfzformat.com, note_offset and octave_offset: they are added to the keys of the instrument; keys end at 0 and 127 (MIDI 1.0). */
describe('keys in force', () => {
  it('are moved by notes and by octaves', () => {
    expect(valuesOf('<control> note_offset=2 octave_offset=-1 <region> key=c4')).toEqual({
      lokey: 50,
      hikey: 50,
      pitch_keycenter: 50,
    });
    expect(valuesOf('<region> key=c4')).toEqual({ lokey: 60, hikey: 60, pitch_keycenter: 60 });
  });

  it('stay on the keyboard', () => {
    expect(valuesOf('<control> note_offset=12 <region> lokey=0 hikey=120')).toEqual({
      lokey: 12,
      hikey: 127,
    });
    expect(valuesOf('<control> note_offset=-12 <region> lokey=5 hikey=30')).toEqual({ lokey: 0, hikey: 18 });
  });

  it('of -1, which switches keys off, are not moved', () => {
    expect(valuesOf('<control> note_offset=12 <region> hikey=-1')).toEqual({ hikey: -1 });
  });

  it('around which a filter or a level follows are not moved', () => {
    expect(valuesOf('<control> note_offset=12 <region> fil_keycenter=60 amp_keycenter=61')).toEqual({
      fil_keycenter: 60,
      amp_keycenter: 61,
    });
  });

  it.each(['key', 'lokey', 'hikey', 'pitch_keycenter', 'sw_last', 'xfin_lokey', 'xfin_hikey', 'xfout_lokey'])(
    '%s is one that is played',
    (name) => expect(playedKey.test(name)).toBe(true),
  );

  it.each(['amp_keycenter', 'xkey', 'keys', 'lokeys', 'sw_', 'xf_lokey', 'xfin_key', 'axfin_hikey'])(
    '%s is none',
    (name) => expect(playedKey.test(name)).toBe(false),
  );
});
