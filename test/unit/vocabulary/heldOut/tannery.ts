import { attributes, type facts, invented } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** Without any sample file at hand: note names without other evidence, ends that may or may not be played, constant columns. */
export function tannery(): HeldOut {
  const lines = ['<Tannery>', '<Hides>'];
  for (const one of invented().slice(0, 60)) {
    lines.push(
      `<Hide${attributes({
        AudioFile: `hides/${one.layer}${one.zone}${one.take}x.wav`,
        LowestNote: one.rootName,
        HighestNote: one.rootName,
        RootNote: one.rootName,
        MinVelocity: 0,
        MaxVelocity: 1,
        LoopBegin: one.loopStart,
        LoopFinish: one.loopEnd,
        Gain: 1,
        Balance: 0,
        DetuneCents: one.vary(21) - 10,
      })}/>`,
    );
  }
  lines.push('</Hides>', '</Tannery>');
  return {
    text: lines.join('\n'),
    samples: new Map<string, ReturnType<typeof facts>>(),
    open: ['middleC', 'velocity.most', 'loop_end.last', 'volume.unit', 'pan.range'],
    vocabulary: {
      name: 'tannery',
      loops: 'loop_continuous' as const,
      levels: [
        { element: 'Tannery', is: 'instrument', parameters: [] },
        {
          element: 'Hide',
          is: 'region',
          inside: ['Hides'],
          parameters: [
            { parameter: 'sample', at: '@AudioFile', form: { kind: 'path' } },
            { parameter: 'lokey', at: '@LowestNote', form: { kind: 'key', written: 'name', middleC: 'C4' } },
            { parameter: 'hikey', at: '@HighestNote', form: { kind: 'key', written: 'name', middleC: 'C4' } },
            {
              parameter: 'pitch_keycenter',
              at: '@RootNote',
              form: { kind: 'key', written: 'name', middleC: 'C4' },
            },
            { parameter: 'lovel', at: '@MinVelocity', form: { kind: 'velocity', most: 1 } },
            { parameter: 'hivel', at: '@MaxVelocity', form: { kind: 'velocity', most: 1 } },
            { parameter: 'loop_start', at: '@LoopBegin', form: { kind: 'position', unit: 'frames' } },
            { parameter: 'loop_end', at: '@LoopFinish', form: { kind: 'position', unit: 'frames' } },
            { parameter: 'volume', at: '@Gain', form: { kind: 'level', unit: 'factor' } },
            { parameter: 'pan', at: '@Balance', form: { kind: 'pan', left: -100, centre: 0, right: 100 } },
            { parameter: 'tune', at: '@DetuneCents', form: { kind: 'tuning', unit: 'cents' } },
          ],
        },
      ],
    },
  };
}
