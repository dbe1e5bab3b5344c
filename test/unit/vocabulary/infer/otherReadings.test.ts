import { describe, expect, it } from 'vitest';
import { noneOfThese, otherReadings } from '../../../../server/vocabulary/infer/otherReadings';

describe('what else a decision could be', () => {
  it.each([
    [['dB', 'percent'], ' It could also be dB or percent.'],
    [['it is the low key'], ' Or it is the low key.'],
    [['C3 is key 60', 'C5 is key 60'], ' Or C3 is key 60 or C5 is key 60.'],
    [['percent', 'greater is quieter'], ' It could also be percent. Or greater is quieter.'],
    [[noneOfThese], ''],
  ])('is said in sentences: %j', (labels, text) => {
    expect(otherReadings(labels)).toBe(text);
  });
});
