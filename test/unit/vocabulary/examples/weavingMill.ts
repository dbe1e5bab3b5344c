import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, layerWords } from './invented';

/**
 * Range texts, names with underscores, single quotes; key numbers, velocities up to 127, attenuation in dB, pan from 0 to 1,
 * ratios of frequencies, milliseconds, loops by their length.
 */
const vocabulary: Vocabulary = {
  name: 'Weaving mill',
  levels: [
    { element: 'weaving_mill', is: 'instrument', parameters: [] },
    {
      element: 'cloth',
      is: 'region',
      inside: ['loom'],
      parameters: [
        { parameter: 'sample', at: '@wave_path', form: { kind: 'path' } },
        {
          parameter: 'lokey',
          at: '@key_range',
          part: 1,
          between: '-',
          form: { kind: 'key', written: 'number' },
        },
        {
          parameter: 'hikey',
          at: '@key_range',
          part: 2,
          between: '-',
          form: { kind: 'key', written: 'number' },
        },
        { parameter: 'pitch_keycenter', at: '@unity_key', form: { kind: 'key', written: 'number' } },
        {
          parameter: 'lovel',
          at: '@velocity_range',
          part: 1,
          between: '..',
          form: { kind: 'velocity', most: 127 },
        },
        {
          parameter: 'hivel',
          at: '@velocity_range',
          part: 2,
          between: '..',
          form: { kind: 'velocity', most: 127 },
        },
        {
          parameter: 'volume',
          at: '@attenuation_db',
          form: { kind: 'level', unit: 'dB', attenuation: true },
        },
        { parameter: 'pan', at: '@pan_position', form: { kind: 'pan', left: 0, centre: 0.5, right: 1 } },
        { parameter: 'tune', at: '@tuning_ratio', form: { kind: 'tuning', unit: 'ratio' } },
        { parameter: 'offset', at: '@start_offset_ms', form: { kind: 'position', unit: 'milliseconds' } },
        { parameter: 'loop_start', at: '@loop_start_ms', form: { kind: 'position', unit: 'milliseconds' } },
        {
          parameter: 'loop_end',
          at: '@loop_length_ms',
          form: { kind: 'position', unit: 'milliseconds', from: 'loop_start' },
        },
        { parameter: 'ampeg_attack', at: '@attack_s', form: { kind: 'time', unit: 'seconds' } },
      ],
    },
  ],
};

const rate = 48000;

export function weavingMill(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ["<weaving_mill since='1789'>", '  <loom>'];
  for (const one of invented()) {
    const sample = `wool/${layerWords[one.layer]}_${one.root}_${one.take}.wav`;
    const quieter = one.vary(31) * 0.8;
    const pan = one.vary(41) - 20;
    const ratio = 0.98 + one.vary(40) / 1000;
    const skipped = one.vary(60) / 4;
    const loopStart = 80 + one.vary(50);
    const loopLength = 200 + one.vary(70) / 2;
    const attack = one.vary(20) / 100;
    const loop = [loopStart * 48, loopStart * 48 + loopLength * 48 - 1] as const;
    samples.set(sample, facts(one.frames, rate, { loop }));
    regions.push({
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      volume: 0 - quieter,
      pan: pan * 5,
      tune: 1200 * Math.log2(ratio),
      offset: skipped * 48,
      loop_start: loop[0],
      loop_end: loop[1],
      ampeg_attack: attack,
    });
    const values = attributes({
      wave_path: sample,
      key_range: `${one.low}-${one.high}`,
      unity_key: one.root,
      velocity_range: `${one.lowVelocity}..${one.highVelocity}`,
      attenuation_db: quieter.toFixed(1),
      pan_position: ((pan + 20) / 40).toFixed(3),
      tuning_ratio: ratio.toFixed(3),
      start_offset_ms: skipped,
      loop_start_ms: loopStart,
      loop_length_ms: loopLength,
      attack_s: attack,
    });
    lines.push(`    <cloth${values.replaceAll('"', "'")}></cloth>`);
  }
  lines.push('  </loom>', '</weaving_mill>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
