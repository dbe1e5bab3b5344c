import type { Preset, SoundFont } from '../font';
import { FontError } from '../read/fontError';
import { Problems } from '../read/problems';
import type { FontRegion } from './fontRegions';
import { fontRegions } from './fontRegions';
import type { PlacedRegions } from './playedRegions';
import { placeRegions } from './playedRegions';
import type { PresetText, PresetTextOptions } from './presetText';
import { presetText } from './presetText';
import type { SampleFile } from './sampleFiles';
import { sampleFiles } from './sampleFiles';
import { sampleFileBytes } from './sampleReader';

/** A font as instruments and files of samples. */
export interface FontView {
  font: SoundFont;
  /** All presets by bank and program, of several with the same the first in the file first. */
  presets: readonly Preset[];
  /** The samples that presets play, by name. */
  samples: ReadonlyMap<string, SampleFile>;
  /** What is odd in the file, and regions that cannot be played, as sentences. */
  problems: readonly string[];
  /** The regions of a preset. */
  regions(preset: Preset): readonly FontRegion[];
  /** Bytes of a sample as a file. */
  sampleBytes(file: SampleFile): number;
  /** A preset as SFZ text; `file` is the name of the font's file. */
  text(preset: Preset, file: string, options: PresetTextOptions): PresetText;
}

/** Regions of all presets at the most: some hundred megabytes. */
const mostRegions = 300_000;
/** Zones of presets that are laid over zones of instruments at the most, whether or not a region comes of it. */
const mostPairs = 20_000_000;

/** Works out what the presets of a font play. Fails with a {@link FontError} where that is more than any font needs. */
export function viewFont(font: SoundFont): FontView {
  const presets = [...font.presets].sort((a, b) => a.bank - b.bank || a.program - b.program);
  if (pairsIn(font) > mostPairs)
    throw new FontError(`its presets name zones of instruments more than ${mostPairs} times`);
  const placed = new Map<Preset, PlacedRegions>();
  let count = 0;
  for (const preset of presets) {
    const regions = fontRegions(font, preset);
    count += regions.length;
    if (count > mostRegions) throw new FontError(`its presets have more than ${mostRegions} regions`);
    placed.set(preset, placeRegions(font, regions));
  }
  const byUse = sampleFiles(font, allRegions(placed.values()));
  return {
    font,
    presets,
    problems: problemsOf(font, placed.values()),
    samples: new Map([...byUse.values()].map((file) => [file.name, file])),
    regions: (preset) => (placed.get(preset) ?? nothing).regions.map(({ region }) => region),
    sampleBytes: (file) => sampleFileBytes(font, file),
    text: (preset, file, options) =>
      presetText(font, { ...preset, file }, placed.get(preset) ?? nothing, byUse, options),
  };
}

/** How often a zone of a preset meets a zone of the instrument that it names. */
function pairsIn({ presets, instruments }: SoundFont): number {
  let pairs = 0;
  for (const { zones } of presets)
    for (const { target } of zones) pairs += instruments[target]?.zones.length ?? 0;
  return pairs;
}

const nothing: PlacedRegions = { regions: [], leftOut: [] };

function problemsOf({ problems }: SoundFont, placed: Iterable<PlacedRegions>): string[] {
  const all = new Problems();
  for (const { leftOut } of placed) for (const one of leftOut) all.add(one);
  return [...problems, ...all.list()];
}

function* allRegions(placed: Iterable<PlacedRegions>) {
  for (const { regions } of placed) yield* regions;
}

/** A preset by `bank:program`; `undefined` where the font has none. */
export function presetAt(view: FontView, bank: number, program: number): Preset | undefined {
  return view.presets.find((preset) => preset.bank === bank && preset.program === program);
}
