import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeaderKind } from '../../../server/model/headerKinds';
import { takesOpcode } from '../../../server/model/opcodes/headerMask';
import { fillPattern, listOpcodes, resolveOpcode } from '../../../server/model/opcodes/resolve';

const canonical = (name: string) => resolveOpcode(name)?.canonical;

describe('resolveOpcode', () => {
  it.each([
    ['lokey', 'lokey', []],
    ['LoKey', 'lokey', []],
    ['amp_velcurve_64', 'amp_velcurve_64', [64]],
    ['amp_velcurve_064', 'amp_velcurve_64', [64]],
    ['lfo03_freq', 'lfo3_freq', [3]],
    ['lfo3_freq', 'lfo3_freq', [3]],
    ['v000', 'v000', [0]],
    ['v64', 'v064', [64]],
    ['var1_mod', 'var01_mod', [1]],
    ['eg1_time2_oncc3', 'eg1_time2_oncc3', [1, 2, 3]],
    ['locc300', 'locc300', [300]],
    ['effect1', 'effect1', []],
    ['fx2tomain', 'fx2tomain', [2]],
    ['#include', '#include', []],
  ])('reads %s', (name, expected, indexes) => {
    const found = resolveOpcode(name);
    expect(found?.canonical).toBe(expected);
    expect(found?.indexes).toEqual(indexes);
    expect(found?.spelling).toBe('canonical');
  });

  it.each([
    ['tune_cc41', 'pitch_oncc41'],
    ['tune_oncc41', 'pitch_oncc41'],
    ['tune_curvecc41', 'pitch_curvecc41'],
    ['volume_cc7', 'gain_cc7'],
    ['volumecc7', 'gain_cc7'],
    ['volume_oncc7', 'gain_cc7'],
    ['cutoff_oncc74', 'cutoff_cc74'],
    ['cutoffcc74', 'cutoff_cc74'],
    ['ampeg_attack_oncc1', 'ampeg_attackcc1'],
    ['pitcheg_attackcc5', 'pitcheg_attack_oncc5'],
    ['lfo03_pitch_cc1', 'lfo3_pitch_oncc1'],
    ['eq2_gain_oncc9', 'eq2_gaincc9'],
    ['pancurvecc10', 'pan_curvecc10'],
  ])('takes any way to spell a controller: %s', (name, expected) => {
    expect(canonical(name)).toBe(expected);
    expect(resolveOpcode(name)?.spelling).toBe('canonical');
    expect(resolveOpcode(name)?.facts.level).not.toBeUndefined();
  });

  it.each([
    ['fil_keytrack_oncc20', 'fil_keytrack_oncc20', 'fil_keytrack'],
    ['offset_curvecc3', 'offset_curvecc3', 'offset'],
    ['lfo3_wave2_cc5', 'lfo3_wave2_oncc5', 'lfoN_waveX'],
    ['fil2_veltrackcc4', 'fil2_veltrack_oncc4', 'fil2_veltrack'],
    ['effect1_oncc3', 'effect1_oncc3', 'effect1'],
  ])('derives %s, which no documentation lists', (name, expected, modulates) => {
    const found = resolveOpcode(name);
    expect(found?.canonical).toBe(expected);
    expect(found?.facts).toMatchObject({ level: 'extension', modulates });
    expect(found?.spelling).toBe('canonical');
  });

  it.each([
    ['loopstart', 'loop_start'],
    ['offby', 'off_by'],
    ['polyphony_group', 'group'],
    ['pitch', 'tune'],
    ['bendup', 'bend_up'],
    ['amp_attack', 'ampeg_attack'],
    ['amp_attack_oncc1', 'ampeg_attackcc1'],
    ['filtype', 'fil_type'],
    ['start_locc3', 'on_locc3'],
    ['set_realcc1', 'set_hdcc1'],
    ['cutoff_random', 'fil_random'],
  ])('takes %s for another spelling', (name, expected) => {
    expect(canonical(name)).toBe(expected);
    expect(resolveOpcode(name)?.spelling).toBe('alias');
  });

  it.each([
    'cutoff2',
    'resonance2',
    'fil2_type',
    'fil2_gain',
    'fil2_keytrack',
    'cutoff2_random',
    'lfo1_cutoff2',
    'lfo1_resonance2',
    'lfo1_wave2',
    'lfo1_offset2',
    'lfo1_ratio2',
    'lfo1_scale2',
    'cutoff2_cc74',
    'resonance2_oncc71',
    'cutoff2_chanaft',
    'fil2_gain_oncc3',
    'lfo1_cutoff2_stepcc7',
  ])('keeps %s apart from the first of its kind', (name) => {
    expect(resolveOpcode(name)).toMatchObject({ canonical: name, spelling: 'canonical' });
    expect(resolveOpcode(name)?.facts.pattern).toContain(
      name.startsWith('lfo1_cutoff') ? 'cutoff2' : name.slice(0, 3),
    );
  });

  it('takes families with a star', () => {
    expect(resolveOpcode('hint_ram_based')?.facts.pattern).toBe('hint_*');
    expect(resolveOpcode('var07_cutoff')).toMatchObject({ canonical: 'var07_cutoff', indexes: [7] });
    expect(canonical('pitch_mod')).toBe('tune_mod');
    expect(resolveOpcode('nothing_mod')).toBeUndefined();
  });

  it.each([
    '',
    'lowkey',
    'sample_cc1',
    'trigger_oncc1',
    'key_oncc3',
    'eq1gain',
    'v0000',
    'amp_velcurve_',
    'constructor',
    '__proto__',
  ])('does not know %j', (name) => expect(resolveOpcode(name)).toBeUndefined());

  it('never throws, and finds a canonical name under itself', () => {
    const piece = fc.constantFrom(
      'lfo',
      'eg',
      '_',
      'on',
      'cc',
      'curve',
      'cutoff',
      'pitch',
      'amp',
      '2',
      '017',
      'var',
      'mod',
      'v',
      'gain',
      'tune',
      'eq',
      'freq',
      'wave',
    );
    const name = fc.oneof(
      fc.string(),
      fc.array(piece, { maxLength: 7 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(name, (text) => {
        const found = resolveOpcode(text);
        if (!found) return;
        expect(resolveOpcode(found.canonical)).toMatchObject({
          canonical: found.canonical,
          facts: found.facts,
        });
      }),
    );
  });

  it('finds each pattern with numbers put in under its own facts', () => {
    const plain = listOpcodes().filter((facts) => !facts.pattern.includes('*'));
    fc.assert(
      fc.property(
        fc.constantFrom(...plain),
        fc.array(fc.integer({ min: 5, max: 99 }), { minLength: 3, maxLength: 3 }),
        (facts, numbers) => {
          const name = fillPattern(facts.pattern, numbers);
          expect(resolveOpcode(name)?.facts).toBe(facts);
          expect(resolveOpcode(name.toUpperCase())).toMatchObject({ canonical: name, spelling: 'canonical' });
        },
      ),
      { numRuns: 600 },
    );
  });

  it('finds each alias under an opcode that is listed', () => {
    for (const facts of listOpcodes()) {
      for (const alias of facts.aliases) {
        expect(canonical(fillPattern(alias, [5, 6, 7])), alias).toBe(fillPattern(facts.pattern, [5, 6, 7]));
      }
    }
  });
});

describe('listOpcodes', () => {
  it('describes every opcode in a sentence', () => {
    for (const { pattern, description } of listOpcodes()) {
      expect(description, pattern).toMatch(/^[A-Z#].{12,}\.$/);
      expect(description, pattern).not.toContain('Part of ');
    }
  });

  it('modulates only what it lists, but for opcodes known by their movers alone', () => {
    const patterns = new Set(listOpcodes().map((facts) => facts.pattern));
    const unlisted = listOpcodes().filter(
      ({ modulates }) => modulates !== undefined && !patterns.has(modulates),
    );
    expect(unlisted.map((facts) => facts.pattern)).toEqual([]);
  });

  // Common practice: which header takes what.
  it.each([
    ['sample', HeaderKind.control, false],
    ['sample', HeaderKind.region, true],
    ['sample', HeaderKind.curve, false],
    ['key', HeaderKind.control, false],
    ['volume', HeaderKind.control, false],
    ['volume', HeaderKind.effect, true],
    ['default_path', HeaderKind.control, true],
    ['default_path', HeaderKind.global, true],
    ['default_path', HeaderKind.region, false],
    ['note_offset', HeaderKind.group, false],
    ['set_cc7', HeaderKind.master, false],
    ['label_cc7', HeaderKind.control, true],
    ['v064', HeaderKind.curve, true],
    ['v064', HeaderKind.region, false],
    ['curve_index', HeaderKind.group, false],
    ['reverb_wet', HeaderKind.effect, true],
    ['effect1', HeaderKind.region, true],
    ['data', HeaderKind.sample, true],
    ['#define', HeaderKind.curve, true],
    ['sample', HeaderKind.midi, true],
    ['sample', HeaderKind.unknown, true],
  ])('%s under header kind %i: %s', (name, header, taken) => {
    expect(takesOpcode(header, resolveOpcode(name)!.facts)).toBe(taken);
  });
});
