import { describe, expect, it } from 'vitest';
import { Generator as g } from '../../../server/soundfont/generators';
import type { TestGenerator, TestModulator } from './fontBytes';
import { fontBytes, simpleFont, tone } from './fontBytes';
import { regionsOf } from './readFonts';

// Units and defaults: SoundFont Technical Specification 2.04, sections 8.1.2, 8.1.3 and 9.3.

async function one(gens: TestGenerator[], mods: TestModulator[] = [], attenuation: 1 | 0.4 = 1) {
  const { regions, notes } = await regionsOf(simpleFont(gens, { mods }), 0, attenuation);
  return {
    values: regions[0]!,
    messages: notes.map(({ kind, message }) => `${kind}: ${message}`).join('\n'),
  };
}

describe('generators as opcodes', () => {
  it('says little of a region that says nothing, but for the vibrato that every instrument has', async () => {
    const { values } = await one([]);
    expect(values).toEqual({
      global_label: 'Reed',
      group_label: 'Reed',
      sample: 'Reed C4.wav',
      pitch_keycenter: 60,
      loop_mode: 'no_loop',
      // Modulators 3 and 4 of section 8.4: 50 cents at 1; 127 of 128 is the most that is reached.
      pitchlfo_depthcc1: 49.6094,
      pitchlfo_depthchanaft: 49.6094,
      pitchlfo_freq: 8.1758,
    });
  });

  it.each<[string, TestGenerator[], Record<string, unknown>]>([
    ['root key', [[g.rootKey, 72]], { pitch_keycenter: 72 }],
    [
      'tuning',
      [
        [g.coarseTune, 2],
        [g.fineTune, -30],
      ],
      { transpose: 1, tune: 70 },
    ],
    ['small tuning', [[g.fineTune, -30]], { tune: -30 }],
    ['scale tuning', [[g.scaleTuning, 50]], { pitch_keytrack: 50 }],
    ['a forced key', [[g.forcedKey, 72]], { pitch_keytrack: 0, transpose: 12 }],
    // 40·log10(64/127) = −11.905 dB.
    ['a forced velocity', [[g.forcedVelocity, 64]], { amp_veltrack: 0, volume: -11.9049 }],
    ['attenuation', [[g.attenuation, 123]], { volume: -12.3 }],
    ['pan', [[g.pan, -250]], { pan: -50 }],
    [
      'sends',
      [
        [g.reverbSend, 150],
        [g.chorusSend, 25],
      ],
      { effect1: 15, effect2: 2.5 },
    ],
    ['a class', [[g.exclusiveClass, 3]], { group: 3, off_by: 3 }],
    [
      'offsets',
      [
        [g.startOffset, 10],
        [g.endOffset, -20],
      ],
      { offset: 10, end: 179 },
    ],
    // A loop from 40 up to and without 160.
    ['a loop', [[g.sampleModes, 1]], { loop_mode: 'loop_continuous', loop_start: 40, loop_end: 159 }],
    [
      'a loop until release',
      [
        [g.sampleModes, 3],
        [g.loopStartOffset, 5],
        [g.loopEndOffset, -3],
      ],
      { loop_mode: 'loop_sustain', loop_start: 45, loop_end: 156 },
    ],
    // 1200 timecents are 2 s; a fall of 100 dB in T is one of 90 dB in 0.9 T.
    [
      'the volume envelope',
      [
        [g.volumeDelay, -1200],
        [g.volumeAttack, 0],
        [g.volumeHold, 1200],
        [g.volumeDecay, 1200],
        [g.volumeSustain, 200],
        [g.volumeRelease, 1200],
      ],
      {
        ampeg_delay: 0.5,
        ampeg_attack: 1,
        ampeg_hold: 2,
        ampeg_decay: 1.8,
        ampeg_sustain: 10,
        ampeg_release: 1.8,
      },
    ],
    [
      'a sustain of silence',
      [
        [g.volumeSustain, 1000],
        [g.volumeDecay, 0],
      ],
      { ampeg_sustain: 0, ampeg_decay: 0.9 },
    ],
    // 6900 cents above 8.176 Hz is key 69, 440 Hz; half the resonance is lost (10 dB: 5 dB).
    [
      'the filter',
      [
        [g.filterCutoff, 6900],
        [g.filterResonance, 100],
      ],
      { cutoff: 440, resonance: 10, volume: -5 },
    ],
    [
      'the modulation envelope',
      [
        [g.modulationEnvelopeToCutoff, 2400],
        [g.modulationEnvelopeToPitch, -100],
        [g.modulationDecay, 0],
        [g.modulationSustain, 250],
        [g.modulationRelease, 0],
      ],
      {
        fileg_depth: 2400,
        fileg_decay: 1,
        fileg_sustain: 75,
        fileg_release: 0.75,
        pitcheg_depth: -100,
        pitcheg_decay: 1,
        pitcheg_sustain: 75,
        cutoff: 19912.1,
      },
    ],
    [
      'the LFOs',
      [
        [g.modulationLfoToVolume, 30],
        [g.modulationLfoToCutoff, 600],
        [g.modulationLfoFrequency, -1200],
        [g.vibratoLfoToPitch, 20],
        [g.vibratoLfoDelay, 0],
      ],
      {
        amplfo_depth: 3,
        amplfo_freq: 4.0879,
        fillfo_depth: 600,
        fillfo_freq: 4.0879,
        pitchlfo_depth: 20,
        pitchlfo_delay: 1,
        pitchlfo_freq: 8.1758,
      },
    ],
    [
      'an LFO to pitch beside the vibrato',
      [[g.modulationLfoToPitch, 15]],
      { lfo1_pitch: 15, lfo1_freq: 8.1758, lfo1_wave: 0 },
    ],
    // At key 48, 12 below 60, 100 timecents a key make an octave of 1200: 2 s.
    [
      'a time that depends on the key',
      [
        [g.keyRange, [48, 48]],
        [g.volumeHold, 0],
        [g.keyToVolumeHold, 100],
      ],
      { ampeg_hold: 2 },
    ],
  ])('%s', async (_, gens, opcodes) => {
    expect((await one(gens)).values).toMatchObject(opcodes);
  });

  it('takes 0.4 of the attenuation where it is asked to', async () => {
    expect((await one([[g.attenuation, 100]], [], 0.4)).values).toMatchObject({ volume: -4 });
  });

  it('says at the middle key what depends on the key, with how far it is off', async () => {
    const { values, messages } = await one([
      [g.keyRange, [48, 72]],
      [g.volumeHold, 0],
      [g.keyToVolumeHold, 100],
    ]);
    expect(values).toMatchObject({ ampeg_hold: 1 });
    expect(messages).toMatch(/approximated: .*middle key of the region, off by a factor of 2.00/);
  });

  it('leaves out a loop that cannot be, with a note', async () => {
    const { values, messages } = await one([
      [g.sampleModes, 1],
      [g.loopStartOffset, 200],
    ]);
    expect(values).toMatchObject({ loop_mode: 'no_loop' });
    expect(messages).toMatch(/dropped: Left out: a loop that ends before it starts/);
  });

  it('takes a root key of 255 as 60 (section 7.10)', async () => {
    const bytes = simpleFont([], {
      samples: [{ name: 'Noise', frames: tone(60, 20), root: 255, correction: -7 }],
    });
    expect((await regionsOf(bytes)).regions[0]).toMatchObject({ pitch_keycenter: 60, tune: -7 });
  });
});

describe('modulators as opcodes', () => {
  // Sources: section 8.2; 0x0502 velocity, falling, concave; 0x0002 velocity, linear; 0x0003 key; bit 7: controller.
  it.each<[string, TestModulator[], Record<string, unknown>]>([
    ['the level not moved by velocity', [[0x0502, g.attenuation, 0]], { amp_veltrack: 0 }],
    // Half of 960: the square root of (v/127)², at velocity 56 so 0.4409.
    [
      'the level moved half as much',
      [[0x0502, g.attenuation, 480]],
      { amp_velcurve_56: 0.44094, amp_velcurve_127: 1 },
    ],
    [
      'velocity opening the filter',
      [[0x0002, g.filterCutoff, 1280]],
      { fil_veltrack: 1270, cutoff: 19912.1 },
    ],
    // Falling: 2560 at velocity 0, 2560 less 2540 at 127, but no more than 13500 in all.
    ['velocity closing the filter', [[0x0102, g.filterCutoff, -2560]], { fil_veltrack: 2540 }],
    // 128·k cents over the keys is k cents a key; at key 60 nothing is to be added.
    ['the key moving the filter', [[0x0003, g.filterCutoff, 12800]], { fil_keytrack: 100 }],
    ['the key moving the level', [[0x0003, g.attenuation, 1280]], { amp_keytrack: -1, volume: -60 }],
    ['a controller moving the filter', [[0x00ca, g.filterCutoff, 1280]], { cutoff_cc74: 1270 }],
    ['a controller moving the pan both ways', [[0x0290, g.pan, 128]], { pan_oncc16: 50.8, pan: -25.6 }],
    [
      'no vibrato by the wheel',
      [
        [0x0081, g.vibratoLfoToPitch, 0],
        [0x000d, g.vibratoLfoToPitch, 0],
      ],
      { loop_mode: 'no_loop' },
    ],
    ['silence below the middle of a controller', [[0x0d81, g.attenuation, 1440]], { locc1: 64 }],
    ['silence above it', [[0x0c81, g.attenuation, 1440]], { hicc1: 63 }],
    ['something at all times', [[0, g.attenuation, 60]], { volume: -6 }],
    // −12000 + 1280 timecents at velocity 0 are 2.046 ms; −12000 + 10 at 127 are 0.983 ms.
    [
      'velocity moving the attack',
      [[0x0102, g.volumeAttack, 1280]],
      { ampeg_attack: 0.002046, ampeg_vel2attack: -0.001063 },
    ],
  ])('%s', async (_, mods, opcodes) => {
    const { values } = await one([], mods);
    expect(values).toMatchObject(opcodes);
    if (mods.some(([, , amount]) => amount === 0) && mods.length > 1)
      expect(Object.keys(values).join()).not.toMatch(/pitchlfo/);
  });

  it('adds what a preset says of the same modulator, and replaces what the instrument says globally (section 9.5)', async () => {
    const zones = (amount: number) => [{ mods: [[0x0502, g.attenuation, amount] as TestModulator] }];
    const bytes = simpleFont([], {
      presets: [{ name: 'P', zones: [...zones(100), { gens: [[g.instrument, 0]] }] }],
      instruments: [
        {
          name: 'I',
          zones: [...zones(500), { gens: [[g.sample, 0]], mods: [[0x0502, g.attenuation, -100]] }],
        },
      ],
    });
    expect((await regionsOf(bytes)).regions[0]).toMatchObject({ amp_veltrack: 0 });
  });

  it('says nothing of what players do with a channel by themselves', async () => {
    const { messages } = await one(
      [],
      [
        [0x0587, g.attenuation, 960],
        [0x020e, g.fineTune, 12700, 0x0010],
      ],
    );
    expect(messages).not.toMatch(/modulator/);
  });

  it('notes what has no word: amount sources, curves and chains', async () => {
    const { messages } = await one(
      [],
      [
        [0x0402, g.filterResonance, -470, 0x0d02],
        [0x0587, g.filterCutoff, 100],
        [0x0081, 0x8001, 100],
      ],
    );
    expect(messages).toMatch(/dropped: .*from velocity by velocity to filter resonance/);
    expect(messages).toMatch(/dropped: .*from controller 7 to filter cutoff/);
    expect(messages).toMatch(/dropped: .*from controller 1 to another modulator/);
  });

  it('tells that the velocity is taken not to move the filter, unless the font says so itself', async () => {
    expect((await one([])).messages).toMatch(/assumed: .*does not say whether velocity moves the filter/);
    const said = await one([], [[0x0102, g.filterCutoff, 0, 0x0d02]]);
    expect(said.messages).not.toMatch(/assumed/);
  });
});

describe('left and right samples', () => {
  const sides = (
    change: Partial<{
      rightFrames: number;
      rightRoot: number;
      names: [string, string];
      types: [number, number];
      pans: [number, number];
    }> = {},
  ) => {
    const {
      rightFrames = 60,
      rightRoot = 60,
      names = ['Bell L', 'Bell R'],
      types = [4, 2],
      pans = [-500, 500],
    } = change;
    return fontBytes({
      presets: [{ name: 'P', zones: [{ gens: [[g.instrument, 0]] }] }],
      instruments: [
        {
          name: 'I',
          zones: pans.map((pan, sample) => ({
            gens: [
              [g.pan, pan],
              [g.sampleModes, 1],
              [g.sample, sample],
            ] as TestGenerator[],
          })),
        },
      ],
      samples: [
        { name: names[0], frames: tone(60, 20), loop: [10, 50], type: types[0] },
        { name: names[1], frames: tone(rightFrames, 15), loop: [10, 50], root: rightRoot, type: types[1] },
      ],
    });
  };

  it('become one region of a stereo file', async () => {
    const { regions } = await regionsOf(sides());
    expect(regions).toHaveLength(1);
    expect(regions[0]).toMatchObject({ sample: 'Bell.wav', loop_start: 10, loop_end: 49 });
    expect(regions[0]).not.toHaveProperty('pan');
  });

  it.each<[string, Parameters<typeof sides>[0], number]>([
    ['by their names alone', { types: [1, 1] }, 1],
    ['of another length', { rightFrames: 70 }, 1],
    ['of other names', { names: ['Bell', 'Gong'] }, 2],
    ['of another root key', { rightRoot: 61 }, 2],
    ['panned less than hard', { pans: [-400, 400] }, 2],
    ['on one side', { pans: [-500, -500] }, 2],
  ])('%s', async (_, change, count) => {
    expect((await regionsOf(sides(change))).regions).toHaveLength(count);
  });
});
