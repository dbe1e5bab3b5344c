import { expect } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import type { VocabularyDecision } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { unreadValues } from '../../../../server/vocabulary/read/unreadValues';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';

/** What a text is read as by the vocabulary that is worked out from it. */
export interface Inferred {
  /** The values in force in each region, as `name=value` with blanks between; `none` where there is no instrument. */
  regions: string[];
  /** What is told of what is not read. */
  unread: string[];
  decisions: VocabularyDecision[];
  vocabulary: Vocabulary | undefined;
}

/** Reads a text by the vocabulary that is worked out from it. */
export function readInferred(text: string): Inferred {
  const { vocabulary, decisions = [] } = inferVocabulary(text, { path: 'a.xml' }) ?? {};
  if (!vocabulary) return { regions: ['none'], unread: [], decisions: [], vocabulary };
  const instrument = readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
  const regions = [...instrument.regions].map((region) =>
    Object.entries(effectiveValues(instrument, region))
      .map(([name, value]) => `${name}=${value}`)
      .join(' '),
  );
  return {
    regions,
    unread: unreadValues(instrument, vocabulary).map(({ message }) => message),
    decisions,
    vocabulary,
  };
}

/** The regions of a text with the wanted values alone, in their order, after its vocabulary has been kept in a file and read again. */
export function valuesIn(text: string, ...names: string[]): string[] {
  const { regions, vocabulary } = readInferred(text);
  if (vocabulary) expect(parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
  return regions.map((region) => {
    const values = new Map(region.split(' ').map((one) => one.split('=') as [string, string]));
    return names.map((name) => values.get(name) ?? '-').join(' ');
  });
}
