import { attributes, type facts, invented, nameOf } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** Two takes in one element that holds what they share, key names that only the names of the files explain, a switch. */
export function dairy(): HeldOut {
  const lines = ['<dairy><defaults><amp level="-6" release="0.4"/></defaults>'];
  const all = invented();
  for (const one of all.filter(({ take }) => take === 1)) {
    const keys = { low: nameOf(one.low, 3), high: nameOf(one.high, 3), root: nameOf(one.root, 3) };
    lines.push(
      `<cow${attributes({ ...keys, velocityLow: one.lowVelocity, velocityHigh: one.highVelocity })}><milking of="2">`,
    );
    for (const take of [1, 2]) {
      const path = `milk-${one.root}${'abcd'[one.layer]}/${one.root}_take${take}`;
      lines.push(
        `<jug${attributes({ turn: take, file: `${path}.wav`, isReversed: one.zone % 6 ? 'false' : 'true' })}/>`,
      );
    }
    lines.push('</milking></cow>');
  }
  lines.push('</dairy>');
  const key = { kind: 'key', written: 'name', middleC: 'C3' } as const;
  return {
    text: lines.join('\n'),
    samples: new Map<string, ReturnType<typeof facts>>(),
    open: [],
    vocabulary: {
      name: 'dairy',
      levels: [
        {
          element: 'dairy',
          is: 'instrument',
          parameters: [
            { parameter: 'volume', at: 'defaults/amp/@level', form: { kind: 'level', unit: 'dB' } },
            {
              parameter: 'ampeg_release',
              at: 'defaults/amp/@release',
              form: { kind: 'time', unit: 'seconds' },
            },
          ],
        },
        {
          element: 'cow',
          is: 'group',
          parameters: [
            { parameter: 'lokey', at: '@low', form: key },
            { parameter: 'hikey', at: '@high', form: key },
            { parameter: 'pitch_keycenter', at: '@root', form: key },
            { parameter: 'lovel', at: '@velocityLow', form: { kind: 'velocity', most: 127 } },
            { parameter: 'hivel', at: '@velocityHigh', form: { kind: 'velocity', most: 127 } },
          ],
        },
        {
          element: 'jug',
          is: 'region',
          inside: ['milking'],
          parameters: [
            { parameter: 'seq_position', at: '@turn', form: { kind: 'number' } },
            { parameter: 'sample', at: '@file', form: { kind: 'path' } },
            {
              parameter: 'direction',
              at: '@isReversed',
              form: { kind: 'words', words: { true: 'reverse', false: 'forward' } },
            },
          ],
        },
      ],
    },
  };
}
