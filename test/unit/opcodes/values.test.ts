import { describe, expect, it } from 'vitest';
import { resolveOpcode } from '../../../server/model/opcodes/resolve';
import { isOption, numberIn, valueFault } from '../../../server/model/opcodes/values';

const factsOf = (name: string) => resolveOpcode(name)!.facts;

describe('valueFault', () => {
  it.each([
    ['key', '60'],
    ['key', 'c#4'],
    ['lokey', '-1'],
    ['hikey', '-1'],
    ['lovel', '0'],
    ['end', '-1'],
    ['pitch_keycenter', 'sample'],
    ['on_locc3', '-1'],
    ['locc1', '63.5'],
    ['tune', '-12.5'],
    ['offset', '12.5'],
    ['loop_mode', 'one_shot'],
    ['loop_mode', 'ONE_SHOT'],
    ['type', 'reverb.of.ours'],
    ['sample', ''],
    ['volume', '-6.5'],
    ['volume', ' -6 '],
    ['cutoff', '40000'],
    ['off_shape', '-10.3616'],
    ['sw_last', 'c0'],
  ])('accepts %s=%s', (name, value) => expect(valueFault(factsOf(name), value)).toBeUndefined());

  it.each([
    ['key', 'h4', { kind: 'key-expected' }],
    ['key', '60.5', { kind: 'whole-expected' }],
    ['key', '128', { kind: 'above', bound: 127 }],
    ['lokey', '-2', { kind: 'below', bound: -1 }],
    ['lovel', '-1', { kind: 'below', bound: 0 }],
    ['hivel', '12.5', { kind: 'whole-expected' }],
    ['hivel', 'loud', { kind: 'number-expected' }],
    ['volume', '7', { kind: 'above', bound: 6 }],
    ['volume', '', { kind: 'empty' }],
    ['pan', '-101', { kind: 'below', bound: -100 }],
    ['loop_mode', 'forever', { kind: 'option-expected' }],
    ['type', 'reverb.', { kind: 'option-expected' }],
  ])('refuses %s=%s', (name, value, fault) => expect(valueFault(factsOf(name), value)).toEqual(fault));
});

describe('isOption', () => {
  it('takes anything where there is no choice', () => expect(isOption(factsOf('volume'), 'x')).toBe(true));
});

describe('numberIn', () => {
  it.each([
    ['1', 1],
    ['-1.5', -1.5],
    ['+.5', 0.5],
    ['1.', 1],
    ['1e3', 1000],
    ['', undefined],
    ['0x10', undefined],
    ['1 2', undefined],
    ['Infinity', undefined],
  ])('%j', (text, number) => expect(numberIn(text)).toBe(number));
});
