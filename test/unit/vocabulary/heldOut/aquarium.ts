import { attributes, facts, invented, layerWords } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** As short as can be: abbreviations of two letters, velocities as fractions that layers share, all in one attribute each. */
export function aquarium(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<aquarium><tank>'];
  for (const one of invented()) {
    const path = `${layerWords[one.layer]}_${one.root}_${one.take}.flac`;
    samples.set(path, facts(one.frames, 48000, { rootKey: one.root, loop: [one.loopStart, one.loopEnd] }));
    lines.push(
      `<fish${attributes({
        wv: path,
        nlo: one.low,
        nhi: one.high,
        rk: one.root,
        vlo: one.layer / 4,
        vhi: (one.layer + 1) / 4,
        lp: one.zone % 2,
        ls: one.loopStart,
        le: one.loopEnd + 1,
        gn: (one.vary(100) / 100).toFixed(2),
        pn: ((one.vary(200) - 100) / 100).toFixed(2),
        scales: one.vary(90),
      })}/>`,
    );
  }
  lines.push('</tank></aquarium>');
  return {
    text: lines.join(''),
    samples,
    open: [],
    vocabulary: {
      name: 'aquarium',
      levels: [
        { element: 'aquarium', is: 'instrument', parameters: [] },
        {
          element: 'fish',
          is: 'region',
          inside: ['tank'],
          parameters: [
            { parameter: 'sample', at: '@wv', form: { kind: 'path' } },
            { parameter: 'lokey', at: '@nlo', form: { kind: 'key', written: 'number' } },
            { parameter: 'hikey', at: '@nhi', form: { kind: 'key', written: 'number' } },
            { parameter: 'pitch_keycenter', at: '@rk', form: { kind: 'key', written: 'number' } },
            { parameter: 'lovel', at: '@vlo', form: { kind: 'velocity', most: 1, touching: true } },
            { parameter: 'hivel', at: '@vhi', form: { kind: 'velocity', most: 1, touching: true } },
            {
              parameter: 'loop_mode',
              at: '@lp',
              form: { kind: 'words', words: { '0': 'no_loop', '1': 'loop_continuous' } },
            },
            { parameter: 'loop_start', at: '@ls', form: { kind: 'position', unit: 'frames' } },
            {
              parameter: 'loop_end',
              at: '@le',
              form: { kind: 'position', unit: 'frames', last: 'excluded' },
            },
            { parameter: 'volume', at: '@gn', form: { kind: 'level', unit: 'factor' } },
            { parameter: 'pan', at: '@pn', form: { kind: 'pan', left: -1, centre: 0, right: 1 } },
          ],
        },
      ],
    },
  };
}
