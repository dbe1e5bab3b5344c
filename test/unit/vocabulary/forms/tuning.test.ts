import { describe, expect, it } from 'vitest';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';
import { tuningForm } from '../../../../server/vocabulary/forms/tuning';

const around = { parameter: '', sampleRate: undefined, frames: undefined, frameOf: () => 0 };
type Unit = Parameters<typeof tuningForm>[0]['unit'];

function both(unit: Unit, parameter: string) {
  const form = tuningForm({ kind: 'tuning', unit }, parameter);
  const read = (text: string) => form.read(readNumberForm(form, undefined, text), around);
  return { form, read, write: (value: number) => form.write(value, around) };
}

/** sfzformat.com: tune is in cents, transpose in semitones; 100 cents are a semitone, 1200 an octave (A. J. Ellis, 1885). */
describe('tuning', () => {
  it.each<[Unit, string, string, number]>([
    ['cents', 'tune', '-7', -7],
    ['semitones', 'tune', '-0.07', -7],
    ['semitones', 'tune', '1.1', 110],
    ['cents', 'transpose', '200', 2],
    ['semitones', 'transpose', '-12', -12],
    ['ratio', 'tune', '2', 1200],
    ['ratio', 'tune', '0.5', -1200],
    ['ratio', 'transpose', '2', 12],
    // 9:8, the greater whole tone of just intonation, is 203.910002 cents.
    ['ratio', 'tune', '1.125', 203.910_002],
    ['cents', 'tune', '1 st', 100],
    ['semitones', 'tune', '50 ct', 50],
    ['semitones', 'transpose', '50 ct', 0.5],
    ['cents', 'transpose', '3 semitones', 3],
  ])('in %s for %s: %s is %d', (unit, parameter, text, value) => {
    const { read, write, form } = both(unit, parameter);
    expect(read(text)).toBe(value);
    const written = write(value);
    expect(form.read(written, around)).toBeCloseTo(value, 5);
  });

  it.each([
    ['semitones', 'tune', -7, -0.07],
    ['cents', 'tune', -7, -7],
    ['cents', 'transpose', 2, 200],
    ['ratio', 'tune', 1200, 2],
    ['ratio', 'transpose', -12, 0.5],
  ] as const)('in %s for %s: %d is written as %d', (unit, parameter, value, written) => {
    expect(both(unit, parameter).write(value)).toBeCloseTo(written, 12);
  });

  it('is no ratio of 0 or below, nor one with a unit', () => {
    expect(both('ratio', 'tune').read('0')).toBeNaN();
    expect(both('ratio', 'tune').read('-1')).toBeNaN();
    expect(both('ratio', 'tune').read('2 ct')).toBeNaN();
  });

  it('says its unit in the format, and hangs on nothing else', () => {
    expect(both('ratio', 'tune').form).toMatchObject({ unit: 'cents', needsSurroundings: false });
    expect(both('cents', 'transpose').form).toMatchObject({ unit: 'semitones', needsSurroundings: false });
  });
});
