import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { InstrumentBuilder } from '../../model/instrumentBuilder';

/** A header of a shape with its values. What starts with `?` is for a person to fill in. */
type ShapeHeader = readonly [kind: HeaderKind, values: Readonly<Record<string, string>>];

/** A common arrangement of regions. */
export interface RegionArrangement {
  name: string;
  /** A sentence about it. */
  about: string;
  headers: readonly ShapeHeader[];
}

const { group, region } = HeaderKind;

export const shapes: readonly RegionArrangement[] = [
  {
    name: 'velocity layers',
    about: 'A group whose regions play soft, medium and loud strikes on the same keys.',
    headers: [
      [group, { lokey: '?60', hikey: '?64', pitch_keycenter: '?62' }],
      [region, { sample: '?soft.wav', hivel: '42' }],
      [region, { sample: '?middle.wav', lovel: '43', hivel: '85' }],
      [region, { sample: '?loud.wav', lovel: '86' }],
    ],
  },
  {
    name: 'round robins',
    about: 'A group whose regions take turns from strike to strike.',
    headers: [
      [group, { key: '?60', seq_length: '3' }],
      [region, { sample: '?first.wav', seq_position: '1' }],
      [region, { sample: '?second.wav', seq_position: '2' }],
      [region, { sample: '?third.wav', seq_position: '3' }],
    ],
  },
  {
    name: 'keyswitched articulations',
    about: 'Two groups; a key below the played ones chooses between them.',
    headers: [
      [group, { sw_lokey: '24', sw_hikey: '25', sw_default: '24', sw_last: '24', sw_label: '?Long' }],
      [region, { sample: '?long.wav', lokey: '48', hikey: '72', pitch_keycenter: '60' }],
      [group, { sw_lokey: '24', sw_hikey: '25', sw_default: '24', sw_last: '25', sw_label: '?Short' }],
      [region, { sample: '?short.wav', lokey: '48', hikey: '72', pitch_keycenter: '60' }],
    ],
  },
  {
    name: 'release samples',
    about: 'One group for keys that are struck, and one for keys that are released.',
    headers: [
      [group, { trigger: 'attack' }],
      [region, { sample: '?note.wav', key: '?60' }],
      [group, { trigger: 'release', rt_decay: '?3' }],
      [region, { sample: '?release.wav', key: '?60' }],
    ],
  },
];

/** A shape as an instrument. */
export function shapeInstrument({ headers }: RegionArrangement): Instrument {
  const builder = new InstrumentBuilder('table', 0);
  builder.enterSource('', '');
  for (const [kind, values] of headers) {
    builder.openHeader(kind, 0, 0);
    for (const [name, value] of Object.entries(values)) {
      const parameter = builder.addParameter(builder.names.idOf(name), 0, 0, 0, Number.NaN);
      builder.setValue(parameter, value.replace(/^\?/, ''));
    }
  }
  return builder.finish();
}

/** Where the values for a person to fill in stand in the text of a shape. */
export function shapeBlanks({ headers }: RegionArrangement, text: string): { start: number; end: number }[] {
  const blanks: { start: number; end: number }[] = [];
  let at = 0;
  for (const [, values] of headers) {
    for (const [name, value] of Object.entries(values)) {
      const written = value.replace(/^\?/, '');
      const start = text.indexOf(written, text.indexOf(name, at) + name.length);
      if (start < 0) continue;
      at = start + written.length;
      if (value.startsWith('?')) blanks.push({ start, end: at });
    }
  }
  return blanks;
}
