import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestOpcodes } from '../../../server/model/opcodes/nearest';
import { resolveOpcode } from '../../../server/model/opcodes/resolve';

describe('nearestOpcodes', () => {
  it.each([
    ['lowkey', 'lokey'],
    ['hikkey', 'hikey'],
    ['LOWVEL', 'lovel'],
    ['pitch_keycentre', 'pitch_keycenter'],
    ['amp_veltrak', 'amp_veltrack'],
    ['loopstrat', 'loop_start'],
    ['ampvelcurve_64', 'amp_velcurve_64'],
    ['cutof_oncc74', 'cutoff_oncc74'],
    ['lfo03_frequ', 'lfo3_freq'],
    ['keycenter', 'pitch_keycenter'],
    ['cutof_curvecc74', 'cutoff_curvecc74'],
    ['cutof_smoothcc74', 'cutoff_smoothcc74'],
    ['cutof_stepcc74', 'cutoff_stepcc74'],
    ['cutof_cc74', 'cutoff_cc74'],
    ['cutofcc74', 'cutoffcc74'],
    ['attack', 'ampeg_attack'],
    ['keytrack', 'pitch_keytrack'],
  ])('%s gives %s', (name, expected) => expect(nearestOpcodes(name, 3)[0]).toBe(expected));

  it.each(['foobarbaz', '', 'x', '#includple', 'zzzzzz', 'q'.repeat(500)])('gives nothing for %s', (name) => {
    expect(nearestOpcodes(name, 3)).toEqual([]);
  });

  it.each([
    // A controller has three digits at the most, and a range of keys cannot be moved by one (sfzformat.com).
    'cutof_oncc1000',
    'lokeyy_oncc1',
    // What stands under the header of embedded files is offered nowhere else.
    'base64dat',
    // Patterns of names are no names.
    'hint_',
    // Three letters end names of many things.
    'law',
    'wet',
  ])('gives nothing for %s either', (name) => expect(nearestOpcodes(name, 9)).toEqual([]));

  it('gives each parameter once, and not the name itself', () => {
    expect(nearestOpcodes('loopstrat', 9)).toEqual(['loop_start']);
    expect(nearestOpcodes('volume', 9)).not.toContain('volume');
    // A name with a number in it is none where no number is written.
    expect(nearestOpcodes('eqn_freq', 9)).toEqual(['eq_freq']);
  });

  it('gives the likeliest first: near ones, then those of the first version of the format, then of the second', () => {
    // loop_start is an opcode of SFZ 1, load_start and sostenuto_sw are of SFZ 2, sostenuto_cc is an extension (sfzformat.com).
    expect(nearestOpcodes('lo_start', 9)).toEqual(['loop_start', 'load_start']);
    expect(nearestOpcodes('lod_start', 9)[0]).toBe('load_start');
    expect(nearestOpcodes('lo_start', 1)).toEqual(['loop_start']);
    expect(nearestOpcodes('sostenuto_x', 9)[0]).toBe('sostenuto_sw');
    expect(nearestOpcodes('sostenuto_xc', 9)).toEqual(['sostenuto_cc', 'sostenuto_sw', 'sostenuto_lo']);
  });

  it('gives names that end in the word, the shorter ones first behind those of pitch and amplifier', () => {
    expect(nearestOpcodes('type', 9)).toContain('fil_type');
    const [first, ...others] = nearestOpcodes('attack', 9);
    expect(first).toBe('ampeg_attack');
    expect(others.map((name) => name.length)).toEqual(
      others.map((name) => name.length).sort((a, b) => a - b),
    );
    expect(others.every((name) => name.endsWith('_attack'))).toBe(true);
  });

  it('gives at most as many as asked for, all of them known, each parameter once', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[a-z]{2,5}_?[a-z]{2,6}\d?$/)),
        fc.integer({ min: 0, max: 5 }),
        (name, most) => {
          const names = nearestOpcodes(name, most);
          expect(names.length).toBeLessThanOrEqual(most);
          const canonical = names.map((one) => resolveOpcode(one)?.canonical);
          expect(canonical).not.toContain(undefined);
          expect(new Set(canonical).size).toBe(names.length);
        },
      ),
      { numRuns: 50 },
    );
  });
});
