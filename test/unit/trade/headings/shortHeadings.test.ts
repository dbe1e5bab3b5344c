import { describe, expect, it } from 'vitest';
import { readHeading } from '../../../../server/trade/headings/headings';

const meaning = (text: string) => readHeading(text)?.meaning;

describe('headings that end in a dot', () => {
  it.each([
    ['Lautst.', 'volume'],
    ['Lautst. (dB)', 'volume'],
    ['Anschl.', 'velocity_range'],
    ['Grundt.', 'pitch_keycenter'],
    ['Vel.', 'velocity_range'],
    ['Feinst.', 'tune'],
  ])('%s is the beginning of a word: %s', (text, expected) => expect(meaning(text)).toBe(expected));

  it('leave open what begins several words', () => expect(meaning('Verst.')).toBeUndefined());
});

describe('headings of the last and the first frame', () => {
  it.each([
    'last frame',
    'final frame',
    'End frame',
    'letzter Frame',
    'dernière trame',
    'último frame',
    'ultimo frame',
    'laatste frame',
    'sista frame',
    'viimeinen kehys',
    'ostatnia ramka',
    'poslední rámec',
    'utolsó képkocka',
    'son kare',
    'последний кадр',
    'останній кадр',
    'τελευταίο καρέ',
    '最終フレーム',
    '最后一帧',
    '마지막 프레임',
  ])('%s is the end', (text) => expect(meaning(text)).toBe('end'));

  it.each(['first frame', 'erster Frame', 'première trame', 'primer frame', 'eerste frame'])(
    '%s is the start',
    (text) => expect(meaning(text)).toBe('offset'),
  );

  it('of a loop is its end', () => expect(meaning('Loop last frame')).toBe('loop_end'));
});
