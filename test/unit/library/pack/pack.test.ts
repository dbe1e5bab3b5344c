import type { ExecFileSyncOptions } from 'node:child_process';
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { WaveFile } from 'wavefile';
import { folderWith, run } from '../../commandLine/runInFolder';

/** A WAV file with a root key and a loop, made by wavefile; no two numbers give the same audio. */
function wav(number: number, bits: '8' | '16' | '24' | '32f' = '16', channels = 1): Uint8Array {
  const file = new WaveFile();
  const most = bits === '32f' ? 1 : 2 ** (Number(bits) - 1);
  const middle = bits === '8' ? 128 : 0;
  const frames = Array.from({ length: 3000 }, (_, at) => {
    const value = Math.sin((at * number) / 40) * most * 0.8;
    return bits === '32f' ? value : Math.round(value) + middle;
  });
  file.fromScratch(channels, 44100, bits, channels === 1 ? frames : [frames, [...frames].reverse()]);
  Object.assign(file.smpl, {
    ...{ chunkId: 'smpl', chunkSize: 36 + 24, dwMIDIUnityNote: 60 + number, dwNumSampleLoops: 1 },
    loops: [
      {
        ...{ dwName: '', dwCuePointID: 0, dwType: 0 },
        ...{ dwStart: 100, dwEnd: 2000 + number, dwFraction: 0, dwPlayCount: 0 },
      },
    ],
  });
  return file.toBuffer();
}

/** An instrument whose files have names that some system refuses, with an include, a variable and a file outside its folder. */
const odd: Record<string, string | Uint8Array> = {
  'work/Harp.sfz':
    '#define $D Samples\\\n<global> ampeg_release=1\n#include "parts/low: notes.sfzh"\n' +
    '<region> sample=$DA?.wav key=64\n<region> sample=Samples/a-.wav key=65\n<region> sample=../shared/CON.wav key=66\n' +
    '<region> sample=Samples/caf\u0065\u0301.wav key=67\n<region> sample=*sine key=68\n',
  'work/parts/low: notes.sfzh': '<region> sample=Samples/low.wav key=60\n',
  'work/Samples/A?.wav': wav(1),
  'work/Samples/a-.wav': wav(2),
  'work/Samples/cafe\u0301.wav': wav(3),
  'work/Samples/low.wav': wav(4),
  'work/Samples/unused.wav': wav(5),
  'shared/CON.wav': wav(6),
  'art.png': new Uint8Array([137, 80, 78, 71]),
};

const said = ['--fact', 'licence=CC0 1.0', '--fact', 'maker=Ines Moor', '--fact', 'picture=art.png'];

function unzipped(folder: string, zip: string): string {
  const out = join(folder, `out of ${zip}`);
  execFileSync('python3', [
    '-c',
    'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; z.extractall(sys.argv[2])',
    join(folder, zip),
    out,
  ]);
  return out;
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();
}

describe('a pack', () => {
  it('holds what the instrument needs under names that every system takes, and sounds as before', async () => {
    const folder = folderWith(odd);
    const packed = await run(folder, ['library', 'pack', 'work/Harp.sfz', ...said, '--format', 'json']);
    expect(packed.error).toContain('Recordings belong to those who made them');
    expect(JSON.parse(packed.out)).toEqual({
      instruments: [
        {
          ...{ name: 'Harp', source: 'work/Harp.sfz', state: 'built', message: null, outputs: ['Harp.zip'] },
          totals: { error: 0, warning: 0, information: expect.any(Number), hint: expect.any(Number) },
          notes: { assumed: 0, approximated: 0, dropped: 0 },
        },
      ],
    });
    const out = unzipped(folder, 'Harp.zip');
    const names = filesBelow(out);
    expect(names).toEqual(
      [
        ...[
          'CREDITS.txt',
          'Harp.sfz',
          'LICENCE.txt',
          'Samples/A-.wav',
          'Samples/_CON.wav',
          'Samples/a- 2.wav',
        ],
        ...['Samples/caf\u00e9.wav', 'Samples/low.wav', 'art.png', 'parts/low- notes.sfzh'],
      ].map((name) => `Harp/${name}`),
    );
    // Names that Windows refuses, as Microsoft's "Naming Files, Paths, and Namespaces" lists them.
    for (const name of names)
      expect(name).not.toMatch(
        /[<>:"\\|?*\u0000-\u001f]|(^|\/)(con|nul|aux|prn|com\d|lpt\d)\.|[. ](\/|$)|\.\./i,
      );
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    const check = await run(out, ['check', 'Harp', '--format', 'json']);
    expect(JSON.parse(check.out).totals).toMatchObject({ error: 0, warning: 0 });
    const compared = await run(folder, [
      'compare',
      'work/Harp.sfz',
      'out of Harp.zip/Harp/Harp.sfz',
      '--format',
      'json',
    ]);
    expect(JSON.parse(compared.out)).toMatchObject({ equal: true, differences: [] });
    expect(readFileSync(join(out, 'Harp/LICENCE.txt'), 'utf8')).toBe('CC0 1.0\n');
    expect(readFileSync(join(out, 'Harp/CREDITS.txt'), 'utf8')).toContain('Maker: Ines Moor');
  });

  it.each([
    [
      '<region> sample=../home/notes.txt',
      '1 sample is no audio that can be read, the first is "../home/notes.txt"',
    ],
    ['<region> sample=named.wav', '1 sample is no audio that can be read, the first is "named.wav"'],
    ['<control> image=../home/notes.txt <region> sample=good.wav', 'the text names "notes.txt" as a picture'],
  ])('gives no file away that is neither audio nor a picture: %s', async (text, said) => {
    const secret = 'what nobody else is to read';
    const folder = folderWith({
      'work/Harp.sfz': text,
      'work/good.wav': wav(1),
      'work/named.wav': secret,
      'home/notes.txt': secret,
    });
    const packed = await run(folder, ['library', 'pack', 'work/Harp.sfz', '--without-licence']);
    expect(packed.status).not.toBe(0);
    expect(packed.error + packed.out).toContain(said);
    expect(existsSync(join(folder, 'Harp.zip'))).toBe(false);
  });

  it('holds pictures that the text names, by what is in them', async () => {
    const folder = folderWith({
      'work/Harp.sfz': '<control> image=art/harp.img <region> sample=good.wav',
      'work/good.wav': wav(1),
      'work/art/harp.img': new Uint8Array([137, 80, 78, 71, 13, 10, 26, 10]),
    });
    await run(folder, ['library', 'pack', 'work/Harp.sfz', '--without-licence']);
    expect(filesBelow(unzipped(folder, 'Harp.zip'))).toContain('Harp/art/harp.img');
  });

  it('has the same bytes each time, whatever the times of its files and the zone', async () => {
    const folder = folderWith(odd);
    const pack = async (name: string) => {
      await run(folder, ['library', 'pack', 'work/Harp.sfz', ...said, '--output', name]);
      return readFileSync(join(folder, name, 'Harp.zip'));
    };
    const first = await pack('one');
    utimesSync(join(folder, 'work/Samples/low.wav'), 1e9, 1e9);
    const zone = process.env.TZ;
    process.env.TZ = 'Pacific/Kiritimati';
    try {
      expect((await pack('two')).equals(first)).toBe(true);
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  it('is refused without a licence, unless that is said on purpose, and nothing is written', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=a.wav key=60\n', 'a.wav': wav(1) });
    const refused = await run(folder, ['library', 'pack', 'a.sfz']);
    expect(refused.status).toBe(1);
    expect(refused.out).toContain('no licence is known');
    expect(existsSync(join(folder, 'a.zip'))).toBe(false);
    const packed = await run(folder, ['library', 'pack', 'a.sfz', '--without-licence']);
    expect(packed.status).toBe(0);
    expect(readFileSync(join(unzipped(folder, 'a.zip'), 'a/LICENCE.txt'), 'utf8')).toContain(
      'No licence is known',
    );
  });

  it('is refused where a sample is missing', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=gone.wav key=60\n' });
    const { status, out } = await run(folder, ['library', 'pack', 'a.sfz', ...said.slice(0, 2)]);
    expect(status).toBe(1);
    expect(out).toContain('1 sample is missing, the first is "gone.wav"');
  });

  it('is no longer than 200 characters in any path', async () => {
    const deep = 'very long folder name of a careful person '.repeat(2).trim();
    const path = `${deep}/${deep}/${deep}/note of a bell.wav`;
    const folder = folderWith({ 'a.sfz': `<region> sample=${path} key=60\n`, [path]: wav(1) });
    await run(folder, ['library', 'pack', 'a.sfz', ...said.slice(0, 2)]);
    const names = filesBelow(unzipped(folder, 'a.zip'));
    expect(names).toContain('a/Samples/note of a bell.wav');
    expect(Math.max(...names.map((name) => name.length))).toBeLessThanOrEqual(200);
  });

  it('takes the place of a folder whole, and of no folder that is none', async () => {
    const folder = folderWith({
      'a.sfz': '<region> sample=a.wav key=60\n',
      'a.wav': wav(1),
      'out/a/mine.txt': 'mine',
    });
    const args = ['library', 'pack', 'a.sfz', ...said.slice(0, 2), '--form', 'folder'];
    const refused = await run(folder, [...args, '--output', 'out']);
    expect([refused.status, readdirSync(join(folder, 'out/a'))]).toEqual([1, ['mine.txt']]);
    await run(folder, [...args, '--output', 'packs']);
    writeFileSync(join(folder, 'packs/a/old.txt'), 'of an older pack');
    await run(folder, [...args, '--output', 'packs']);
    expect(filesBelow(join(folder, 'packs'))).toEqual([
      'a/CREDITS.txt',
      'a/LICENCE.txt',
      'a/a.sfz',
      'a/a.wav',
    ]);
  });

  it('packs each instrument of a library as it was built, and one failing stops no other', async () => {
    const folder = folderWith({
      'zonewright.library.json': JSON.stringify({
        facts: { licence: 'CC BY 4.0' },
        targets: ['sfz', 'xml'],
        instruments: [
          { name: 'Harp', source: 'harp.txt', facts: { credits: ['Tuned by Ole Berg'] } },
          { name: 'Drum', source: 'drum.txt' },
        ],
      }),
      'built/sfz/Harp.sfz': '<region> sample=../../raw/a.wav key=60\n',
      'built/xml/Harp.instrument.xml':
        '<instrument><region sample="../../raw/a.wav" key="60"/></instrument>\n',
      'built/notes/Harp.md': '# Harp\n',
      'built/maps/Harp.svg': '<svg/>',
      'built/records/Harp.json': '{"noteCounts":{"assumed":2,"dropped":1}}',
      'raw/a.wav': wav(1),
    });
    const { status, out } = await run(folder, ['library', 'pack', '--format', 'json']);
    expect(status).toBe(1);
    expect(JSON.parse(out).instruments).toMatchObject([
      {
        ...{ name: 'Harp', state: 'built', outputs: ['packs/Harp.zip'] },
        notes: { assumed: 2, approximated: 0, dropped: 1 },
      },
      { name: 'Drum', state: 'failed', message: expect.stringContaining('not built yet') },
    ]);
    const pack = unzipped(join(folder, 'packs'), 'Harp.zip');
    expect(filesBelow(pack)).toEqual([
      ...[
        'CREDITS.txt',
        'Harp.instrument.xml',
        'Harp.sfz',
        'Harp.svg',
        'LICENCE.txt',
        'NOTES.md',
        'Samples/a.wav',
      ].map((name) => `Harp/${name}`),
    ]);
    expect(readFileSync(join(pack, 'Harp/Harp.instrument.xml'), 'utf8')).toContain('sample="Samples/a.wav"');
    expect(readFileSync(join(pack, 'Harp/CREDITS.txt'), 'utf8')).toContain('Tuned by Ole Berg');
  });
});

describe('a pack with FLAC', () => {
  const hasFlac = (() => {
    try {
      execFileSync('flac', ['--version']);
      return true;
    } catch {
      return false;
    }
  })();

  it('keeps every sample, loop and root key, and leaves alone what FLAC would change', async () => {
    const kinds = ['8', '16', '24'] as const;
    const files: Record<string, string | Uint8Array> = {
      'a.sfz': `${kinds.map((bits, at) => `<region> sample=s/${bits}.wav key=${60 + at}`).join('\n')}\n<region> sample=s/32f.wav key=70\n<region> sample=s/two.WAV key=71\n`,
      's/32f.wav': wav(4, '32f'),
      's/two.WAV': wav(5, '24', 2),
    };
    for (const [at, bits] of kinds.entries()) files[`s/${bits}.wav`] = wav(at + 1, bits);
    const folder = folderWith(files);
    const { status, error } = await run(folder, [
      'library',
      'pack',
      'a.sfz',
      ...said.slice(0, 2),
      '--audio',
      'flac',
    ]);
    expect(status).toBe(0);
    expect(error).toContain('1 sample stays');
    const out = unzipped(folder, 'a.zip');
    expect(filesBelow(join(out, 'a/s'))).toEqual(['16.flac', '24.flac', '32f.wav', '8.flac', 'two.flac']);
    const compared = await run(folder, ['compare', 'a.sfz', 'out of a.zip/a/a.sfz', '--format', 'json']);
    expect(JSON.parse(compared.out)).toMatchObject({ equal: true, differences: [] });
    const facts = async (path: string) => {
      const { container, encoding, ...rest } = JSON.parse(
        (await run(folder, ['sample', path, '--format', 'json'])).out,
      );
      return { ...rest, path: undefined };
    };
    for (const name of ['8', '16', '24'])
      expect(await facts(`out of a.zip/a/s/${name}.flac`)).toEqual(await facts(`s/${name}.wav`));
    if (!hasFlac) return;
    for (const name of ['8', '16', '24', 'two']) {
      const path = join(out, `a/s/${name}.flac`);
      const original = join(folder, name === 'two' ? 's/two.WAV' : `s/${name}.wav`);
      // With -w a warning, such as a missing checksum, is an error.
      execFileSync('flac', ['-t', '-s', '-w', path]);
      expect(execFileSync('metaflac', ['--list', '--block-type=APPLICATION', path]).toString()).toContain(
        'smpl',
      );
      const decoded = ['-d', '-s', '-c', '--force-raw-format', '--endian=little', '--sign=signed'];
      const quietly: ExecFileSyncOptions = { stdio: ['pipe', 'pipe', 'ignore'] };
      const again = execFileSync('flac', ['-s', '-c', original], quietly);
      expect(execFileSync('flac', [...decoded, path], quietly)).toEqual(
        execFileSync('flac', [...decoded, '-'], { ...quietly, input: again }),
      );
      expect(statSync(path).size).toBeLessThan(statSync(original).size);
    }
  });
});
