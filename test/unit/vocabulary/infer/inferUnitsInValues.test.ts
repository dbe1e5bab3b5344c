import { describe, expect, it } from 'vitest';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';
import { tuningForm } from '../../../../server/vocabulary/forms/tuning';
import { readInferred, valuesIn } from './inferred';

function tunings(...texts: string[]): string[] {
  const rows = texts.map((text, at) => `<s w="${at}.wav" lo="${40 + at}" hi="${40 + at}" detune="${text}"/>`);
  return valuesIn(`<set>${rows.join('')}</set>`, 'tune');
}

describe('tunings with a unit in each value', () => {
  // 100 cents to the semitone, 12 semitones to the octave (equal temperament).
  it.each([
    [
      ['+7 ct', '-1.5 st', '-1 oct'],
      ['7', '-150', '-1200'],
    ],
    [
      ['1 st', '-20 ct', '0'],
      ['100', '-20', '0'],
    ],
    [
      ['3 st -15 ct', '4 ct', 'none'],
      ['285', '4', '0'],
    ],
    [
      ['-1 oct', '1 oct', '2 oct'],
      ['-1200', '1200', '2400'],
    ],
    [
      ['-9 cents', 'keine', '12 cents'],
      ['-9', '0', '12'],
    ],
    [
      ['1 Oktave', '-2 semitones', '5 ct'],
      ['1200', '-200', '5'],
    ],
  ])('%j', (texts, cents) => {
    expect(tunings(...texts)).toEqual(cents);
  });

  it('are read alike in elements', () => {
    const row = (at: number, text: string) =>
      `<s><w>${at}.wav</w><key>${at}</key><tuning>${text}</tuning></s>`;
    expect(valuesIn(`<set>${row(50, '6 ct')}${row(52, '-0.25 st')}${row(54, '-')}</set>`, 'tune')).toEqual([
      '6',
      '-25',
      '0',
    ]);
  });

  it('are refused with an unknown unit', () => {
    const form = tuningForm({ kind: 'tuning', unit: 'cents' }, 'tune');
    expect(readNumberForm(form, undefined, '2 st 3 km')).toBeNaN();
    expect(readNumberForm(form, undefined, '3 km')).toBeNaN();
  });
});

describe('a frequency by the unit beside it', () => {
  const row = (at: number, inner: string) =>
    `<b><a>${at}.wav</a><plays>${at} - ${at + 11}</plays>${inner}</b>`;
  // Key 69 is 440 Hz, twelve keys an octave (ISO 16).
  it.each([
    ['sings', (hertz: number) => `<sings unit="Hz">${hertz}</sings>`],
    ['sounds', (hertz: number) => `<sounds unit="hz" value="${hertz}"/>`],
    ['tone', (hertz: number) => `<tone einheit="Hz">${hertz}</tone>`],
  ])('is the root key: <%s>', (_, of) => {
    const text = `<r>${row(40, of(110))}${row(52, of(220))}${row(64, of(440))}</r>`;
    expect(valuesIn(text, 'pitch_keycenter')).toEqual(['45', '57', '69']);
  });

  it('is none where the numbers are not those of keys', () => {
    const of = (hertz: number) => `<rumble unit="Hz">${hertz}</rumble>`;
    const text = `<r>${row(40, of(80))}${row(52, of(120))}${row(64, of(300))}</r>`;
    expect(valuesIn(text, 'pitch_keycenter')).toEqual(['-', '-', '-']);
    expect(readInferred(text).unread.join()).toContain('rumble');
  });
});

describe('the octave of note names', () => {
  const rows =
    '<t w="x_A2.wav" span="F3-B3" own="A3"/><t w="x_D3.wav" span="C4-E4" own="D4"/><t w="x_G3.wav" span="F4-A4" own="G4"/>';

  it.each(['central-c="C5"', 'middleC="C5"', 'middle-c="C5"', 'centralC="C5"', 'c-central="C5"'])(
    'is that of middle C at the outermost element, whatever file names and bounds say: %s',
    (stated) => {
      expect(
        valuesIn(`<set ${stated} lowest-key="C0">${rows}</set>`, 'lokey', 'hikey', 'pitch_keycenter'),
      ).toEqual(['41 47 45', '48 52 50', '53 57 55']);
    },
  );
});
