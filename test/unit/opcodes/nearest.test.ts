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
  ])('%s gives %s', (name, expected) => expect(nearestOpcodes(name, 3)[0]).toBe(expected));

  it.each(['foobarbaz', '', 'x', '#includple', 'zzzzzz', 'q'.repeat(500)])('gives nothing for %s', (name) => {
    expect(nearestOpcodes(name, 3)).toEqual([]);
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
