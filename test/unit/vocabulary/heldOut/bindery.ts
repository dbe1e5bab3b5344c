import { attributes, facts, invented } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** Everything in ranges: keys, velocities, loops and turns share one text each, and each range has another sign in it. */
export function bindery(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<bindery>'];
  for (const one of invented()) {
    const path = `pages\\p${one.layer}${one.take}-${one.root}.wav`;
    samples.set(path.replace('\\', '/'), facts(one.frames, 44100, { loop: [one.loopStart, one.loopEnd] }));
    lines.push(
      ` <page>`,
      `  <paper${attributes({ source: path, tuned_to: one.root })}/>`,
      `  <reach${attributes({ keys: `${one.low} to ${one.high}`, velocities: `${one.lowVelocity},${one.highVelocity}` })}/>`,
      `  <play${attributes({ loop: `${one.loopStart}:${one.loopEnd}`, round_robin: `${one.take}/2`, reversed: one.zone % 5 === 0 ? 'yes' : 'no' })}/>`,
      ` </page>`,
    );
  }
  lines.push('</bindery>');
  return {
    text: lines.join('\n'),
    samples,
    open: [],
    vocabulary: {
      name: 'bindery',
      levels: [
        { element: 'bindery', is: 'instrument', parameters: [] },
        {
          element: 'page',
          is: 'region',
          parameters: [
            { parameter: 'sample', at: 'paper/@source', form: { kind: 'path', separator: '\\' } },
            { parameter: 'pitch_keycenter', at: 'paper/@tuned_to', form: { kind: 'key', written: 'number' } },
            {
              parameter: 'lokey',
              at: 'reach/@keys',
              part: 1,
              between: ' to ',
              form: { kind: 'key', written: 'number' },
            },
            {
              parameter: 'hikey',
              at: 'reach/@keys',
              part: 2,
              between: ' to ',
              form: { kind: 'key', written: 'number' },
            },
            {
              parameter: 'lovel',
              at: 'reach/@velocities',
              part: 1,
              between: ',',
              form: { kind: 'velocity', most: 127 },
            },
            {
              parameter: 'hivel',
              at: 'reach/@velocities',
              part: 2,
              between: ',',
              form: { kind: 'velocity', most: 127 },
            },
            {
              parameter: 'loop_start',
              at: 'play/@loop',
              part: 1,
              between: ':',
              form: { kind: 'position', unit: 'frames' },
            },
            {
              parameter: 'loop_end',
              at: 'play/@loop',
              part: 2,
              between: ':',
              form: { kind: 'position', unit: 'frames' },
            },
            {
              parameter: 'seq_position',
              at: 'play/@round_robin',
              part: 1,
              between: '/',
              form: { kind: 'number' },
            },
            {
              parameter: 'seq_length',
              at: 'play/@round_robin',
              part: 2,
              between: '/',
              form: { kind: 'number' },
            },
            {
              parameter: 'direction',
              at: 'play/@reversed',
              form: { kind: 'words', words: { yes: 'reverse', no: 'forward' } },
            },
          ],
        },
      ],
    },
  };
}
