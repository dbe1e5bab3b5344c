import { describe, expect, it } from 'vitest';
import { lackOfZoneTable } from '../../../server/table/looksLikeZoneTable';
import { notesOf, regions } from './tableRegions';

const list = [
  'har_a.wav   40-44   root 42',
  'har_b.wav   45-49   root 47',
  'har_c.wav   50-55   root 52',
].join('\n');
const behind = (...lines: string[]) => `${list}\n\n${lines.join('\n')}\n`;
const keys = (text: string) => regions(text).map((one) => `${one.lokey}-${one.hikey} ${one.pitch_keycenter}`);
const usual = ['40-44 42', '45-49 47', '50-55 52'];

describe('a sentence behind a list that speaks of all zones but some', () => {
  it.each([
    'All of them at -5 dB, except har_b.wav, that one at -2 dB.',
    'Alle auf -5 dB, außer har_b.wav (das auf -2 dB).',
    'Toutes à -5 dB, sauf har_b.wav à -2 dB.',
    'Todas a -5 dB, excepto har_b.wav, a -2 dB.',
  ])('gives each its level: %s', (sentence) => {
    const text = behind(sentence);
    expect(lackOfZoneTable(text)).toBeUndefined();
    expect(regions(text).map(({ volume }) => volume)).toEqual(['-5', '-2', '-5']);
    expect(keys(text)).toEqual(usual);
    expect(notesOf(text).join('\n')).toMatch(/volume=-5 is written for all zones but/);
  });

  it('leaves those out of which it says nothing more', () => {
    expect(regions(behind('All zones at -5 dB, except har_c.wav.')).map(({ volume }) => volume)).toEqual([
      '-5',
      '-5',
      undefined,
    ]);
  });

  it.each([
    'All the bright ones at -5 dB, except har_b.wav.',
    'All of them at -5 dB, except har_b.wav, which is 7 cents flat.',
  ])('is not done where it stays open: %s', (sentence) => {
    const text = behind(sentence);
    expect(regions(text).map(({ volume }) => volume)).toEqual([undefined, undefined, undefined]);
    expect(notesOf(text).join('\n')).toMatch(/har_b\.wav/);
  });
});

describe('a sentence about everything', () => {
  it.each([
    'And tune everything +8 cents, please, it is an old one.',
    'Bitte alles +8 Cent stimmen.',
    'Accorder tout +8 cents.',
  ])('counts for all zones: %s', (sentence) => {
    expect(regions(behind(sentence)).map(({ tune }) => tune)).toEqual(['8', '8', '8']);
  });

  it.each(['Everything is +8 cents too sharp.', 'Everything above the break +8 cents.'])(
    'is left alone: %s',
    (sentence) => {
      expect(regions(behind(sentence)).map(({ tune }) => tune)).toEqual([undefined, undefined, undefined]);
    },
  );
});

describe('a sentence behind a list that corrects a key', () => {
  it.each([
    ['Correction: har_c.wav goes up to 59, not 55.', ['40-44 42', '45-49 47', '50-59 52']],
    ['har_c.wav reicht bis 59 statt 55.', ['40-44 42', '45-49 47', '50-59 52']],
    ['Correction: har_a.wav starts at 36 instead of 40.', ['36-44 42', '45-49 47', '50-55 52']],
    ['Correction: har_b.wav root 46, not 47.', ['40-44 42', '45-49 46', '50-55 52']],
  ])('finds it by the old one: %s', (sentence, expected) => {
    expect(keys(behind(sentence))).toEqual(expected);
    expect(notesOf(behind(sentence)).join('\n')).toMatch(/is taken for a correction/);
  });

  it.each([
    'Correction: har_c.wav goes to 59.',
    'Correction: har_c.wav is 59, not 58.',
    'har_a.wav was made in a church.',
  ])('is told of where it names none: %s', (sentence) => {
    expect(keys(behind(sentence))).toEqual(usual);
    expect(notesOf(behind(sentence)).join('\n')).toMatch(/is not understood/);
  });
});
