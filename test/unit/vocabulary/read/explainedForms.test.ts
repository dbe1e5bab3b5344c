import { describe, expect, it } from 'vitest';
import { workOf } from '../../growth/countedWork';
import { readInferred } from '../infer/inferred';

const unreadIn = (outer: string) =>
  readInferred(
    `<box ${outer}><item wav="a.wav" key="40" level="-3" pan="-10"/><item wav="b.wav" key="41" level="-6" pan="10"/></box>`,
  ).unread.join('\n');

describe('what explains how values are read', () => {
  it.each(['levels="dB"', 'keys="MIDI numbers"'])('is not told as unread: %s', (outer) => {
    expect(unreadIn(outer)).toBe('');
  });

  it('is told where values are read otherwise', () => {
    expect(unreadIn('keyRange="piano roll"')).toContain('piano roll');
  });

  it('is not looked for in each of many values', async () => {
    const items = Array.from(
      { length: 500 },
      (_, at) => `<item wav="s${at}.wav" key="${at % 128}" pan="${(at % 21) - 10}" remark="take ${at}"/>`,
    );
    const work = await workOf(() => readInferred(`<box levels="dB">${items.join('')}</box>`));
    const looks = [...work].filter(([name]) => /explainedForms.\w+ isOfScale/.test(name));
    expect(looks).toHaveLength(1);
    // Those of the remarks, which nothing reads; places that are read are not asked.
    expect(looks[0]?.[1]).toBeLessThan(100);
  });
});
