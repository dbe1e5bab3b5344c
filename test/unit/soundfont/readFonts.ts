import { effectiveValues } from '../../../server/model/effectiveValues';
import type { ConversionNote } from '../../../server/model/notes';
import { sfzNotation } from '../../../server/sfz/notation';
import { readFont } from '../../../server/soundfont/read/readFont';
import type { FontView } from '../../../server/soundfont/regions/fontView';
import { viewFont } from '../../../server/soundfont/regions/fontView';
import { readerOf } from '../audio/byteFiles';

/** What a font is read as; fails with the reason where it is rejected. */
export async function viewOf(bytes: Uint8Array): Promise<FontView> {
  const reading = await readFont(readerOf(bytes));
  if (reading.kind !== 'font') throw new Error(reading.reason);
  return viewFont(reading.font);
}

/** The reason for which a font is rejected; empty where it is not. */
export async function reasonOf(bytes: Uint8Array): Promise<string> {
  const reading = await readFont(readerOf(bytes));
  return reading.kind === 'font' ? '' : reading.reason;
}

export interface ReadPreset {
  text: string;
  regions: Record<string, number | string>[];
  notes: ConversionNote[];
}

/** The regions of one preset of a font, as the SFZ reader finds them in the text that it becomes. */
export async function regionsOf(
  bytes: Uint8Array,
  preset = 0,
  attenuation: 1 | 0.4 = 1,
): Promise<ReadPreset> {
  const view = await viewOf(bytes);
  const { text, notes } = view.text(view.presets[preset]!, 'test.sf2', {
    samplePath: ({ name }) => name,
    attenuation,
  });
  const instrument = sfzNotation.read(text, { path: '/test.sfz' });
  if (instrument.findings.length > 0) throw new Error(JSON.stringify(instrument.findings));
  return {
    text,
    notes,
    regions: [...instrument.regions].map((region) => effectiveValues(instrument, region)),
  };
}
