import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readValue, writeValue } from '../../../../server/vocabulary/forms/valueForms';
import type { ValueSurroundings } from '../../../../server/vocabulary/forms/valueSurroundings';
import type { ValueForm } from '../../../../server/vocabulary/vocabulary';

function around(parameter: string, more: Partial<ValueSurroundings> = {}): ValueSurroundings {
  return { parameter, sampleRate: 48000, frames: 96000, frameOf: () => 0, ...more };
}

const read = (form: ValueForm, parameter: string, text: string, more: Partial<ValueSurroundings> = {}) =>
  readValue(form, text, around(parameter, more))?.text;
const write = (form: ValueForm, parameter: string, value: string, more: Partial<ValueSurroundings> = {}) =>
  writeValue(form, value, around(parameter, more))?.text;

describe('keys', () => {
  // The names of key 60 that are in use: C3, C4 and C5 (common practice); in the open SFZ format it is C4.
  it.each([
    ['C3', 'C3', '60'],
    ['C4', 'C4', '60'],
    ['C5', 'C5', '60'],
    ['C3', 'C-2', '0'],
    ['C4', 'C-1', '0'],
    ['C5', 'C0', '0'],
    ['C3', 'G8', '127'],
    ['C4', 'G9', '127'],
    ['C5', 'G10', '127'],
    ['C4', 'A4', '69'],
  ] as const)('with %s for key 60, %s is key %s', (middleC, name, key) => {
    const form: ValueForm = { kind: 'key', written: 'name', middleC };
    expect(read(form, 'lokey', name)).toBe(key);
    expect(write(form, 'lokey', key)).toBe(name);
  });

  it('reads sharps and flats in either script and letter case', () => {
    const form: ValueForm = { kind: 'key', written: 'name' };
    for (const text of ['C#4', 'c#4', 'C♯4', 'Db4', 'db4', 'D♭4', 'C# 4', ' 61 ']) {
      expect([text, read(form, 'lokey', text)]).toEqual([text, '61']);
    }
    expect([read(form, 'lokey', 'Cb4'), read(form, 'lokey', 'B#3')]).toEqual(['59', '60']);
  });

  it('adds and takes off what numbers are counted from', () => {
    const form: ValueForm = { kind: 'key', written: 'number', offset: -21 };
    expect([read(form, 'key', '0'), read(form, 'key', '87'), write(form, 'key', 'c4')]).toEqual([
      '21',
      '108',
      '39',
    ]);
  });

  it('has no sense in other texts', () => {
    const form: ValueForm = { kind: 'key', written: 'number' };
    for (const text of ['', 'H4', '128', '-2', '60.5', 'C10', '60 dB', 'sixty']) {
      expect([text, read(form, 'key', text)]).toEqual([text, undefined]);
    }
    expect(write(form, 'pitch_keycenter', 'sample')).toBeUndefined();
  });
});

describe('velocities', () => {
  it('are scaled to 0..127 and rounded', () => {
    const percent: ValueForm = { kind: 'velocity', most: 100 };
    expect(['0', '50', '100'].map((text) => read(percent, 'lovel', text))).toEqual(['0', '64', '127']);
    expect(read({ kind: 'velocity', most: 1 }, 'lovel', '0.25')).toBe('32');
    expect(read({ kind: 'velocity', most: 127 }, 'hivel', '90')).toBe('90');
    expect(read(percent, 'hivel', '101')).toBeUndefined();
    expect(read(percent, 'hivel', '-1')).toBeUndefined();
  });

  it('meet without gap or overlap where layers share a bound half way', () => {
    const form: ValueForm = { kind: 'velocity', most: 1 };
    expect([read(form, 'hivel', '0.5'), read(form, 'lovel', '0.5')]).toEqual(['63', '64']);
  });

  it('meet at every bound where layers share them throughout', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, 100, 127, 128),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (most, share) => {
          fc.pre(share * 127 > 0.001 && share < 1);
          const form: ValueForm = { kind: 'velocity', most, touching: true };
          const text = (share * most).toFixed(6);
          fc.pre(Number(text) > 0 && Number(text) < most);
          expect(Number(read(form, 'lovel', text))).toBe(Number(read(form, 'hivel', text)) + 1);
        },
      ),
    );
    const form: ValueForm = { kind: 'velocity', most: 1, touching: true };
    expect([read(form, 'lovel', '0'), read(form, 'hivel', '1')]).toEqual(['0', '127']);
  });
});

// 20 · log10(factor) dB is how IEC 60027-3 defines the level of a field quantity; half the amplitude is −6.02 dB.
describe('levels', () => {
  it('are decibels, factors or percentages', () => {
    expect(read({ kind: 'level', unit: 'factor' }, 'volume', '0.5')).toBe('-6.0206');
    expect(read({ kind: 'level', unit: 'percent' }, 'volume', '10')).toBe('-20');
    expect(read({ kind: 'level', unit: 'dB' }, 'volume', '-4.5 dB')).toBe('-4.5');
    expect(read({ kind: 'level', unit: 'dB' }, 'volume', '−4,5')).toBe('-4.5');
    expect(read({ kind: 'level', unit: 'factor' }, 'volume', '0')).toBe('-144');
    expect(read({ kind: 'level', unit: 'factor' }, 'volume', '-1')).toBeUndefined();
  });

  it('turn round where greater numbers are quieter', () => {
    expect(read({ kind: 'level', unit: 'dB', attenuation: true }, 'volume', '6')).toBe('-6');
    expect(write({ kind: 'level', unit: 'dB', attenuation: true }, 'volume', '-6')).toBe('6');
    expect(read({ kind: 'level', unit: 'factor', attenuation: true }, 'volume', '0.5')).toBe('-6.0206');
    expect(read({ kind: 'level', unit: 'percent', attenuation: true }, 'volume', '0')).toBe('0');
  });

  it('are percentages for what the format counts in percent', () => {
    expect(read({ kind: 'level', unit: 'factor' }, 'ampeg_sustain', '0.07')).toBe('7');
    expect(read({ kind: 'level', unit: 'percent' }, 'amplitude', '35')).toBe('35');
    expect(Number(read({ kind: 'level', unit: 'dB' }, 'amplitude', '-20'))).toBe(10);
  });

  it('are written as the shortest decimal that reads back', () => {
    expect(write({ kind: 'level', unit: 'factor' }, 'volume', '-6.0206')).toBe('0.5');
    expect(write({ kind: 'level', unit: 'dB', unitText: ' dB' }, 'volume', '-4.50')).toBe('-4.5 dB');
    expect(write({ kind: 'level', unit: 'factor' }, 'volume', '-144')).toBe('0');
  });

  it('say how far they are off where no decimal reads back', () => {
    const written = writeValue({ kind: 'level', unit: 'factor' }, '-6.02059991', around('volume'));
    expect(written?.text).toBe('0.5');
    expect(written?.approximated).toMatch(/0\.5|0\.0000/);
    expect(
      writeValue({ kind: 'level', unit: 'factor' }, '-6', around('volume'))?.approximated,
    ).toBeUndefined();
  });
});

describe('pan', () => {
  it('is linear on each side of the centre', () => {
    const wide: ValueForm = { kind: 'pan', left: 0, centre: 64, right: 127 };
    expect(['0', '32', '64', '127'].map((text) => read(wide, 'pan', text))).toEqual([
      '-100',
      '-50',
      '0',
      '100',
    ]);
    const turned: ValueForm = { kind: 'pan', left: 1, centre: 0, right: -1 };
    expect(['1', '0.25', '-0.5'].map((text) => read(turned, 'pan', text))).toEqual(['-100', '-25', '50']);
    expect(read(wide, 'pan', '128')).toBeUndefined();
    expect(write(wide, 'pan', '-50')).toBe('32');
    expect(write({ kind: 'pan', left: 0, centre: 0.5, right: 1 }, 'pan', '29')).toBe('0.645');
  });
});

// 1200 cents to the octave, a ratio of 2 (A. J. Ellis, 1885); a just fifth is 3/2, 701.955 cents.
describe('tuning', () => {
  it('is in cents, semitones or a ratio of frequencies', () => {
    expect(read({ kind: 'tuning', unit: 'ratio' }, 'tune', '2')).toBe('1200');
    expect(Number(read({ kind: 'tuning', unit: 'ratio' }, 'tune', '1.5'))).toBeCloseTo(701.955, 3);
    expect(read({ kind: 'tuning', unit: 'semitones' }, 'tune', '-0.07')).toBe('-7');
    expect(read({ kind: 'tuning', unit: 'cents' }, 'transpose', '200')).toBe('2');
    expect(read({ kind: 'tuning', unit: 'semitones' }, 'transpose', '-12 st')).toBe('-12');
    expect(read({ kind: 'tuning', unit: 'semitones' }, 'tune', '12 ct')).toBe('12');
    expect(read({ kind: 'tuning', unit: 'ratio' }, 'tune', '0')).toBeUndefined();
    expect(write({ kind: 'tuning', unit: 'semitones' }, 'tune', '-7')).toBe('-0.07');
  });
});

// Frames count from 0, and an end is the last frame that is played (public documentation of the open SFZ format, CC0 1.0).
describe('positions', () => {
  it('are frames, with their first number and their last frame', () => {
    expect(read({ kind: 'position', unit: 'frames' }, 'loop_end', '999')).toBe('999');
    expect(read({ kind: 'position', unit: 'frames', last: 'excluded' }, 'loop_end', '1000')).toBe('999');
    expect(read({ kind: 'position', unit: 'frames', last: 'excluded' }, 'loop_start', '1000')).toBe('1000');
    expect(read({ kind: 'position', unit: 'frames', first: 1 }, 'loop_start', '1')).toBe('0');
    expect(read({ kind: 'position', unit: 'frames', first: 1 }, 'loop_end', '1000')).toBe('999');
    expect(read({ kind: 'position', unit: 'frames' }, 'end', '-1')).toBe('-1');
    expect(read({ kind: 'position', unit: 'frames' }, 'offset', '-1')).toBeUndefined();
  });

  it('are times by the rate of the sample, and say when it had to be assumed', () => {
    expect(read({ kind: 'position', unit: 'seconds' }, 'offset', '0.5')).toBe('24000');
    expect(read({ kind: 'position', unit: 'milliseconds', last: 'excluded' }, 'end', '500')).toBe('23999');
    const assumed = readValue(
      { kind: 'position', unit: 'seconds' },
      '1',
      around('offset', { sampleRate: undefined }),
    );
    expect(assumed?.number).toBe(44100);
    expect(assumed?.assumed).toContain('44100');
  });

  it('are shares of the length', () => {
    expect(read({ kind: 'position', unit: 'fraction' }, 'loop_start', '0.25')).toBe('24000');
    expect(read({ kind: 'position', unit: 'percent', last: 'excluded' }, 'loop_end', '100')).toBe('95999');
    const unknown = readValue(
      { kind: 'position', unit: 'percent' },
      '1',
      around('offset', { frames: undefined }),
    );
    expect(unknown?.assumed).toContain('length');
  });

  it('are lengths counted from another parameter', () => {
    const start = { frameOf: (name: string) => (name === 'loop_start' ? 500 : 0) };
    const length: ValueForm = { kind: 'position', unit: 'frames', from: 'loop_start' };
    expect(read(length, 'loop_end', '100', start)).toBe('599');
    expect(write(length, 'loop_end', '599', start)).toBe('100');
    expect(read({ ...length, last: 'included' }, 'loop_end', '99', start)).toBe('599');
  });

  it('take a unit behind the number', () => {
    expect(read({ kind: 'position', unit: 'seconds' }, 'offset', '20 ms')).toBe('960');
    expect(read({ kind: 'position', unit: 'frames' }, 'offset', '20 ms')).toBeUndefined();
  });
});

describe('other values', () => {
  it('are times and numbers', () => {
    expect(read({ kind: 'time', unit: 'milliseconds' }, 'ampeg_release', '350')).toBe('0.35');
    expect(write({ kind: 'time', unit: 'milliseconds', unitText: 'ms' }, 'ampeg_release', '0.35')).toBe(
      '350ms',
    );
    expect(read({ kind: 'number', times: 0.01 }, 'amp_veltrack', '0.86')).toBe('86');
    expect(write({ kind: 'number', times: 0.01 }, 'amp_veltrack', '86')).toBe('0.86');
    expect(read({ kind: 'number' }, 'polyphony', 'four')).toBeUndefined();
  });

  it('are words in any letter case; the first of a value is written', () => {
    const words: ValueForm = {
      kind: 'words',
      words: { round: 'loop_continuous', circling: 'loop_continuous', never: 'no_loop' },
    };
    expect(['round', 'Circling', 'NEVER', 'x'].map((text) => read(words, 'loop_mode', text))).toEqual([
      'loop_continuous',
      'loop_continuous',
      'no_loop',
      undefined,
    ]);
    expect(write(words, 'loop_mode', 'loop_continuous')).toBe('round');
    expect(write(words, 'loop_mode', 'one_shot')).toBeUndefined();
    const numbers: ValueForm = { kind: 'words', words: { oui: '1', non: '0' } };
    expect(write(numbers, 'x', '1.0')).toBe('oui');
  });

  it('are paths with what is put before and behind', () => {
    const form: ValueForm = { kind: 'path', folder: 'Audio', ending: '.wav', separator: '\\' };
    expect(read(form, 'sample', 'low\\C2')).toBe('Audio/low/C2.wav');
    expect(read(form, 'sample', 'low/C2.flac')).toBe('Audio/low/C2.flac');
    expect(read(form, 'sample', '*sine')).toBe('*sine');
    expect(write(form, 'sample', 'Audio/low/C2.wav')).toBe('low\\C2');
    expect(write(form, 'sample', 'Other/C2.wav')).toBe('..\\Other\\C2');
    expect(read(form, 'sample', '..\\Other\\C2')).toBe('Other/C2.wav');
    expect(read(form, 'sample', '')).toBeUndefined();
    // What the folder of the text is called is not known, so no way leads back into it.
    expect(write({ kind: 'path', folder: '../Beside' }, 'sample', 'C2.wav')).toBeUndefined();
    expect(write({ kind: 'path', folder: '../Beside' }, 'sample', '../Beside/C2.wav')).toBe('C2.wav');
  });
});

interface Case {
  form: ValueForm;
  parameter: string;
  value: string;
}

const unitText = fc.constantFrom(undefined, ' u');
const withUnit = (form: ValueForm, unit: string | undefined): ValueForm =>
  unit === undefined ? form : ({ ...form, unitText: unit } as ValueForm);
/** Decimals of so many places, as a person writes them. */
const decimals = (least: number, most: number, places: number) =>
  fc
    .integer({ min: least * 10 ** places, max: most * 10 ** places })
    .map((number) => String(Number((number / 10 ** places).toFixed(places))));

const cases: Record<string, fc.Arbitrary<Case>> = {
  key: fc
    .record({
      written: fc.constantFrom('number' as const, 'name' as const),
      middleC: fc.constantFrom('C3' as const, 'C4' as const, 'C5' as const),
      offset: fc.integer({ min: -60, max: 60 }),
      key: fc.integer({ min: -1, max: 127 }),
    })
    .map(({ key, ...form }) => ({ form: { kind: 'key', ...form }, parameter: 'lokey', value: String(key) })),
  velocity: fc
    .record({
      most: fc.constantFrom(1, 100, 127, 128, 255),
      touching: fc.boolean(),
      parameter: fc.constantFrom('lovel', 'hivel', 'xfin_hivel'),
      velocity: fc.integer({ min: 0, max: 127 }),
      unit: unitText,
    })
    .map(({ most, touching, parameter, velocity, unit }) => ({
      form: withUnit({ kind: 'velocity', most, touching }, unit),
      parameter,
      value: String(velocity),
    })),
  level: fc
    .record({
      unit: fc.constantFrom('dB' as const, 'factor' as const, 'percent' as const),
      attenuation: fc.boolean(),
      value: decimals(-80, 0, 3),
    })
    .map(({ value, ...form }) => ({ form: { kind: 'level', ...form }, parameter: 'volume', value })),
  share: fc
    .record({ unit: fc.constantFrom('factor' as const, 'percent' as const), value: decimals(0, 100, 3) })
    .map(({ value, unit }) => ({ form: { kind: 'level', unit }, parameter: 'ampeg_sustain', value })),
  pan: fc
    .record({
      ends: fc.constantFrom([-100, 0, 100], [-1, 0, 1], [0, 64, 127], [0, 0.5, 1], [1, 0, -1]),
      value: decimals(-100, 100, 2),
    })
    .map(({ ends: [left = 0, centre = 0, right = 0], value }) => ({
      form: { kind: 'pan', left, centre, right },
      parameter: 'pan',
      value,
    })),
  tuning: fc
    .record({
      unit: fc.constantFrom('cents' as const, 'semitones' as const, 'ratio' as const),
      parameter: fc.constantFrom('tune', 'transpose'),
      value: fc.integer({ min: -100, max: 100 }).map(String),
    })
    .map(({ unit, parameter, value }) => ({ form: { kind: 'tuning', unit }, parameter, value })),
  position: fc
    .record({
      unit: fc.constantFrom(
        'frames' as const,
        'seconds' as const,
        'milliseconds' as const,
        'fraction' as const,
      ),
      first: fc.constantFrom(0 as const, 1 as const),
      last: fc.constantFrom('included' as const, 'excluded' as const),
      parameter: fc.constantFrom('offset', 'loop_start', 'loop_end', 'end'),
      frame: fc.integer({ min: 0, max: 95999 }),
    })
    .map(({ parameter, frame, ...form }) => ({
      form: { kind: 'position', ...form },
      parameter,
      value: String(frame),
    })),
  time: fc
    .record({ unit: fc.constantFrom('seconds' as const, 'milliseconds' as const), value: decimals(0, 20, 4) })
    .map(({ unit, value }) => ({ form: { kind: 'time', unit }, parameter: 'ampeg_attack', value })),
  number: fc
    .record({ times: fc.constantFrom(1, 0.01, 10, 127), value: decimals(-500, 500, 3) })
    .map(({ times, value }) => ({ form: { kind: 'number', times }, parameter: 'amp_veltrack', value })),
  path: fc
    .record({
      folder: fc.constantFrom(undefined, 'Audio', 'Audio/Deep'),
      ending: fc.constantFrom(undefined, '.wav', '.flac'),
      separator: fc.constantFrom('/' as const, '\\' as const),
      path: fc.constantFrom(
        'a.wav',
        'Audio/b.wav',
        'Audio/Deep/c 1.flac',
        '../x/y.wav',
        '/root/z.wav',
        'q.wav.wav',
      ),
    })
    .map(({ path, folder, ending, separator }) => ({
      form: { kind: 'path', separator, ...(folder && { folder }), ...(ending && { ending }) },
      parameter: 'sample',
      value: path,
    })),
  text: fc.string().map((value) => ({ form: { kind: 'text' }, parameter: 'group_label', value })),
};

describe.each(Object.entries(cases))('a %s', (_, one) => {
  it('that is written reads back as it was', () => {
    fc.assert(
      fc.property(one, ({ form, parameter, value }) => {
        const written = writeValue(form, value, around(parameter));
        expect(written?.approximated).toBeUndefined();
        expect(read(form, parameter, written?.text ?? '')).toBe(value);
      }),
    );
  });

  it('that is read and written again is no longer than it was, and says the same', () => {
    fc.assert(
      fc.property(one, decimals(0, 100, 3), ({ form, parameter, value }, text) => {
        const written = writeValue(form, value, around(parameter))?.text ?? '';
        const again = write(form, parameter, read(form, parameter, written) ?? '');
        expect(again).toBe(written);
        // Any other text is written no longer than it was.
        const meant = readValue(form, text, around(parameter));
        if (!meant || !('most' in form || form.kind === 'level' || form.kind === 'pan')) return;
        const shorter = writeValue(form, meant.text, around(parameter));
        if (shorter === undefined || shorter.approximated !== undefined) return;
        expect(shorter.text.replace(' u', '').length).toBeLessThanOrEqual(text.length);
        expect(read(form, parameter, shorter.text)).toBe(meant.text);
      }),
    );
  });
});

describe('any text in any form', () => {
  it('is read without an error', () => {
    const forms = fc.oneof(...Object.values(cases));
    fc.assert(
      fc.property(forms, fc.string({ maxLength: 30 }), ({ form, parameter }, text) => {
        const value = readValue(form, text, around(parameter));
        if (value && form.kind !== 'text' && form.kind !== 'path') expect(value.number).not.toBeNaN();
        writeValue(form, text, around(parameter));
      }),
    );
  });
});
