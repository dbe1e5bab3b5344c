import { describe, expect, it } from 'vitest';
import { keyGap } from '../../../../server/checks/rules/keyGap';
import { foundBy, markedBy } from '../foundBy';

// Ranges hold both of their ends (public documentation of the open SFZ format (CC0 1.0), lokey), so 60 and 61 are free here.
// That zones leave no key between them is common practice.
const gap = '<region> sample=a.wav lokey=48 hikey=59\n<region> sample=b.wav lokey=62 hikey=72';
const marks = (text: string) => markedBy(keyGap, text);

describe('keys between others that no region answers', () => {
  it('are told where the zone below ends, with the zone above beside', () => {
    const { marks: found, messages, related } = foundBy(keyGap, gap);
    expect(found).toEqual([`${gap.indexOf('59')}:59`]);
    expect(messages[0]).toMatch(
      /No region plays on keys 60 \(C4\) to 61 \(C#4\), between .*a\.wav.* and .*b\.wav/,
    );
    expect(related[0][0]).toMatch(/^62: The next region, .*b\.wav.*, starts here/);
  });

  it('are told at the header where the end is not written', () => {
    expect(marks('<region> sample=a.wav lokey=48 hikey=60\n<region> sample=b.wav key=62')).toEqual(['60']);
    expect(
      marks(
        '<region> sample=a.wav key=60 <region> sample=c.wav lokey=62 hikey=70 <region> sample=d.wav lokey=50 hikey=59',
      ),
    ).toEqual(['60']);
  });

  it('are none where all answer, or a keyswitch lies between', () => {
    expect(marks(gap.replace('62', '60'))).toEqual([]);
    expect(marks(`<global> sw_lokey=60 sw_hikey=61 sw_last=60\n${gap}`)).toEqual([]);
  });

  it('are answered by widening what ends below or starts above', () => {
    const { fixed, titles } = foundBy(keyGap, gap);
    expect(fixed[0]).toEqual([gap.replace('hikey=59', 'hikey=61'), gap.replace('lokey=62', 'lokey=60')]);
    expect(titles[0]).toEqual([
      'Widen the zone below up to key 61 (C#4)',
      'Widen the zone above down to key 60 (C4)',
    ]);
  });

  it('are answered by all zones that end there, not by others', () => {
    const layers = `${gap}\n<region> sample=c.wav lokey=48 hikey=59 lovel=64\n<region> sample=d.wav lokey=48 hikey=58`;
    expect(foundBy(keyGap, layers).fixed[0][0]).toBe(layers.replaceAll('hikey=59', 'hikey=61'));
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(keyGap).toMatchObject({
      code: 'key-gap',
      severity: 'information',
      finds: expect.stringContaining('no region plays on'),
    });
  });

  it('leaves what is heard to a person', () => {
    expect(foundBy(keyGap, gap).safe).toEqual([false, false]);
  });
});
