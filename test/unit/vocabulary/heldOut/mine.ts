import { facts, invented } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** A prefix everywhere, keys an octave below MIDI, velocities as fractions of three digits, levels in percent, frames from 1. */
export function mine(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<m:Mine xmlns:m="urn:example:mine"><m:Shaft><m:Ores>'];
  for (const [at, one] of invented().entries()) {
    const path = `ore/${at}.wav`;
    samples.set(path, facts(one.frames, 44100, { rootKey: one.root, loop: [one.loopStart, one.loopEnd] }));
    const force = (velocity: number) => (velocity / 127).toFixed(3);
    lines.push(
      `<m:Ore><m:Lump m:uri="${path}"/>`,
      `<m:Compass m:floor="${one.low - 12}" m:ceiling="${one.high - 12}" m:home="${one.root - 12}"/>`,
      `<m:Force m:weakest="${force(one.lowVelocity)}" m:strongest="${force(one.highVelocity)}"/>`,
      `<m:Mix><m:Loudness>${50 + one.vary(51)}</m:Loudness><m:Side>${(one.vary(101) / 100).toFixed(2)}</m:Side></m:Mix>`,
      `<m:Loop m:first="${one.loopStart + 1}" m:last="${one.loopEnd + 1}"/></m:Ore>`,
    );
  }
  lines.push('</m:Ores></m:Shaft></m:Mine>');
  const key = { kind: 'key', written: 'number', offset: -12 } as const;
  return {
    text: lines.join('\n'),
    samples,
    open: ['keyOffset'],
    vocabulary: {
      name: 'mine',
      levels: [
        { element: 'm:Mine', is: 'instrument', parameters: [] },
        {
          element: 'm:Ore',
          is: 'region',
          inside: ['m:Shaft', 'm:Ores'],
          parameters: [
            { parameter: 'sample', at: 'm:Lump/@m:uri', form: { kind: 'path' } },
            { parameter: 'lokey', at: 'm:Compass/@m:floor', form: key },
            { parameter: 'hikey', at: 'm:Compass/@m:ceiling', form: key },
            { parameter: 'pitch_keycenter', at: 'm:Compass/@m:home', form: key },
            { parameter: 'lovel', at: 'm:Force/@m:weakest', form: { kind: 'velocity', most: 1 } },
            { parameter: 'hivel', at: 'm:Force/@m:strongest', form: { kind: 'velocity', most: 1 } },
            { parameter: 'volume', at: 'm:Mix/m:Loudness', form: { kind: 'level', unit: 'percent' } },
            { parameter: 'pan', at: 'm:Mix/m:Side', form: { kind: 'pan', left: 0, centre: 0.5, right: 1 } },
            {
              parameter: 'loop_start',
              at: 'm:Loop/@m:first',
              form: { kind: 'position', unit: 'frames', first: 1 },
            },
            {
              parameter: 'loop_end',
              at: 'm:Loop/@m:last',
              form: { kind: 'position', unit: 'frames', first: 1 },
            },
          ],
        },
      ],
    },
  };
}
