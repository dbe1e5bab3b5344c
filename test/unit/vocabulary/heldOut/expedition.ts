import { facts, invented } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** Elements that name their value and hold it as text; lengths instead of ends; a folder in an outer element. */
export function expedition(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<Expedition folder="Field Tapes/">', '\t<Camp>'];
  for (const one of invented()) {
    const name = `Call ${one.root} ${one.layer}${one.take}.aif`;
    samples.set(
      `Field Tapes/${name}`,
      facts(one.frames, 96000, { rootKey: one.root, loop: [one.loopStart, one.loopEnd] }),
    );
    const values = {
      Recording: name,
      NoteFrom: one.low,
      NoteTo: one.high,
      OriginalNote: one.root,
      VelocityFrom: one.lowVelocity,
      VelocityTo: one.highVelocity,
      LoopStart: one.loopStart,
      LoopLength: one.loopEnd - one.loopStart + 1,
      Attenuation: (one.vary(80) / 10).toFixed(1),
      TransposeSemitones: one.vary(5) - 2,
      Weather: one.vary(3) ? 'rain' : 'sun',
    };
    lines.push('\t\t<Sighting>');
    for (const [name, value] of Object.entries(values))
      lines.push(`\t\t\t<Fact Kind='${name}'>${value}</Fact>`);
    lines.push('\t\t</Sighting>');
  }
  lines.push('\t</Camp>', '</Expedition>');
  const at = (name: string) => `Fact[@Kind="${name}"]`;
  return {
    text: lines.join('\r\n'),
    samples,
    open: [],
    vocabulary: {
      name: 'expedition',
      levels: [
        { element: 'Expedition', is: 'instrument', parameters: [] },
        {
          element: 'Sighting',
          is: 'region',
          inside: ['Camp'],
          parameters: [
            { parameter: 'sample', at: at('Recording'), form: { kind: 'path', folder: 'Field Tapes' } },
            { parameter: 'lokey', at: at('NoteFrom'), form: { kind: 'key', written: 'number' } },
            { parameter: 'hikey', at: at('NoteTo'), form: { kind: 'key', written: 'number' } },
            {
              parameter: 'pitch_keycenter',
              at: at('OriginalNote'),
              form: { kind: 'key', written: 'number' },
            },
            { parameter: 'lovel', at: at('VelocityFrom'), form: { kind: 'velocity', most: 127 } },
            { parameter: 'hivel', at: at('VelocityTo'), form: { kind: 'velocity', most: 127 } },
            { parameter: 'loop_start', at: at('LoopStart'), form: { kind: 'position', unit: 'frames' } },
            {
              parameter: 'loop_end',
              at: at('LoopLength'),
              form: { kind: 'position', unit: 'frames', from: 'loop_start' },
            },
            {
              parameter: 'volume',
              at: at('Attenuation'),
              form: { kind: 'level', unit: 'dB', attenuation: true },
            },
            {
              parameter: 'transpose',
              at: at('TransposeSemitones'),
              form: { kind: 'tuning', unit: 'semitones' },
            },
          ],
        },
      ],
    },
  };
}
