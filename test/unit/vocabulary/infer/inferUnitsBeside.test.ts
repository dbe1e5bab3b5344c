import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** A box of regions, each with something of its own inside. */
function box(...inner: string[]): string {
  const items = inner.map(
    (one, at) => `<item file="i${at}.wav" low="${40 + 5 * at}" high="${44 + 5 * at}">${one}</item>`,
  );
  return `<box>${items.join('')}</box>`;
}

describe('a unit that stands beside each number', () => {
  it('counts for that number: cents, semitones and octaves', () => {
    const bend = (unit: string, number: string) => `<retune unit="${unit}">${number}</retune>`;
    const text = box(
      bend('cent', '-7'),
      bend('semitone', '0.25'),
      bend('octave', '-1'),
      bend('cents', '12.5'),
    );
    expect(valuesIn(text, 'tune')).toEqual(['-7', '25', '-1200', '12.5']);
  });

  it('may have an attribute beside that of the number, of any name', () => {
    const bend = (unit: string, number: string) => `<tuning in="${unit}" by="${number}"/>`;
    expect(valuesIn(box(bend('cents', '30'), bend('semitones', '0.5'), bend('cents', '-4')), 'tune')).toEqual(
      ['30', '50', '-4'],
    );
    const level = (unit: string, number: string) => `<volume as="${unit}">${number}</volume>`;
    expect(valuesIn(box(level('dB', '-6'), level('percent', '50'), level('dB', '-2')), 'volume')).toEqual([
      '-6',
      '-6.0206',
      '-2',
    ]);
  });

  it('counts whole octaves and cents of what is called a transposition', () => {
    const by = (unit: string, number: string) => `<transpose unit="${unit}">${number}</transpose>`;
    expect(valuesIn(box(by('octaves', '1'), by('octaves', '-2')), 'transpose')).toEqual(['12', '-24']);
    expect(valuesIn(box(by('cents', '40'), by('cents', '-15')), 'tune')).toEqual(['40', '-15']);
  });

  it('counts too where the name of the number says nothing', () => {
    const by = (unit: string, number: string) => `<bits><tune by="${number}" per="${unit}"/></bits>`;
    expect(valuesIn(box(by('semitone', '0.5'), by('cent', '20'), by('octave', '1')), 'tune')).toEqual([
      '50',
      '20',
      '1200',
    ]);
  });

  it('is told where nobody knows it and the numbers are read all the same', () => {
    const level = (number: string) => `<level unit="1/100 dB">${number}</level>`;
    const told = readInferred(box(level('-50'), level('-120'))).decisions.map(({ message }) => message);
    expect(told.join()).toContain('The unit "1/100 dB" in "level/@unit" of <item> is not known');
  });

  it('leaves out what is in a unit that nobody knows, and tells', () => {
    const bend = (unit: string, number: string) => `<tune unit="${unit}">${number}</tune>`;
    const text = box(bend('cents', '30'), bend('furlongs', '3'), bend('cents', '-4'));
    expect(valuesIn(text, 'tune')).toEqual(['30', '-', '-4']);
    expect(readInferred(text).unread.join()).toContain('furlongs');
  });
});

describe('a unit that the text names as a part of another one', () => {
  const levels = (says: string, place = 'gain') =>
    `<box><!-- ${says} -->${[-4, -20, 6].map((one, at) => `<item file="i${at}.wav" low="${40 + 5 * at}" high="${44 + 5 * at}" ${place}="${one}"/>`).join('')}</box>`;

  it.each([
    ['gain is in hundredths of a dB'],
    ['levels are given as hundredths of a decibel'],
    ['gain in Hundertstel dB'],
    ['gain en centièmes de dB'],
    ['gain: 1/100 dB'],
  ])('makes small numbers smaller still: %s', (says) => {
    expect(valuesIn(levels(says), 'volume')).toEqual(['-0.04', '-0.2', '0.06']);
  });

  it('turns an attenuation', () => {
    const text = levels('pad is in hundredths of a dB', 'pad').replaceAll('="-', '="');
    expect(valuesIn(text, 'volume')).toEqual(['-0.04', '-0.2', '-0.06']);
  });

  it('counts tunings and times too', () => {
    expect(valuesIn(levels('detune is in tenths of a cent', 'detune'), 'tune')).toEqual([
      '-0.4',
      '-2',
      '0.6',
    ]);
    const times = levels('release: hundredths of a second', 'release').replaceAll('="-', '="');
    expect(valuesIn(times, 'ampeg_release')).toEqual(['0.04', '0.2', '0.06']);
  });

  it('says nothing of another place', () => {
    const text = levels('detune is in hundredths of a semitone; trim is in hundredths of a dB').replace(
      /gain/g,
      'volume',
    );
    expect(valuesIn(text.replaceAll('/>', ' trim="50"/>'), 'volume')[0]).not.toBe('-0.04');
  });
});
