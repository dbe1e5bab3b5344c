import { describe, expect, it } from 'vitest';
import { turnsOf } from '../../../client/audition/page/turns';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { readSfz } from '../../../server/sfz/read';

const text = `<region> sample=*sine lokey=40 hikey=42 pitch_keycenter=60 hivel=63
<region> sample=*saw lokey=40 hikey=42 pitch_keycenter=41 lovel=64
<region> sample=*saw key=44 lovel=100 <region> sample=*saw lokey=-1 hikey=-1`;
const playable = playableInstrument(readSfz(text, { path: 'a.sfz' }));
const headers = [...playable.header];

describe('notes in turn', () => {
  it('are regions at their root key, or the nearest they have, and their middle velocity', () => {
    expect(turnsOf(playable, headers, 'regions')).toEqual([
      { key: 42, velocity: 32 },
      { key: 41, velocity: 96 },
      { key: 44, velocity: 114 },
    ]);
  });

  it('are all keys that something answers', () => {
    expect(turnsOf(playable, [], 'keys').map(({ key }) => key)).toEqual([40, 41, 42, 44]);
  });

  it('are the layers of one key from soft to loud', () => {
    expect(turnsOf(playable, [headers[1]], 'layers')).toEqual([
      { key: 41, velocity: 32 },
      { key: 41, velocity: 96 },
    ]);
    expect(turnsOf(playable, [], 'layers')).toEqual([]);
  });
});
