import { describe, expect, it } from 'vitest';
import { playableInstrument } from '../../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../../server/playing/player/createPlayer';
import { readSfz } from '../../../../server/sfz/read';

describe('a player', () => {
  it('starts the regions of a key and a velocity, and lets them go', () => {
    const text =
      '<region> sample=a.wav hikey=59\n<region> sample=b.wav lokey=60 lovel=64\n<region> sample=c.wav hivel=63';
    const playable = structuredClone(playableInstrument(readSfz(text, { path: 'a.sfz' })));
    const player = createPlayer(playable, { seed: 1 });
    const started = player.noteOn(60, 100, 0);
    expect(started).toMatchObject([
      { kind: 'start', region: 1, key: 60, velocity: 100, timeSeconds: 0, gainDb: 0 },
    ]);
    expect(player.noteOff(60, 64, 1)).toEqual([{ kind: 'release', voice: 1 }]);
  });
});
