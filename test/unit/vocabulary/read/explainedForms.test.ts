import { describe, expect, it } from 'vitest';
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
});
