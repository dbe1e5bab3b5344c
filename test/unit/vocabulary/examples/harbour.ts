import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { facts, invented, layerWords, nameOf } from './invented';

/**
 * Texts of child elements, names in capitals, nothing inherited; note names with C4 for key 60, velocities up to 100, levels in
 * percent, pan from 0 to 127, cents, frames counted from 1, yes and no.
 */
const vocabulary: Vocabulary = {
  name: 'Harbour',
  levels: [
    { element: 'HARBOUR', is: 'instrument', parameters: [] },
    {
      element: 'MOORING',
      is: 'region',
      inside: ['QUAY'],
      parameters: [
        { parameter: 'sample', at: 'SOUND_FILE', form: { kind: 'path' } },
        { parameter: 'lokey', at: 'LOWEST_NOTE', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        { parameter: 'hikey', at: 'HIGHEST_NOTE', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        {
          parameter: 'pitch_keycenter',
          at: 'ORIGINAL_NOTE',
          form: { kind: 'key', written: 'name', middleC: 'C4' },
        },
        { parameter: 'lovel', at: 'LOWEST_VELOCITY', form: { kind: 'velocity', most: 100 } },
        { parameter: 'hivel', at: 'HIGHEST_VELOCITY', form: { kind: 'velocity', most: 100 } },
        { parameter: 'volume', at: 'VOLUME_PERCENT', form: { kind: 'level', unit: 'percent' } },
        { parameter: 'pan', at: 'PAN', form: { kind: 'pan', left: 0, centre: 64, right: 127 } },
        { parameter: 'tune', at: 'TUNING_CENTS', form: { kind: 'tuning', unit: 'cents' } },
        {
          parameter: 'loop_mode',
          at: 'LOOP_ON',
          form: { kind: 'words', words: { YES: 'loop_continuous', NO: 'no_loop' } },
        },
        { parameter: 'loop_start', at: 'LOOP_BEGIN', form: { kind: 'position', unit: 'frames', first: 1 } },
        { parameter: 'loop_end', at: 'LOOP_FINISH', form: { kind: 'position', unit: 'frames', first: 1 } },
        { parameter: 'ampeg_release', at: 'RELEASE_MS', form: { kind: 'time', unit: 'milliseconds' } },
      ],
    },
  ],
};

export function harbour(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<?xml version="1.0"?>', '<!-- Where the boats lie at night -->', '<HARBOUR>', '\t<QUAY>'];
  for (const one of invented()) {
    const sample = `${layerWords[one.layer]}/${one.rootName.replace('#', 's')}_${one.take}.wav`;
    const percent = 15 + one.vary(130);
    const steps = one.vary(128);
    const tune = one.vary(99) - 49;
    const loops = one.zone % 4 !== 1;
    const release = 40 + one.vary(77) * 10;
    samples.set(
      sample,
      facts(one.frames, 44100, {
        rootKey: one.root,
        ...(loops && { loop: [one.loopStart, one.loopEnd] as const }),
      }),
    );
    regions.push({
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      volume: 20 * Math.log10(percent / 100),
      pan: steps < 64 ? ((steps - 64) / 64) * 100 : ((steps - 64) / 63) * 100,
      tune,
      loop_mode: loops ? 'loop_continuous' : 'no_loop',
      ...(loops && { loop_start: one.loopStart, loop_end: one.loopEnd }),
      ampeg_release: release / 1000,
    });
    const loop: [string, number][] = [
      ['LOOP_BEGIN', one.loopStart + 1],
      ['LOOP_FINISH', one.loopEnd + 1],
    ];
    const values: [string, string | number][] = [
      ['SOUND_FILE', sample],
      ['LOWEST_NOTE', nameOf(one.low, 4)],
      ['HIGHEST_NOTE', nameOf(one.high, 4)],
      ['ORIGINAL_NOTE', nameOf(one.root, 4)],
      ['LOWEST_VELOCITY', hundredths(one.lowVelocity)],
      ['HIGHEST_VELOCITY', hundredths(one.highVelocity)],
      ['VOLUME_PERCENT', percent],
      ['PAN', steps],
      ['TUNING_CENTS', tune],
      ['LOOP_ON', loops ? 'YES' : 'NO'],
      ...(loops ? loop : []),
      ['RELEASE_MS', release],
    ];
    lines.push(
      '\t\t<MOORING>',
      ...values.map(([name, value]) => `\t\t\t<${name}>${value}</${name}>`),
      '\t\t</MOORING>',
    );
  }
  lines.push('\t</QUAY>', '</HARBOUR>', '');
  return { vocabulary, regions, text: lines.join('\r\n'), samples };
}

function hundredths(velocity: number): string {
  return ((velocity / 127) * 100).toFixed(1);
}
