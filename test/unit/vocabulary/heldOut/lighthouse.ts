import { attributes, facts, invented, nameOf } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** Velocity layers around keys around takes; what is common stands in an element of its own; seconds, ratios, nested paths. */
export function lighthouse(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const all = invented();
  const lines = [
    '<lighthouse><common><amplifier><envelope attack="0.005" decay="1.2" sustain="0.8" release="0.35"/></amplifier></common>',
  ];
  for (const layer of [0, 1, 2, 3]) {
    const words = [1, 32, 64, 96, 128];
    lines.push(
      `<lamp name="lamp ${layer}"><dynamics softest="${words[layer]}" loudest="${words[layer + 1] - 1}"/>`,
    );
    for (const one of all.filter((other) => other.layer === layer)) {
      const path = `../tower/${nameOf(one.root, 3)}-${layer}-${one.take}.wav`;
      samples.set(path, facts(one.frames, 48000, { loop: [one.loopStart, one.loopEnd] }));
      lines.push(
        `<beam><keys${attributes({ from: nameOf(one.low, 3), to: nameOf(one.high, 3), centre: one.root })}/>`,
        `<sound><media href="${path}"/><loop${attributes({
          begin: (one.loopStart / 48000).toFixed(6),
          end: ((one.loopEnd + 1) / 48000).toFixed(6),
          mode: one.zone % 2 ? 'until release' : 'forever',
        })}/></sound><pitch ratio="${(2 ** ((one.vary(41) - 20) / 1200)).toFixed(6)}"/></beam>`,
      );
    }
    lines.push('</lamp>');
  }
  lines.push('</lighthouse>');
  return {
    text: lines.join('\n'),
    samples,
    open: [],
    vocabulary: {
      name: 'lighthouse',
      levels: [
        {
          element: 'lighthouse',
          is: 'instrument',
          parameters: [
            {
              parameter: 'ampeg_attack',
              at: 'common/amplifier/envelope/@attack',
              form: { kind: 'time', unit: 'seconds' },
            },
            {
              parameter: 'ampeg_decay',
              at: 'common/amplifier/envelope/@decay',
              form: { kind: 'time', unit: 'seconds' },
            },
            {
              parameter: 'ampeg_sustain',
              at: 'common/amplifier/envelope/@sustain',
              form: { kind: 'number', times: 0.01 },
            },
            {
              parameter: 'ampeg_release',
              at: 'common/amplifier/envelope/@release',
              form: { kind: 'time', unit: 'seconds' },
            },
          ],
        },
        {
          element: 'lamp',
          is: 'group',
          parameters: [
            { parameter: 'group_label', at: '@name', form: { kind: 'text' } },
            { parameter: 'lovel', at: 'dynamics/@softest', form: { kind: 'velocity', most: 127 } },
            { parameter: 'hivel', at: 'dynamics/@loudest', form: { kind: 'velocity', most: 127 } },
          ],
        },
        {
          element: 'beam',
          is: 'region',
          parameters: [
            { parameter: 'lokey', at: 'keys/@from', form: { kind: 'key', written: 'name', middleC: 'C3' } },
            { parameter: 'hikey', at: 'keys/@to', form: { kind: 'key', written: 'name', middleC: 'C3' } },
            { parameter: 'pitch_keycenter', at: 'keys/@centre', form: { kind: 'key', written: 'number' } },
            { parameter: 'sample', at: 'sound/media/@href', form: { kind: 'path' } },
            { parameter: 'loop_start', at: 'sound/loop/@begin', form: { kind: 'position', unit: 'seconds' } },
            {
              parameter: 'loop_end',
              at: 'sound/loop/@end',
              form: { kind: 'position', unit: 'seconds', last: 'excluded' },
            },
            {
              parameter: 'loop_mode',
              at: 'sound/loop/@mode',
              form: { kind: 'words', words: { 'until release': 'loop_sustain', forever: 'loop_continuous' } },
            },
            { parameter: 'tune', at: 'pitch/@ratio', form: { kind: 'tuning', unit: 'ratio' } },
          ],
        },
      ],
    },
  };
}
