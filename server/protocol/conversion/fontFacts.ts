import type { Preset } from '../../soundfont/font';
import type { FontView } from '../../soundfont/regions/fontView';
import type { FontFacts, FontPreset } from '../requests/fontRequests';

/** Texts of a font by the names that they have in the file (SoundFont Technical Specification 2.04, section 5). */
const kinds: readonly [id: string, kind: FontFacts['texts'][number]['kind']][] = [
  ['ICOP', 'copyright'],
  ['ICMT', 'comment'],
  ['IENG', 'author'],
  ['IPRD', 'product'],
  ['ICRD', 'date'],
  ['ISFT', 'tools'],
];

/** What a client is told of a font of so many bytes. */
export function fontFacts(view: FontView, bytes: number): FontFacts {
  const { major, minor, info, lowBytesStart } = view.font;
  return {
    name: info.get('INAM') ?? '',
    version: `${major}.${String(minor).padStart(2, '0')}`,
    texts: kinds.flatMap(([id, kind]) => {
      const text = info.get(id);
      return text ? [{ kind, text }] : [];
    }),
    bytes,
    bits: lowBytesStart === undefined ? 16 : 24,
    samples: view.samples.size,
    presets: view.presets.map((preset) => presetOf(view, preset)),
    problems: [...view.problems],
  };
}

function presetOf(view: FontView, preset: Preset): FontPreset {
  const { bank, program, name } = preset;
  const regions = view.regions(preset);
  if (regions.length === 0) return { bank, program, name, regions: 0 };
  let [lowKey, highKey, lowVelocity, highVelocity] = [127, 0, 127, 0];
  for (const one of regions) {
    lowKey = Math.min(lowKey, one.lowKey);
    highKey = Math.max(highKey, one.highKey);
    lowVelocity = Math.min(lowVelocity, Math.max(1, one.lowVelocity));
    highVelocity = Math.max(highVelocity, one.highVelocity);
  }
  return {
    bank,
    program,
    name,
    regions: regions.length,
    keys: [lowKey, highKey],
    velocities: [lowVelocity, highVelocity],
  };
}
