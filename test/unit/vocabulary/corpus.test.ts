import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { assumedOnReading } from '../../../server/model/writing/readingNotes';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import { writeVocabulary } from '../../../server/vocabulary/writeVocabulary';
import { assumedInVocabulary } from '../../../server/workspace/notations/assumedInVocabulary';
import { stackedRegions } from '../../../server/workspace/notations/stackedRegions';
import { facts } from './examples/invented';

// XML that was written, with what is true of it, by people who had not seen how it is read: each text has its regions in a JSON
// file beside it. Levels follow IEC 60027-3, 20·log10 of the amplitude; keys MIDI 1.0.
const folder = join(import.meta.dirname, '../../corpus/xml');

type Value = string | number;

interface Truth {
  about: string;
  samples: Record<string, { frames: number; rate: number; loop?: [number, number] }>;
  regions: Record<string, Value>[];
  /** What a note has to say, as regular expressions. */
  mustNote: string[];
}

function truthOf(name: string): Truth {
  return JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'));
}

/** What the format takes where nothing is said (open SFZ format). */
const defaults: Record<string, Value> = {
  lokey: 0,
  hikey: 127,
  lovel: 1,
  hivel: 127,
  pitch_keycenter: 60,
  trigger: 'attack',
  loop_mode: 'no_loop',
};
const tolerance: Record<string, number> = { volume: 0.02, tune: 0.01, pan: 0.01 };

/** A region's values as they sound: what is around it added, semitones as cents. */
function sounding(values: Record<string, Value>): Record<string, Value> {
  const sum = (name: string) =>
    ['', 'global_', 'master_', 'group_'].reduce((all, header) => all + Number(values[header + name] ?? 0), 0);
  return {
    ...defaults,
    ...values,
    // A velocity of 0 starts nothing (MIDI 1.0), so that a range from 0 is one from 1.
    lovel: Math.max(1, Number(values.lovel ?? 1)),
    volume: sum('volume'),
    tune: sum('tune') + 100 * sum('transpose'),
    pan: values.pan ?? 0,
    offset: values.offset ?? 0,
    seq_position: values.seq_position ?? 1,
    seq_length: values.seq_length ?? 1,
  };
}

const told = ['group', 'sample', 'transpose'];

const names = readdirSync(folder)
  .filter((name) => name.endsWith('.xml'))
  .map((name) => name.replace(/\.xml$/, ''));

describe.each(names)('the text of %s', (name) => {
  const text = readFileSync(join(folder, `${name}.xml`), 'utf8');
  const truth = truthOf(name);
  const sampleFacts = (path: string) => {
    const known = truth.samples[path];
    return known && facts(known.frames, known.rate, known.loop ? { loop: known.loop } : {});
  };
  const inferred = inferVocabulary(text, { path: `${name}.xml`, sampleFacts });

  it(`is read as it is: ${truth.about}`, () => {
    if (!inferred) throw new Error('taken for no instrument');
    const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: `${name}.xml`, sampleFacts });
    const regions = [...instrument.regions].map((region) =>
      sounding(effectiveValues(instrument, region) as Record<string, Value>),
    );
    const wanted = [...truth.regions];
    expect(regions).toHaveLength(wanted.length);
    for (const [at, region] of regions.entries()) {
      const one = sounding(wanted[at]);
      for (const field of Object.keys(wanted[at])) {
        if (told.includes(field)) continue;
        const about = `${field} of ${one.sample}`;
        const within = tolerance[field];
        if (within === undefined) expect(region[field], about).toBe(one[field]);
        else expect(Math.abs(Number(region[field]) - Number(one[field])), about).toBeLessThanOrEqual(within);
      }
      expect(String(region.sample).normalize('NFC')).toBe(one.sample);
    }
    const notes = [
      ...assumedInVocabulary({ vocabulary: inferred.vocabulary, inferred, savedIn: undefined }),
      ...assumedOnReading(instrument).values(),
      ...stackedRegions(instrument),
    ].flat();
    for (const wantedNote of truth.mustNote)
      expect(notes.map(({ message }) => message).join('\n')).toMatch(new RegExp(wantedNote, 'i'));
  });

  it('has a vocabulary that a file keeps', () => {
    const vocabulary = inferred?.vocabulary;
    expect(vocabulary && parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
  });
});
