import { attributes, facts } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** The path stands in the group, and the regions are slices of that file: their ends are where the next one starts. */
export function quarry(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<quarry reverberation="long">'];
  for (let face = 0; face < 10; face++) {
    const path = `face${face}.wav`;
    samples.set(path, facts(120_000 + face, 44100));
    lines.push(` <face ${attributes({ 'sound-file': path, 'choke-group': face + 1 }).trim()}>`);
    for (let block = 0; block < 12; block++) {
      const values = attributes({
        'midi-note': 24 + face * 8 + block,
        'start-frame': block * 9000,
        'end-frame': (block + 1) * 9000,
        'pan-percent': `${[50, 0, 100, 25, 80][block % 5]}%`,
        one_shot: 'true',
      });
      lines.push(`  <block${values}></block>`);
    }
    lines.push(' </face>');
  }
  lines.push('</quarry>');
  return {
    text: lines.join('\n'),
    samples,
    open: [],
    vocabulary: {
      name: 'quarry',
      levels: [
        { element: 'quarry', is: 'instrument', parameters: [] },
        {
          element: 'face',
          is: 'group',
          parameters: [
            { parameter: 'sample', at: '@sound-file', form: { kind: 'path' } },
            { parameter: 'group', at: '@choke-group', form: { kind: 'number' } },
            { parameter: 'off_by', at: '@choke-group', form: { kind: 'number' } },
          ],
        },
        {
          element: 'block',
          is: 'region',
          parameters: [
            { parameter: 'key', at: '@midi-note', form: { kind: 'key', written: 'number' } },
            { parameter: 'offset', at: '@start-frame', form: { kind: 'position', unit: 'frames' } },
            {
              parameter: 'end',
              at: '@end-frame',
              form: { kind: 'position', unit: 'frames', last: 'excluded' },
            },
            {
              parameter: 'pan',
              at: '@pan-percent',
              form: { kind: 'pan', left: 0, centre: 50, right: 100, unitText: '%' },
            },
            {
              parameter: 'loop_mode',
              at: '@one_shot',
              form: { kind: 'words', words: { true: 'one_shot', false: 'no_loop' } },
            },
          ],
        },
      ],
    },
  };
}
