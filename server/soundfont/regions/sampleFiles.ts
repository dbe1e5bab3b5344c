import type { SampleHeader, SoundFont } from '../font';
import type { PlacedRegion, PoolFile } from './playedRegions';
import { fileFrames, nameWithoutSide } from './playedRegions';

/** A sample of a font as a file of its own. */
export interface SampleFile {
  /** A name that every file system takes, another for each sample of the font. */
  name: string;
  use: PoolFile;
  sampleRate: number;
  frames: number;
  rootKey: number | undefined;
  /** Cents to add to the root key to have the pitch of the file. */
  fineTuneCents: number;
  /** First and last frame of the loop, where a region loops it. */
  loop: { start: number; end: number } | undefined;
}

/** The samples that regions play, as files, by the key of their use. */
export function sampleFiles(font: SoundFont, regions: Iterable<PlacedRegion>): Map<string, SampleFile> {
  const files = new Map<string, SampleFile>();
  const names = new FileNames();
  for (const { use, loop } of regions) {
    const known = files.get(use.key);
    if (known) known.loop ??= loop;
    else files.set(use.key, { ...sampleFile(font, use, names), loop });
  }
  return files;
}

const mostKey = 127;

function sampleFile(font: SoundFont, use: PoolFile, names: FileNames): Omit<SampleFile, 'loop'> {
  const headers = use.samples.map((sample) => font.samples[sample] as SampleHeader);
  const [first] = headers as [SampleHeader, ...SampleHeader[]];
  const isPair = headers.length > 1;
  return {
    name: names.take((isPair && nameWithoutSide(first.name)) || first.name, '.wav'),
    use,
    sampleRate: first.rate,
    frames: Math.max(...headers.map((header) => fileFrames(header, font))),
    rootKey: first.rootKey <= mostKey ? first.rootKey : undefined,
    // A sample that has to be raised to be in tune lies below its root key.
    fineTuneCents: -first.correctionCents,
  };
}

/** Names that some system takes for a device. */
const devices = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** Gives out names of files that differ in more than letter case, in characters that files and SFZ text can hold. */
export class FileNames {
  readonly #taken = new Set<string>();

  take(wanted: string, ending: string): string {
    const tidy = wanted
      .replace(/[^\p{L}\p{N} _.,()+&'!@-]/gu, '_')
      .replace(/\s+/g, ' ')
      .replace(/^[\s.]+|[\s.]+$/g, '');
    const stem = tidy === '' ? 'unnamed' : devices.test(tidy) ? `${tidy}_` : tidy;
    let name = stem;
    for (let number = 2; this.#taken.has(name.toLowerCase()); number++) name = `${stem} (${number})`;
    this.#taken.add(name.toLowerCase());
    return name + ending;
  }
}
