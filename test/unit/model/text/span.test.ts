import { describe, expect, it } from 'vitest';
import {
  endOf,
  mainSpan,
  spanBetween,
  spanIn,
  spanOver,
  standingIn,
  startOf,
} from '../../../../server/model/text/span';

describe('stretches of text', () => {
  it('stand in a file, the first one being the main one', () => {
    expect(spanIn(2, 3, 5)).toEqual({ source: 2, start: 3, end: 5 });
    expect(mainSpan(3, 5)).toEqual({ source: 0, start: 3, end: 5 });
    expect(standingIn(1, { start: 3, end: 5 })).toEqual({ source: 1, start: 3, end: 5 });
  });

  it('have an empty one before and behind', () => {
    expect(startOf(spanIn(2, 3, 5))).toEqual({ source: 2, start: 3, end: 3 });
    expect(endOf(spanIn(2, 3, 5))).toEqual({ source: 2, start: 5, end: 5 });
  });

  it('go from one to another in the same file', () => {
    expect(spanOver(spanIn(1, 3, 5), spanIn(1, 8, 9))).toEqual({ source: 1, start: 3, end: 9 });
    expect(spanOver(spanIn(1, 3, 5), spanIn(2, 8, 9))).toBeUndefined();
    expect(spanOver(spanIn(1, 3, 5), spanIn(1, 0, 2))).toBeUndefined();
    expect(spanOver(spanIn(1, 3, 5), spanIn(1, 0, 3))).toEqual({ source: 1, start: 3, end: 3 });
  });

  it('lie between one and another', () => {
    expect(spanBetween(spanIn(1, 3, 5), spanIn(1, 8, 9))).toEqual({ source: 1, start: 5, end: 8 });
    expect(spanBetween(spanIn(1, 3, 5), spanIn(1, 5, 9))).toEqual({ source: 1, start: 5, end: 5 });
    expect(spanBetween(spanIn(1, 3, 5), spanIn(1, 4, 9))).toBeUndefined();
    expect(spanBetween(spanIn(1, 3, 5), spanIn(0, 8, 9))).toBeUndefined();
  });
});
