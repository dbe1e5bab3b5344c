import { describe, expect, it } from 'vitest';
import { measuredSamplesOf } from '../../../../server/checks/facts/samples/measuredSamples';
import type { SampleUse } from '../../../../server/checks/facts/samples/sampleUse';
import { sampleUsesOf } from '../../../../server/checks/facts/samples/sampleUses';
import type { LoopSeam, MeasuredPitch, SampleLookup, SampleMeasures } from '../../../../server/model/samples';
import { sfzNotation } from '../../../../server/sfz/notation';
import { readSfz } from '../../../../server/sfz/read';
import { wav } from '../markedText';

/** Measures in memory that count how often they are asked. */
class CountingMeasures implements SampleMeasures {
  version: number | undefined = 0;
  asked = 0;
  known: MeasuredPitch | null | undefined;

  pitch(): MeasuredPitch | null | undefined {
    this.asked++;
    return this.known;
  }

  loopSeam(_path: string, start: number, end: number): LoopSeam | null | undefined {
    this.asked++;
    return start < end ? null : undefined;
  }
}

function measuring(measures: SampleMeasures) {
  const samples: SampleLookup = { version: 1, state: () => wav(), nearest: () => [], measures };
  return (volume: number) => {
    const instrument = readSfz(`<region> sample=a.wav volume=${volume}`, { path: 'test.sfz' });
    const context = { instrument, samples, notation: sfzNotation };
    const [use] = sampleUsesOf(context).uses as [SampleUse];
    return { measured: measuredSamplesOf(context), use };
  };
}

const pitch = { hertz: 440, key: 69, cents: 0, confidence: 1 };

describe('what was measured in samples', () => {
  it('is asked for in each check until it is known, and not again', () => {
    const measures = new CountingMeasures();
    const check = measuring(measures);
    for (const volume of [1, 2]) {
      const { measured, use } = check(volume);
      expect(measured?.pitch(use)).toBeUndefined();
    }
    expect(measures.asked).toBe(2);
    measures.known = pitch;
    for (const volume of [3, 4, 5]) {
      const { measured, use } = check(volume);
      expect(measured?.pitch(use)).toBe(pitch);
    }
    expect(measures.asked).toBe(3);
  });

  it('is asked for again once answers may have changed, or where nothing says when they do', () => {
    const measures = new CountingMeasures();
    const check = measuring(measures);
    measures.known = pitch;
    const first = check(1);
    expect(first.measured?.pitch(first.use)).toBe(pitch);
    measures.known = null;
    measures.version = 1;
    const second = check(2);
    expect(second.measured?.pitch(second.use)).toBeNull();
    measures.version = undefined;
    measures.known = pitch;
    const third = check(3);
    expect(third.measured?.pitch(third.use)).toBe(pitch);
  });

  it('is remembered of the loop that was asked about last', () => {
    const measures = new CountingMeasures();
    const check = measuring(measures);
    for (const volume of [1, 2]) {
      const { measured, use } = check(volume);
      expect(measured?.audibleSeam(use, 10, 20)).toBeUndefined();
      expect(measured?.isSmooth(use, 10, 20)).toBe(true);
    }
    expect(measures.asked).toBe(1);
    const { measured, use } = check(3);
    expect(measured?.isSmooth(use, 10, 30)).toBe(false);
    expect(measured?.audibleSeam(use, 10, 30)).toBeUndefined();
    expect(measured?.isSmooth(use, 10, 30)).toBe(true);
    expect(measured?.audibleSeam(use, 30, 10)).toBeUndefined();
    expect(measured?.isSmooth(use, 30, 10)).toBe(false);
    expect(measures.asked).toBe(3);
  });
});
