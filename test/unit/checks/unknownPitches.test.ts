import { describe, expect, it } from 'vitest';
import type { SampleLookup } from '../../../server/model/samples';
import { checkText, samplesInMemory } from './markedText';

// 440 · 2^((n − 69) / 12): ISO 16:1975 and MIDI 1.0. How many unknown pitches are waited for is our choice.
/** A dozen notes a semitone apart, the first an octave off; the last few are not measured yet. */
function findingsWhile(unknown: number): string[] {
  const keys = Array.from({ length: 12 }, (_, at) => 60 + at);
  const text = keys.map((key) => `<region> sample=${key}.wav key=${key}`).join('\n');
  const samples: SampleLookup = {
    ...samplesInMemory(),
    measures: {
      pitch(path) {
        const key = Number.parseInt(path, 10);
        if (key >= 72 - unknown) return undefined;
        const sounding = key === 60 ? 72 : key;
        return { hertz: 440 * 2 ** ((sounding - 69) / 12), key: sounding, cents: 0, confidence: 1 };
      },
      loopSeam: () => null,
    },
  };
  return checkText(text, { samples }).findings.map(({ code }) => code);
}

describe('root-mismatch', () => {
  it('stays while one of many samples is measured anew', () => {
    expect(findingsWhile(0)).toEqual(['root-mismatch']);
    expect(findingsWhile(1)).toEqual(['root-mismatch']);
  });

  it('waits while many are not known', () => {
    expect(findingsWhile(3)).toEqual([]);
  });
});
