import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { explain } from '../../../server/playing/explaining/explain';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { coveringStrikes } from '../../../server/playing/sweep/coveringStrikes';
import { playUpTo } from '../../../server/playing/sweep/playedNote';
import { readSfz } from '../../../server/sfz/read';

const demo = join(__dirname, '../../../samples-demo');
/** A folder of other instruments to try as well, for those who have one. */
const more = process.env.ZONEWRIGHT_INSTRUMENTS;

const paths = [demo, ...(more === undefined ? [] : [more])].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.sfz'))
    .map((path) => join(folder, path)),
);

describe('instruments that are there', () => {
  it.each(paths)('%s', (path) => {
    const instrument = readSfz(readFileSync(path, 'utf8'), {
      path,
      include: (included) =>
        existsSync(included) ? { kind: 'text', text: readFileSync(included, 'utf8') } : { kind: 'missing' },
    });
    const playable = playableInstrument(instrument);
    const { strikes, never } = coveringStrikes(playable);
    const covered = new Set(strikes.flatMap(({ starts }) => starts));
    expect(covered.size + never.length).toBe(instrument.regions.length);
    // What a cover says is what explaining says, for each region that the strike itself starts.
    for (const { note, starts } of strikes.slice(0, 200)) {
      const { player, timeSeconds } = playUpTo(playable, note);
      const { sounds, silent } = explain(playable, player, { ...note, timeSeconds });
      expect(sounds.length + silent.length).toBe(instrument.regions.length);
      if (note.previousKey === undefined && note.by === undefined)
        expect(starts).toEqual(expect.arrayContaining(sounds));
      for (const { message } of silent) expect(message).not.toMatch(/undefined|NaN/);
    }
  });
});
