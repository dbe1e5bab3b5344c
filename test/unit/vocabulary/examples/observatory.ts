import type { Vocabulary, VocabularyParameter } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { facts, invented, layerWords, nameOf } from './invented';

const reading = (name: string) => `reading[@what="${name}"]/@shows`;
const name = { kind: 'key', written: 'name', middleC: 'C5' } as const;

const parameters: VocabularyParameter[] = [
  { parameter: 'sample', at: reading('audio file'), form: { kind: 'path' } },
  { parameter: 'lokey', at: reading('lower key'), form: name },
  { parameter: 'hikey', at: reading('upper key'), form: name },
  { parameter: 'pitch_keycenter', at: reading('root key'), form: name },
  { parameter: 'lovel', at: reading('lower velocity'), form: { kind: 'velocity', most: 127 } },
  { parameter: 'hivel', at: reading('upper velocity'), form: { kind: 'velocity', most: 127 } },
  { parameter: 'volume', at: reading('gain'), form: { kind: 'level', unit: 'dB' } },
  { parameter: 'transpose', at: reading('coarse tuning'), form: { kind: 'tuning', unit: 'semitones' } },
  { parameter: 'tune', at: reading('fine tuning'), form: { kind: 'tuning', unit: 'cents' } },
  { parameter: 'loop_start', at: reading('loop start'), form: { kind: 'position', unit: 'frames' } },
  {
    parameter: 'loop_end',
    at: reading('loop end'),
    form: { kind: 'position', unit: 'frames', last: 'excluded' },
  },
  { parameter: 'ampeg_attack', at: reading('attack time'), form: { kind: 'time', unit: 'milliseconds' } },
  { parameter: 'ampeg_release', at: reading('release time'), form: { kind: 'time', unit: 'milliseconds' } },
];

/**
 * Elements of one name that say in an attribute what their other attribute means; note names with C5 for key 60, loop ends that
 * are not played, milliseconds.
 */
const vocabulary: Vocabulary = {
  name: 'Observatory',
  levels: [
    { element: 'sky', is: 'instrument', parameters: [] },
    {
      element: 'night',
      is: 'group',
      parameters: [{ parameter: 'group_label', at: '@entitled', form: { kind: 'text' } }],
    },
    { element: 'star', is: 'region', parameters },
  ],
};

export function observatory(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<?xml version="1.0" encoding="UTF-8"?>', '<sky>'];
  let night = -1;
  for (const one of invented()) {
    const label = `The ${layerWords[one.layer]} ones`;
    if (one.layer !== night) {
      if (night >= 0) lines.push('  </night>');
      night = one.layer;
      lines.push(`  <night entitled="${label}">`);
    }
    const sample = `stars/${layerWords[one.layer]}/no ${one.zone * 2 + one.take}.wav`;
    const volume = one.vary(48) / 4 - 10;
    const transpose = one.vary(5) - 2;
    const tune = one.vary(81) - 40;
    const attack = one.vary(12);
    const release = 100 + one.vary(90) * 5;
    samples.set(sample, facts(one.frames, 44100, { rootKey: one.root, loop: [one.loopStart, one.loopEnd] }));
    regions.push({
      group_label: label,
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      volume,
      transpose,
      tune,
      loop_start: one.loopStart,
      loop_end: one.loopEnd,
      ampeg_attack: attack / 1000,
      ampeg_release: release / 1000,
    });
    const values: Record<string, string | number> = {
      'audio file': sample,
      'lower key': nameOf(one.low, 5),
      'upper key': nameOf(one.high, 5),
      'root key': nameOf(one.root, 5),
      'lower velocity': one.lowVelocity,
      'upper velocity': one.highVelocity,
      gain: volume,
      'coarse tuning': transpose,
      'fine tuning': tune,
      'loop start': one.loopStart,
      'loop end': one.loopEnd + 1,
      'attack time': attack,
      'release time': release,
    };
    const readings = Object.entries(values).map(
      ([what, shows]) => `      <reading what="${what}" shows="${shows}"/>`,
    );
    lines.push('    <star>', ...readings, '    </star>');
  }
  lines.push('  </night>', '</sky>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
