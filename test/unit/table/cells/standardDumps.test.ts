import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { notesOf, regions } from '../tableRegions';

const read = (text: string, names: readonly string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

// Amounts by the SoundFont Technical Specification 2.04, 8.1.2: 48 initialAttenuation in cB, 17 pan in 0.1 %, 51 coarseTune in semitones,
// 52 fineTune in cents, 54 sampleModes (1 loops, 3 loops until the key is released).
describe('generators of SoundFont', () => {
  const expected = [
    'Reed A 40 47 44 -12 -4 -2.5 -100 loop_continuous',
    'Reed B 48 60 52 - 9 - 50 loop_sustain',
  ];
  const names = [
    'sample',
    'lokey',
    'hikey',
    'pitch_keycenter',
    'transpose',
    'tune',
    'volume',
    'pan',
    'loop_mode',
  ];

  it.each([
    [
      'a block for each zone, values lined up',
      `Instrument 5, "Shawm"

zone 0
  keyRange            40-47
  overridingRootKey   44
  coarseTune          -12
  fineTune            -4
  initialAttenuation  25
  pan                 -500
  sampleModes         1
  velRange            0-127
  sampleID            "Reed A"

zone 1
  keyRange            48-60
  overridingRootKey   52
  coarseTune          0
  fineTune            9
  initialAttenuation  0
  pan                 250
  sampleModes         3
  velRange            0-127
  sampleID            "Reed B"`,
    ],
    [
      'a line for each zone',
      `zone 0: sample="Reed A" keyRange=40-47 overridingRootKey=44 coarseTune=-12 fineTune=-4 initialAttenuation=25 pan=-500 sampleModes=1
zone 1: sample="Reed B" keyRange=48-60 overridingRootKey=52 coarseTune=0 fineTune=9 initialAttenuation=0 pan=250 sampleModes=3`,
    ],
    [
      'columns',
      `sampleID\tkeyRange\toverridingRootKey\tcoarseTune\tfineTune\tinitialAttenuation\tpan\tsampleModes
Reed A\t40-47\t44\t-12\t-4\t25\t-500\t1
Reed B\t48-60\t52\t0\t9\t0\t250\t3`,
    ],
  ])('are read in the units of the standard: %s', (_, text) => {
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(read(text, names)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(/tenths of a decibel.*tenths of a percent.*0\.4/u);
  });

  it('with a unit or decimals of their own keep them', () => {
    const text = `sampleID\tkeyRange\toverridingRootKey\tinitialAttenuation
Reed A\t40-47\t44\t2.5 dB
Reed B\t48-60\t52\t10 dB`;
    expect(read(text, ['volume'])).toEqual(['-2.5', '-10']);
  });
});

describe('numbers of samples', () => {
  it('name no sample, beside names and alone', () => {
    const beside = 'SampleID\tFile\tLow\tHigh\n7\ta.wav\t40\t45\n9\tb.wav\t46\t50\n';
    expect(read(beside, ['sample', 'lokey', 'hikey'])).toEqual(['a.wav 40 45', 'b.wav 46 50']);
    const alone = 'Zone\tSampleID\tLow\tHigh\n1\t7\t40\t45\n2\t9\t46\t50\n';
    expect(regions(alone)).toEqual([]);
    expect(looksLikeZoneTable(alone)).toBe(false);
  });
});

// Fields of `inst` and `smpl` as New Multimedia Data Types and Data Techniques (1994) names them.
describe('what a program shows of the chunks of files', () => {
  it('gives their zones', () => {
    const file = (name: string, root: number, low: number, high: number, gain: string, loops: string) =>
      `${name}\n  fmt : PCM, 2 channels\n  inst: bUnshiftedNote=${root} chFineTune=3 chGain=${gain} bLowNote=${low} bHighNote=${high} bLowVelocity=1 bHighVelocity=127\n  smpl: dwMIDIUnityNote=${root} ${loops}\n`;
    const text = [
      file('File: gong/a.wav', 50, 46, 52, '-4 dB', 'loops=1 (type 0, start 210, end 30999)'),
      file('File: gong/b.wav', 56, 53, 58, '0 dB', 'loops=1 (type 0, start 190, end 29001)'),
    ].join('\n');
    expect(looksLikeZoneTable(text)).toBe(true);
    const names = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'tune', 'volume', 'loop_start', 'loop_end'];
    expect(read(text, names)).toEqual([
      'gong/a.wav 46 52 50 3 -4 210 30999',
      'gong/b.wav 53 58 56 3 - 190 29001',
    ]);
  });
});
