import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { regionsOf } from './tableRegions';

/** What a table of the corpus holds, written by hand beside it. */
interface Truth {
  regions: Record<string, string>[];
  /** What a note has to say, as a regular expression, where the text leaves something open. */
  note?: string;
  /** A kind of suggestion that has to be offered. */
  suggestion?: string;
  /** Whether the text is taken for a zone table without being asked; where in doubt it is not. */
  looks?: boolean;
  /** What is known of the samples. */
  rate?: number;
  roots?: Record<string, number>;
  pitches?: Record<string, number>;
  samples?: Record<string, Sample>;
}

/** A sample file: its frames, frames a second, root key, the pitch measured in it and the first and last frame of its loop. */
interface Sample {
  frames: number;
  rate: number;
  root?: number;
  pitch?: number;
  loop?: { start: number; end: number };
}

const folder = fileURLToPath(new URL('../../corpus/tables/', import.meta.url));
const names = readdirSync(folder).filter((name) => !name.endsWith('.json') && !name.startsWith('.'));

describe('the corpus of tables', () => {
  it('has at least 60 of them, each with its regions beside', () => {
    expect(names.length).toBeGreaterThanOrEqual(60);
  });

  it.each(names)('%s', (name) => {
    const text = readFileSync(folder + name, 'utf8');
    const truth = JSON.parse(readFileSync(folder + name.replace(/\.\w+$/, '.json'), 'utf8')) as Truth;
    const reading = readZoneTable(text, {
      rateOf: (sample) => truth.samples?.[sample]?.rate ?? truth.rate,
      framesOf: (sample) => truth.samples?.[sample]?.frames,
      loopOf: (sample) => truth.samples?.[sample]?.loop,
      rootKeyOf: (sample) => truth.samples?.[sample]?.root ?? truth.roots?.[sample],
      pitchOf: (sample) => truth.samples?.[sample]?.pitch ?? truth.pitches?.[sample],
    });
    expect(reading.problem).toBeUndefined();
    expect(regionsOf(reading)).toEqual(truth.regions);
    const notes = reading.notes.map(({ kind, message }) => `${kind}: ${message}`);
    if (truth.note) expect(notes.join('\n')).toMatch(new RegExp(truth.note));
    if (truth.suggestion) expect(reading.suggestions.map(({ kind }) => kind)).toContain(truth.suggestion);
    expect(looksLikeZoneTable(text)).toBe(truth.looks ?? true);
  });
});
