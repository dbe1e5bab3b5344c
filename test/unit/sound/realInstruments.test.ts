import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { folderWith, run } from '../commandLine/runInFolder';

const demo = join(__dirname, '../../../samples-demo/millrace-chimes');
/** A folder of other instruments to try as well, for those who have one. */
const more = process.env.ZONEWRIGHT_INSTRUMENTS;

const paths = [demo, ...(more === undefined ? [] : [more])].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.sfz'))
    .map((path) => join(folder, path)),
);

interface Told {
  sampleRate: number;
  frames: number;
  notes: { seconds: number; key: number; regions: { sample: string | null }[] }[];
  warnings: string[];
}

describe('instruments that are there', () => {
  it.each(paths)(
    'sound without a fault: %s',
    async (path) => {
      const folder = folderWith({});
      for (const velocity of ['1', '64', '127']) {
        const words =
          `--keys 0-127 --velocity ${velocity} --hold 0.2 --rate 22050 --float --format json`.split(' ');
        const { status, out } = await run(folder, ['render', path, '--output', 'o.wav', ...words]);
        expect(status).toBe(0);
        const told = JSON.parse(out) as Told;
        expect(told.warnings.filter((line) => /no numbers|decoded|too many/.test(line))).toEqual([]);
        const file = new wavefile.WaveFile(readFileSync(join(folder, 'o.wav')));
        if (told.frames === 0) continue;
        const [left, right] = file.getSamples(false, Float32Array) as unknown as [Float32Array, Float32Array];
        expect(left.length).toBe(told.frames);
        expect(left.every(Number.isFinite) && right.every(Number.isFinite)).toBe(true);
        for (const [at, { seconds, regions }] of told.notes.entries()) {
          if (regions.length === 0) continue;
          const from = Math.round(seconds * told.sampleRate);
          const next = told.notes[at + 1]?.seconds ?? Number.POSITIVE_INFINITY;
          const until = Math.min(told.frames, Math.round(next * told.sampleRate));
          let peak = 0;
          for (let frame = from; frame < until; frame++) {
            peak = Math.max(peak, Math.abs(left[frame]), Math.abs(right[frame]));
          }
          expect(peak, `key ${told.notes[at].key} at velocity ${velocity}`).toBeGreaterThan(0);
        }
      }
    },
    300_000,
  );
});
