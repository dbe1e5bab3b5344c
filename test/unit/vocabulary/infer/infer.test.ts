import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import type { SampleFacts } from '../../../../server/model/samples';
import type { InferredVocabulary } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { doubtfulBelow } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';
import type { TrueValues } from '../examples';
import { examples } from '../examples';
import { heldOut } from '../heldOut/all';

type Samples = ReadonlyMap<string, SampleFacts>;

function infer(text: string, samples: Samples, given?: Vocabulary): InferredVocabulary {
  const inferred = inferVocabulary(text, {
    path: 'things/instrument.xml',
    sampleFacts: (path) => samples.get(path),
    ...(given && { given }),
  });
  if (!inferred) throw new Error('taken for no instrument');
  return inferred;
}

function valuesOf(vocabulary: Vocabulary, text: string, samples: Samples): Record<string, unknown>[] {
  const instrument = readVocabularyXml(vocabulary)(text, {
    path: 'things/instrument.xml',
    sampleFacts: (path) => samples.get(path),
  });
  expect(instrument.findings).toEqual([]);
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

/** Numbers to half a hundred-thousandth, as what follows from the text by a logarithm is no short decimal. */
function nearly(values: TrueValues): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' && !Number.isInteger(value) ? expect.closeTo(value, 5) : value,
    ]),
  );
}

function doubtful({ decisions }: InferredVocabulary): string[] {
  return decisions.filter(({ confidence }) => confidence < doubtfulBelow).map(({ id }) => id);
}

/** What the texts of the examples leave open; see the tests below. */
const openInExamples: Readonly<Record<string, readonly string[]>> = {
  brewery: ['positions.first'],
  railway: ['sample.ending', 'loop_end.last'],
};

// What is true of each region was there before the text, which is rendered from it without any reader or writer.
describe.each(Object.entries(examples))('the vocabulary of %s', (name, example) => {
  const inferred = infer(example.text, example.samples);

  it('leaves in doubt what the text leaves open, and nothing else', () => {
    expect(doubtful(inferred)).toEqual(openInExamples[name] ?? []);
    expect(inferred.vocabulary.unsettled ?? []).toEqual(openInExamples[name] ?? []);
  });

  it('gives the true values of every region', () => {
    const without = (values: Record<string, unknown>) =>
      Object.fromEntries(Object.entries(values).filter(([one]) => !hidden.includes(one)));
    // No text names the folder of these samples, and their loops are shares of a length that is not known then; nor is it known
    // that the files loop by themselves.
    const hidden = name === 'railway' ? ['sample', 'loop_start', 'loop_end', 'loop_mode'] : [];
    const values = valuesOf(inferred.vocabulary, example.text, example.samples);
    expect(values.map(without)).toEqual(example.regions.map((region) => without(nearly(region))));
  });

  it('offers choices that are vocabularies, each unlike the one that was inferred', () => {
    for (const { choices } of inferred.decisions) {
      for (const { vocabulary } of choices) {
        expect(parseVocabulary(writeVocabulary(vocabulary))).toMatchObject({ vocabulary, problems: [] });
        expect(vocabulary.levels).not.toEqual(inferred.vocabulary.levels);
      }
    }
  });

  it('shows an example of each decision in the text, with a reason', () => {
    for (const { id, message, evidence, span } of inferred.decisions) {
      expect(example.text.slice(span.start, span.end), id).not.toBe('');
      expect(message).toMatch(/\.$/);
      expect(evidence.join(' ')).toMatch(/\.$/);
    }
    const ids = inferred.decisions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('a vocabulary whose folder no text names', () => {
  const { text, samples, regions } = examples.railway;

  it('is settled with the folder by what the sample files then say', () => {
    const first = infer(text, samples).vocabulary;
    const given: Vocabulary = {
      ...first,
      levels: first.levels.map((level) => ({
        ...level,
        parameters: level.parameters.map((one) =>
          one.form.kind === 'path' ? { ...one, form: { ...one.form, folder: 'Sheds' } } : one,
        ),
      })),
    };
    const then = infer(text, samples, given);
    expect(then.decisions.map(({ id }) => id)).toEqual(['sample.ending', 'loop_end.last']);
    expect(then.vocabulary.unsettled).toBeUndefined();
    // While the files were not found, nothing said that they loop by themselves.
    expect(valuesOf(then.vocabulary, text, samples)).toEqual(
      regions.map((region) => ({ ...nearly(region), loop_mode: 'loop_continuous' })),
    );
  });
});

// Vocabularies that were written when inference stood, and the texts by hand-written rules beside them.
describe.each(Object.entries(heldOut))(
  'the vocabulary of the unseen %s',
  (_, { vocabulary, text, samples, open }) => {
    const inferred = infer(text, samples);

    it('gives every region the values that the true one gives', () => {
      const values = valuesOf(inferred.vocabulary, text, samples);
      expect(values).toEqual(valuesOf(vocabulary, text, samples));
      expect(values.length).toBeGreaterThan(50);
    });

    it('finds the same levels', () => {
      const levels = (one: Vocabulary) => one.levels.map(({ parameters: _, ...level }) => level);
      expect(levels(inferred.vocabulary)).toEqual(levels(vocabulary));
    });

    it('leaves in doubt what the text leaves open, and nothing else', () => {
      expect(doubtful(inferred).sort()).toEqual([...open].sort());
    });
  },
);
