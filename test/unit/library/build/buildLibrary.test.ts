import { readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FileWriter } from '../../../../server/library/build/fileWriter';
import type { InstrumentRecord } from '../../../../server/library/build/instrumentRecord';
import { build, filesIn, folderOf, libraryFile, put, smallLibrary, statesOf } from './libraryFolder';

/** Says what the rack's words mean, its keys otherwise than one would think. */
const rack = JSON.stringify({
  name: 'Rack',
  levels: [
    { element: 'rack', is: 'instrument' },
    {
      element: 'strike',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@file', form: { kind: 'path' } },
        { parameter: 'key', at: '@pitch', form: { kind: 'number' } },
      ],
    },
  ],
});
const allBuilt = { Bell: 'built', Reed: 'built', Broken: 'failed', Gong: 'built' };
const unchanged = { Bell: 'unchanged', Reed: 'unchanged', Broken: 'failed', Gong: 'unchanged' };

describe('building a library', () => {
  it('builds each instrument, and says why one cannot be', async () => {
    const folder = folderOf(smallLibrary());
    const outcomes = await build(folder);
    expect(statesOf(outcomes)).toEqual(allBuilt);
    const [bell, reed, broken] = outcomes;
    expect(bell).toMatchObject({ source: 'old/bell.sfz', message: null, totals: { error: 1 } });
    expect(reed?.outputs).toEqual(['built/sfz/Reed.sfz', 'built/xml/Reed.instrument.xml']);
    expect(broken?.message).toMatch(/^nothing\.txt is neither SFZ, instrument XML nor a zone table: /);
    const text = readFileSync(join(folder, 'built/sfz/Reed.sfz'), 'utf8');
    expect(text).toContain('../../audio/reed a.wav');
    const record = JSON.parse(
      readFileSync(join(folder, 'built/records/Bell.json'), 'utf8'),
    ) as InstrumentRecord;
    expect(record.figures).toMatchObject({ regions: 2, samples: 2, missing: 1, keys: [60, 61] });
    const note = readFileSync(join(folder, 'built/notes/Bell.md'), 'utf8');
    for (const words of [
      'bell.sfz, an SFZ text',
      'Ines Falk',
      'CC0 1.0',
      '1 sample file is missing',
      'law differs',
    ])
      expect(note).toContain(words);
  });

  it('leaves alone what has not changed, by content', async () => {
    const folder = folderOf(smallLibrary());
    await build(folder);
    const before = filesIn(folder);
    expect(statesOf(await build(folder))).toEqual(unchanged);
    // Another time of change alone says nothing: the text is the same.
    utimesSync(join(folder, 'old/parts.sfz'), 1, 1);
    expect(statesOf(await build(folder))).toEqual(unchanged);
    expect(filesIn(folder)).toEqual(before);
    // Neither does what lies beside sources and is none, nor what is packed, nor what is new around the library.
    put(folder, { 'report.csv': 'a', 'packs/Bell.zip': 'a', 'old/read me.txt': 'a', '../else.sfz': '' });
    expect(statesOf(await build(folder))).toEqual(unchanged);
    rmSync(join(folder, '../else.sfz'));
  });

  it.each([
    ['an included text', 'Bell', { 'old/parts.sfz': '<global> ampeg_release=0.5\n' }],
    ['a missing sample that came', 'Bell', { 'old/lost.wav': '' }],
    ['a sample that is another', 'Gong', { 'old/gong.wav': 'no audio any more' }],
    ['a vocabulary that came', 'Gong', { 'rack.vocabulary.json': rack }],
    ['a table', 'Reed', { 'tables/reed.tsv': 'Sample\tLow\tHigh\tRoot\nreed a.wav\t40\t50\t45\n' }],
    ['settings beside a source', 'Reed', { 'tables/reed.zonewright.json': '{ "middleC": "C3" }' }],
    [
      'severities of the project',
      'Bell',
      { 'zonewright.json': '{ "severity": { "sample-missing": "off" } }' },
    ],
  ])('builds again what %s concerns', async (_, name, files) => {
    const folder = folderOf(smallLibrary());
    await build(folder);
    put(folder, files);
    expect(statesOf(await build(folder))).toMatchObject({ [name]: 'built' });
    const undisturbed = folderOf({ ...smallLibrary(), ...files });
    await build(undisturbed);
    expect(filesIn(join(folder, 'built'))).toEqual(filesIn(join(undisturbed, 'built')));
  });

  it('does not write over what a person changed, unless told to', async () => {
    const folder = folderOf(smallLibrary());
    await build(folder);
    const path = join(folder, 'built/sfz/Bell.sfz');
    const first = readFileSync(path, 'utf8');
    writeFileSync(path, 'My own work.');
    const [bell] = await build(folder);
    expect(bell).toMatchObject({
      state: 'failed',
      message: expect.stringContaining('was changed after it was built'),
    });
    expect(readFileSync(path, 'utf8')).toBe('My own work.');
    expect((await build(folder, { force: true }))[0]?.state).toBe('built');
    expect(readFileSync(path, 'utf8')).toBe(first);
    rmSync(path);
    expect((await build(folder))[0]?.state).toBe('built');
  });

  it('comes back from a failure, and keeps what was built before it', async () => {
    const folder = folderOf(smallLibrary());
    await build(folder);
    const before = filesIn(join(folder, 'built'));
    put(folder, { 'tables/reed.tsv': 'nothing' });
    expect(statesOf(await build(folder))).toMatchObject({ Reed: 'failed' });
    expect(filesIn(join(folder, 'built'))['sfz/Reed.sfz']).toBe(before['sfz/Reed.sfz']);
    put(folder, { 'tables/reed.tsv': smallLibrary()['tables/reed.tsv'] as string });
    expect(statesOf(await build(folder))).toMatchObject({ Reed: 'built' });
    expect(filesIn(join(folder, 'built'))).toEqual(before);
  });

  it('gives the same bytes in parts as in one', async () => {
    const whole = folderOf(smallLibrary());
    await build(whole);
    const parts = folderOf(smallLibrary());
    const names: string[] = [];
    for (const part of [3, 1, 2])
      names.push(...(await build(parts, { part: { part, of: 3 } })).map(({ name }) => name));
    expect(names.sort()).toEqual(['Bell', 'Broken', 'Gong', 'Reed']);
    expect(filesIn(join(parts, 'built'))).toEqual(filesIn(join(whole, 'built')));
  });
});

describe('a build that was ended', () => {
  /** Builds until so many files are written; the next write never ends, and nothing is done behind it. */
  async function endedAfter(folder: string, writes: number): Promise<void> {
    let left = writes;
    await new Promise<void>((ended) => {
      const writer = (disk: FileWriter): FileWriter => ({
        ...disk,
        write: (path, content) => {
          if (left-- > 0) return disk.write(path, content);
          ended();
          return new Promise(() => {});
        },
      });
      void build(folder, { writer }).then(() => ended());
    });
  }

  /** Fewer, as each is built many times. */
  const twoInstruments = () => {
    const files = smallLibrary();
    const library = JSON.parse(files[libraryFile] as string) as { instruments: unknown[] };
    return { ...files, [libraryFile]: JSON.stringify({ instruments: library.instruments.slice(0, 2) }) };
  };

  it('ends equal to an undisturbed one when it is begun again, whenever it was ended', async () => {
    const undisturbed = folderOf(twoInstruments());
    let writes = 0;
    await build(undisturbed, {
      writer: (disk) => ({
        ...disk,
        write: (path, content) => {
          writes++;
          return disk.write(path, content);
        },
      }),
    });
    const expected = filesIn(join(undisturbed, 'built'));
    expect(writes).toBeGreaterThan(10);
    const folder = folderOf(twoInstruments());
    for (let at = 0; at <= writes; at++) {
      rmSync(join(folder, 'built'), { recursive: true, force: true });
      rmSync(join(folder, '.zonewright-build'), { recursive: true, force: true });
      await endedAfter(folder, at);
      await build(folder);
      expect(filesIn(join(folder, 'built'))).toEqual(expected);
    }
  });

  it('takes what it was about to write for its own, also where the source changes in between', async () => {
    const folder = folderOf(smallLibrary());
    await build(folder);
    put(folder, { 'old/bell.sfz': '<region> sample=bell.wav key=62\n' });
    await endedAfter(folder, 2);
    put(folder, { 'old/bell.sfz': '<region> sample=bell.wav key=63\n' });
    expect(statesOf(await build(folder))).toMatchObject({ Bell: 'built' });
    expect(readFileSync(join(folder, 'built/sfz/Bell.sfz'), 'utf8')).toContain('63');
  });
});

it('is not stopped by a library file that is half right', async () => {
  const folder = folderOf({
    ...smallLibrary(),
    [libraryFile]: '{ "instruments": [{ "name": "Bell", "source": "old/bell.sfz" }, { "name": 3 }] }',
  });
  expect(statesOf(await build(folder))).toEqual({ Bell: 'built' });
});
