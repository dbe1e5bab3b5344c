import { describe, expect, it } from 'vitest';
import { levelForm } from '../../../../server/vocabulary/forms/level';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';

const around = { parameter: '', sampleRate: undefined, frames: undefined, frameOf: () => 0 };
type Unit = Parameters<typeof levelForm>[0]['unit'];

function both(unit: Unit, parameter = 'volume', attenuation = false) {
  const form = levelForm({ kind: 'level', unit, ...(attenuation && { attenuation }) }, parameter);
  const read = (text: string) => form.read(readNumberForm(form, undefined, text), around);
  return { form, read, write: (value: number) => form.write(value, around) };
}

/**
 * 20 log10 of the amplitude (IEC 60027-3): half is -6.0206 dB, a tenth -20 dB. sfzformat.com: volume is in dB from -144, amplitude
 * and ampeg_sustain in percent.
 */
describe('levels in dB', () => {
  it.each<[Unit, string, number]>([
    ['dB', '-4.5', -4.5],
    ['dB', '-30 cB', -3],
    ['centibels', '-45', -4.5],
    ['centibels', '-1', -0.1],
    ['centibels', '-3 dB', -3],
    ['factor', '0.5', -6.0206],
    ['factor', '1', 0],
    ['factor', '2', 6.0206],
    ['factor', '50 %', -6.0206],
    ['percent', '10', -20],
    ['percent', '10 %', -20],
    ['sevenBits', '12.7', -20],
    ['sevenBits', '50%', -6.0206],
    ['eightBits', '255', 0],
    ['eightBits', '25.5', -20],
    ['factor', '0', -144],
    ['factor', '0.000000001', -144],
    ['dB', '-inf', -144],
    ['dB', '-\u221e dB', -144],
    ['dB', '\u2212Infinity', -144],
    ['centibels', '-inf cB', -144],
  ])('in %s: %s is %d', (unit, text, value) => {
    expect(both(unit).read(text)).toBe(value);
  });

  it.each<[Unit, number, number]>([
    ['dB', -4.5, -4.5],
    ['centibels', -4.5, -45],
    ['factor', -20, 0.1],
    ['percent', -20, 10],
    ['sevenBits', 0, 127],
    ['eightBits', -20, 25.5],
    ['factor', -144, 0],
    ['factor', -150, 0],
    ['factor', -140, 1e-7],
  ])('in %s: %d is written as %d', (unit, value, written) => {
    expect(both(unit).write(value)).toBeCloseTo(written, 12);
  });

  it('are no amplitudes below 0, nor silence in words where they are shares', () => {
    expect(both('factor').read('-0.1')).toBeNaN();
    expect(both('percent').read('-1')).toBeNaN();
    expect(both('factor').read('-inf')).toBeNaN();
    expect(both('factor').form.readText).toBeUndefined();
    expect(both('dB').read('xinf')).toBeNaN();
    expect(both('dB').read('-inf x')).toBeNaN();
    expect(both('dB').read('-1 s')).toBeNaN();
  });
});

describe('attenuations', () => {
  it.each<[Unit, string, number]>([
    ['dB', '6', -6],
    ['dB', 'inf', -144],
    ['centibels', '60', -6],
    ['centibels', '\u221e', -144],
    ['factor', '0.5', -6.0206],
    ['factor', '0', 0],
    ['factor', '1', -144],
    ['percent', '90', -20],
    ['percent', '0', 0],
    ['sevenBits', '0', 0],
  ])('in %s: %s is %d', (unit, text, value) => {
    expect(both(unit, 'volume', true).read(text)).toBe(value);
  });

  it.each<[Unit, number, number]>([
    ['dB', -6, 6],
    ['dB', 0, 0],
    ['centibels', -6, 60],
    ['factor', -20, 0.9],
    ['percent', -20, 90],
  ])('in %s: %d is written as %d', (unit, value, written) => {
    expect(both(unit, 'volume', true).write(value)).toBeCloseTo(written, 12);
  });

  it('have nothing to take from more than all', () => {
    expect(both('factor', 'volume', true).read('1.1')).toBeNaN();
  });
});

describe('levels in percent', () => {
  it.each<[Unit, string, number]>([
    ['factor', '0.07', 7],
    ['percent', '35', 35],
    ['sevenBits', '127', 100],
    ['eightBits', '51', 20],
    ['dB', '-20', 10],
    ['dB', '0', 100],
    ['dB', '-144', 0],
    ['dB', '-inf', 0],
    ['centibels', '-200', 10],
    ['centibels', '-1440', 0],
    ['centibels', '-1439', 0.000_006],
    ['factor', '0', 0],
  ])('in %s: %s is %d', (unit, text, value) => {
    expect(both(unit, 'amplitude').read(text)).toBe(value);
  });

  it.each<[Unit, number, number]>([
    ['factor', 7, 0.07],
    ['percent', 35, 35],
    ['sevenBits', 100, 127],
    ['dB', 10, -20],
    ['dB', 0, -144],
    ['dB', 1e-9, -144],
    ['centibels', 10, -200],
    ['centibels', 0, -1440],
    ['factor', 0, 0],
  ])('in %s: %d is written as %d', (unit, value, written) => {
    expect(both(unit, 'ampeg_sustain').write(value)).toBeCloseTo(written, 9);
  });

  it('are none below 0', () => {
    for (const unit of ['factor', 'percent', 'dB'] as const)
      expect(both(unit, 'amplitude').write(-1)).toBeNaN();
    expect(both('factor', 'amplitude').read('-1')).toBeNaN();
  });

  it('say their unit in the format, and hang on nothing else', () => {
    expect(both('dB', 'amplitude').form).toMatchObject({ unit: '%', needsSurroundings: false });
    expect(both('dB').form).toMatchObject({ unit: 'dB', needsSurroundings: false });
  });
});
