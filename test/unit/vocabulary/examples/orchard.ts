import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, layerWords, nameOf } from './invented';

/**
 * Attributes of child elements, names with dashes, velocities inherited from the rows; note names with C3 for key 60,
 * velocities and pan from 0 or −1 to 1, levels as factors, semitones, seconds with ends that are not played.
 */
const vocabulary: Vocabulary = {
  name: 'Orchard',
  levels: [
    { element: 'orchard-book', is: 'instrument', parameters: [] },
    {
      element: 'tree-row',
      is: 'group',
      inside: ['hillside'],
      parameters: [
        { parameter: 'group_label', at: '@title', form: { kind: 'text' } },
        { parameter: 'lovel', at: '@min-velocity', form: { kind: 'velocity', most: 1 } },
        { parameter: 'hivel', at: '@max-velocity', form: { kind: 'velocity', most: 1 } },
      ],
    },
    {
      element: 'fruit-tree',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: 'recording/@source', form: { kind: 'path' } },
        { parameter: 'offset', at: 'recording/@start-seconds', form: { kind: 'position', unit: 'seconds' } },
        {
          parameter: 'end',
          at: 'recording/@end-seconds',
          form: { kind: 'position', unit: 'seconds', last: 'excluded' },
        },
        { parameter: 'lokey', at: 'note-span/@from', form: { kind: 'key', written: 'name', middleC: 'C3' } },
        { parameter: 'hikey', at: 'note-span/@to', form: { kind: 'key', written: 'name', middleC: 'C3' } },
        {
          parameter: 'pitch_keycenter',
          at: 'note-span/@centre-note',
          form: { kind: 'key', written: 'name', middleC: 'C3' },
        },
        { parameter: 'volume', at: 'mixing/@linear-gain', form: { kind: 'level', unit: 'factor' } },
        { parameter: 'pan', at: 'mixing/@stereo-pan', form: { kind: 'pan', left: -1, centre: 0, right: 1 } },
        { parameter: 'tune', at: 'mixing/@detune-semitones', form: { kind: 'tuning', unit: 'semitones' } },
      ],
    },
  ],
};

const rate = 48000;

export function orchard(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<orchard-book>', '  <hillside>'];
  let row = -1;
  for (const one of invented()) {
    const title = `Row of ${layerWords[one.layer]} apples`;
    if (one.layer !== row) {
      if (row >= 0) lines.push('    </tree-row>');
      row = one.layer;
      const bounds = { 'min-velocity': share(one.lowVelocity), 'max-velocity': share(one.highVelocity) };
      lines.push(`    <tree-row${attributes({ title, ...bounds })}>`);
    }
    const sample = `apples/${layerWords[one.layer]}-${one.zone + 1}-${one.take}.wav`;
    // Times in steps of 5 ms are whole numbers of frames at 48,000 a second.
    const startSteps = one.vary(40);
    const endSteps = 100 + one.vary(20);
    const gain = 20 + one.vary(90);
    const pan = one.vary(33) - 16;
    const cents = one.vary(61) - 30;
    // Some are played to their very end.
    const frames = one.zone % 5 === 0 ? endSteps * 240 : one.frames;
    samples.set(sample, facts(frames, rate, { rootKey: one.root }));
    regions.push({
      group_label: title,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      sample,
      offset: startSteps * 240,
      end: endSteps * 240 - 1,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      volume: 20 * Math.log10(gain / 100),
      pan: pan * 5,
      tune: cents,
    });
    const times = {
      'start-seconds': (startSteps * 0.005).toFixed(3),
      'end-seconds': (endSteps * 0.005).toFixed(3),
    };
    const keys = { from: nameOf(one.low, 3), to: nameOf(one.high, 3), 'centre-note': nameOf(one.root, 3) };
    const mixing = {
      'linear-gain': (gain / 100).toFixed(2),
      'stereo-pan': (pan / 20).toFixed(2),
      'detune-semitones': (cents / 100).toFixed(2),
    };
    lines.push(
      '      <fruit-tree>',
      `        <recording${attributes({ source: sample, ...times })}/>`,
      `        <note-span${attributes(keys)}/>`,
      `        <mixing${attributes(mixing)}/>`,
      '      </fruit-tree>',
    );
  }
  lines.push('    </tree-row>', '  </hillside>', '</orchard-book>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}

function share(velocity: number): string {
  return (velocity / 127).toFixed(3);
}
