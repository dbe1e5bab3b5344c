import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import type { FileStat } from '../../../../server/model/files';
import type { SampleFacts } from '../../../../server/model/samples';
import { cacheFolder } from '../../../../server/workspace/measuring/cacheFolder';
import type { CacheStorage } from '../../../../server/workspace/measuring/measureCache';
import { MeasureCache } from '../../../../server/workspace/measuring/measureCache';
import { userCacheFolder } from '../../../../server/workspace/measuring/userCacheFolder';
import { temporaryFolder } from '../../../temporaryFolder';

const state = (size: number, modified: number): FileStat => ({ kind: 'file', size, modified });
const pitch = { hertz: 440, key: 69, cents: 0, confidence: 1 };
const facts: SampleFacts = {
  container: 'wav',
  encoding: 'pcm',
  sampleRate: 44100,
  channels: 1,
  bitsPerSample: 16,
  frames: 100,
  lengthSeconds: 100 / 44100,
  loops: [],
  rootKey: null,
  fineTuneCents: null,
  problems: [],
};

let folder: string;

beforeEach(() => {
  folder = temporaryFolder('zonewright-cache');
});

const filesIn = () => readdirSync(folder).sort();

/** What is remembered of a file by one who starts afresh. */
async function found(path: string, stat: FileStat, storage: CacheStorage = cacheFolder(folder)) {
  return new MeasureCache(storage).find(path, stat);
}

describe('what is remembered of samples', () => {
  it('is there after a restart, by path, size and time', async () => {
    const cache = new MeasureCache(cacheFolder(`${folder}/made/anew`));
    await cache.add('/set/a.wav', state(200, 1000.25), { facts });
    await cache.add('/set/a.wav', state(200, 1000.25), { measures: { pitch1: pitch } });
    await cache.save();
    const storage = cacheFolder(`${folder}/made/anew`);
    const known = await found('/set/a.wav', state(200, 1000.25), storage);
    expect(known?.facts).toEqual(facts);
    expect(known?.measure('pitch1')).toEqual(pitch);
    expect(await found('/set/a.wav', state(201, 1000.25), storage)).toBeUndefined();
    expect(await found('/set/a.wav', state(200, 1000.5), storage)).toBeUndefined();
    expect(await found('/set/b.wav', state(200, 1000.25), storage)).toBeUndefined();
    expect(await found('/other/a.wav', state(200, 1000.25), storage)).toBeUndefined();
  });

  it('is added to after a restart, and what was not asked for stays', async () => {
    const first = new MeasureCache(cacheFolder(folder));
    for (const path of ['/set/a.wav', '/set/b.wav']) {
      await first.add(path, state(200, 1), { facts, measures: { pitch1: pitch } });
    }
    await first.save();
    const second = new MeasureCache(cacheFolder(folder));
    expect(second.known('/set/a.wav', state(200, 1))).toBeUndefined();
    await second.open(['/set', '/none']);
    expect(second.known('/set/b.wav', state(200, 1))).toMatchObject({ facts });
    await second.add('/set/a.wav', state(200, 1), { measures: { 'loopSeam1 1 2': null } });
    await second.save();
    const one = await found('/set/a.wav', state(200, 1));
    expect(one?.facts).toEqual(facts);
    expect(one?.measure('pitch1')).toEqual(pitch);
    expect(one?.measure('loopSeam1 1 2')).toBeNull();
    const other = await found('/set/b.wav', state(200, 1));
    expect(other?.facts).toEqual(facts);
    expect(other?.measure('pitch1')).toEqual(pitch);
    expect(other?.measure('loopSeam1 1 2')).toBeUndefined();
  });

  it('takes the place of what was remembered of an earlier state', async () => {
    const cache = new MeasureCache(cacheFolder(folder));
    await cache.add('/set/a.wav', state(200, 1), { facts });
    await cache.add('/set/a.wav', state(300, 2), { measures: { pitch1: null } });
    expect(await cache.find('/set/a.wav', state(200, 1))).toBeUndefined();
    const later = await cache.find('/set/a.wav', state(300, 2));
    expect(later?.measure('pitch1')).toBeNull();
    expect(later?.facts).toBeUndefined();
    // Else it would be written when the folder is gone, and make it anew.
    await cache.save();
  });

  it('is passed over where the file was damaged, and written anew', async () => {
    const cache = new MeasureCache(cacheFolder(folder));
    await cache.add('/set/a.wav', state(200, 1), { facts, measures: { pitch1: pitch } });
    await cache.save();
    const [name] = filesIn() as [string];
    const whole = readFileSync(join(folder, name));
    await fc.assert(
      fc.asyncProperty(
        fc.nat(whole.length - 1),
        fc.integer({ min: 1, max: 255 }),
        fc.boolean(),
        async (at, change, isCut) => {
          const damaged = Buffer.from(isCut ? whole.subarray(0, at) : whole);
          if (!isCut) damaged[at] = damaged[at] ^ change;
          writeFileSync(join(folder, name), damaged);
          expect(await found('/set/a.wav', state(200, 1))).toBeUndefined();
        },
      ),
      { numRuns: 60 },
    );
    const next = new MeasureCache(cacheFolder(folder));
    await next.add('/set/a.wav', state(200, 1), { facts });
    await next.save();
    expect(await found('/set/a.wav', state(200, 1))).toMatchObject({ facts });
  });

  it('is nothing where the folder cannot be used, and that harms nobody', async () => {
    writeFileSync(join(folder, 'file'), '');
    const cache = new MeasureCache(cacheFolder(join(folder, 'file')));
    await cache.add('/set/a.wav', state(200, 1), { facts });
    await cache.save();
    expect(await found('/set/a.wav', state(200, 1), cacheFolder(join(folder, 'file')))).toBeUndefined();
    expect(filesIn()).toEqual(['file']);
  });

  it('stays within its bounds: what was unused longest goes', async () => {
    const storage = cacheFolder(folder, 2000);
    const bytes = (letter: string) => Buffer.from(letter.repeat(700));
    await storage.write('old', bytes('a'));
    const [old] = filesIn() as [string];
    utimesSync(join(folder, old), 100, 100);
    await storage.write('used', bytes('b'));
    const used = filesIn().find((name) => name !== old) as string;
    utimesSync(join(folder, used), 50, 50);
    expect(await storage.read('used')).toEqual(bytes('b'));
    await storage.write('new', bytes('c'));
    expect(await storage.read('old')).toBeUndefined();
    expect(await storage.read('used')).toEqual(bytes('b'));
    expect(await storage.read('new')).toEqual(bytes('c'));
  });

  it('leaves no half-written file behind', async () => {
    const cache = new MeasureCache(cacheFolder(folder));
    for (let at = 0; at < 5; at++) {
      await cache.add(`/set/${at}.wav`, state(1, 1), { facts });
      void cache.save();
    }
    await cache.save();
    expect(filesIn()).toHaveLength(1);
  });
});

describe('the folder of the cache', () => {
  const home = '/home/her';
  const place = (platform: string, environment = {}, at = home) =>
    userCacheFolder({ platform, home: at, environment });

  it('is where the XDG Base Directory Specification puts it', () => {
    expect(place('linux')).toBe('/home/her/.cache/zonewright');
    expect(place('linux', { XDG_CACHE_HOME: '/var/kept/' })).toBe('/var/kept/zonewright');
    // "All paths set in these environment variables must be absolute. If … relative … ignore it."
    expect(place('linux', { XDG_CACHE_HOME: 'kept' })).toBe('/home/her/.cache/zonewright');
    expect(place('linux', { XDG_CACHE_HOME: '' })).toBe('/home/her/.cache/zonewright');
  });

  it('is among the caches of the library on macOS and the local data on Windows', () => {
    expect(place('darwin')).toBe('/home/her/Library/Caches/zonewright');
    expect(place('win32', { LOCALAPPDATA: 'C:\\Users\\her\\AppData\\Local' })).toBe(
      'C:/Users/her/AppData/Local/zonewright',
    );
  });

  it('is none without a home', () => expect(place('linux', {}, '')).toBeUndefined());
});
