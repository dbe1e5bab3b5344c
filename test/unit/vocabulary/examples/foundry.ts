import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, layerWords } from './invented';

/** Attributes alone, flat, names in camel case, numbers in the units of the format with a unit behind the level. */
const vocabulary: Vocabulary = {
  name: 'Bell foundry',
  levels: [
    { element: 'foundry', is: 'instrument', parameters: [] },
    {
      element: 'bell',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@audioFile', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@bottomKey', form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: '@topKey', form: { kind: 'key', written: 'number' } },
        { parameter: 'pitch_keycenter', at: '@baseKey', form: { kind: 'key', written: 'number' } },
        { parameter: 'lovel', at: '@bottomVelocity', form: { kind: 'velocity', most: 127 } },
        { parameter: 'hivel', at: '@topVelocity', form: { kind: 'velocity', most: 127 } },
        { parameter: 'seq_position', at: '@roundRobinPlace', form: { kind: 'number' } },
        { parameter: 'seq_length', at: '@roundRobinCount', form: { kind: 'number' } },
        { parameter: 'volume', at: '@loudness', form: { kind: 'level', unit: 'dB', unitText: ' dB' } },
        { parameter: 'tune', at: '@fineTuneCents', form: { kind: 'tuning', unit: 'cents' } },
        { parameter: 'pan', at: '@panning', form: { kind: 'pan', left: -100, centre: 0, right: 100 } },
        { parameter: 'offset', at: '@skipFrames', form: { kind: 'position', unit: 'frames' } },
        { parameter: 'loop_start', at: '@loopFirstFrame', form: { kind: 'position', unit: 'frames' } },
        { parameter: 'loop_end', at: '@loopLastFrame', form: { kind: 'position', unit: 'frames' } },
        {
          parameter: 'loop_mode',
          at: '@loopKind',
          form: {
            kind: 'words',
            words: { endless: 'loop_continuous', whileHeld: 'loop_sustain', none: 'no_loop' },
          },
        },
      ],
    },
  ],
};

const kinds = { endless: 'loop_continuous', whileHeld: 'loop_sustain', none: 'no_loop' } as const;

export function foundry(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<?xml version="1.0" encoding="UTF-8"?>', '<foundry maker="nobody in particular">'];
  for (const one of invented()) {
    const sample = `bells/${layerWords[one.layer]}/${one.rootName} stroke ${one.take}.wav`;
    const volume = one.vary(25) / 2 - 9;
    const tune = one.vary(41) - 20;
    const pan = one.vary(121) - 60;
    const offset = one.vary(900);
    const kind = (['endless', 'whileHeld', 'none'] as const)[one.zone % 3] ?? 'none';
    const loops = kind !== 'none';
    samples.set(sample, facts(one.frames, 44100, loops ? { loop: [one.loopStart, one.loopEnd] } : {}));
    regions.push({
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      seq_position: one.take,
      seq_length: 2,
      volume,
      tune,
      pan,
      offset,
      loop_mode: kinds[kind],
      ...(loops && { loop_start: one.loopStart, loop_end: one.loopEnd }),
    });
    const values = attributes({
      audioFile: sample,
      bottomKey: one.low,
      topKey: one.high,
      baseKey: one.root,
      bottomVelocity: one.lowVelocity,
      topVelocity: one.highVelocity,
      roundRobinPlace: one.take,
      roundRobinCount: 2,
      loudness: `${volume.toFixed(1)} dB`,
      fineTuneCents: tune,
      panning: pan,
      skipFrames: offset,
      loopFirstFrame: loops ? one.loopStart : undefined,
      loopLastFrame: loops ? one.loopEnd : undefined,
      loopKind: kind,
      castOn: `day ${one.vary(300)}`,
    });
    lines.push(`  <bell${values}/>`);
  }
  lines.push('</foundry>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
