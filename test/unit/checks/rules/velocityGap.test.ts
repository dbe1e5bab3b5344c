import { describe, expect, it } from 'vitest';
import { velocityGap } from '../../../../server/checks/rules/velocityGap';
import { foundBy, markedBy } from '../foundBy';

// Ranges hold both of their ends (public documentation of the open SFZ format (CC0 1.0), lovel), so 61 to 64 are free here.
// That layers leave no velocity between them is common practice.
const gap = '<region> sample=a.wav key=60 hivel=60\n<region> sample=b.wav key=60 lovel=65';

describe('velocities of a played key that no region answers', () => {
  it('are told where the layer below ends', () => {
    const { marks, messages } = foundBy(velocityGap, gap);
    expect(marks).toEqual([`${gap.indexOf('hivel=60') + 6}:60`]);
    expect(messages[0]).toMatch(/No region plays velocities 61 to 64 on key 60 \(C4\)\./);
  });

  it('are told where the lowest layer starts, or the highest one ends', () => {
    expect(markedBy(velocityGap, '<region> sample=a.wav key=60 lovel=20')).toEqual(['20']);
    expect(markedBy(velocityGap, '<region> sample=a.wav key=60 hivel=20')).toEqual(['20']);
  });

  it('are none where all are answered', () => {
    expect(markedBy(velocityGap, gap.replace('65', '61'))).toEqual([]);
    expect(markedBy(velocityGap, gap.replace('65', '50'))).toEqual([]);
  });

  it('are answered by widening the layers below or above', () => {
    const { fixed, titles } = foundBy(velocityGap, gap);
    expect(fixed[0]).toEqual([gap.replace('hivel=60', 'hivel=64'), gap.replace('lovel=65', 'lovel=61')]);
    expect(titles[0]).toEqual([
      'Widen the layer below up to velocity 64',
      'Widen the layer above down to velocity 61',
    ]);
  });

  it('are answered on these keys alone', () => {
    const text = `${gap}\n<region> sample=c.wav key=61 hivel=60\n<region> sample=d.wav key=61 lovel=61\n<region> sample=e.wav key=59 hivel=60\n<region> sample=f.wav key=59 lovel=61`;
    const { fixed } = foundBy(velocityGap, text);
    expect(fixed[0][0]).toBe(text.replace('key=60 hivel=60', 'key=60 hivel=64'));
    expect(fixed[0][1]).toBe(text.replace('lovel=65', 'lovel=61'));
  });

  it('are answered at the first and the last key of a zone', () => {
    const wide = (low: number, high: number) =>
      `<region> sample=a.wav lokey=50 hikey=${high} hivel=60\n<region> sample=b.wav lokey=${low} hikey=70 lovel=65\n<region> sample=c.wav lokey=50 hikey=70 lovel=90`;
    const { fixed } = foundBy(velocityGap, wide(60, 60));
    expect(fixed.flat().some((text) => text.includes('lokey=50 hikey=60 hivel=64'))).toBe(true);
    expect(fixed.flat().some((text) => text.includes('lokey=60 hikey=70 lovel=61'))).toBe(true);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(velocityGap).toMatchObject({
      code: 'velocity-gap',
      severity: 'information',
      finds: expect.stringContaining('no region plays on'),
    });
  });

  it('leaves what is heard to a person', () => {
    expect(foundBy(velocityGap, gap).safe).toEqual([false, false]);
  });
});
