import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { WaveFile } from 'wavefile';
import { folderWith, run } from './runInFolder';

/** A WAV file of so many frames, made by wavefile. */
function wav(frames: number): Uint8Array {
  const file = new WaveFile();
  file.fromScratch(1, 44100, '16', new Int16Array(frames));
  return file.toBuffer();
}

const instrument = `<control> default_path=Samples\\
<group> group_label=soft volume=-3 loop_mode=loop_continuous
<region> sample=a.wav lokey=a3 hikey=60 pitch_keycenter=c4 loop_start=0 loop_end=99
<region> sample=b.wav key=61
`;

describe('check', () => {
  it('gives files, findings with places counted from 1, and totals', async () => {
    const folder = folderWith({
      'x/a.sfz': instrument,
      'x/Samples/a.wav': wav(50),
      'x/Samples/b.wav': wav(50),
    });
    const { status, out } = await run(folder, ['check', 'x', '--format', 'json']);
    expect(status).toBe(1);
    expect(JSON.parse(out)).toEqual({
      files: [
        {
          path: 'x/a.sfz',
          findings: [
            {
              code: 'loop-past-end',
              severity: 'error',
              message: expect.stringContaining('49'),
              start: { line: 3, column: 82 },
              end: { line: 3, column: 84 },
            },
          ],
        },
      ],
      totals: { error: 1, warning: 0, information: 0, hint: 0 },
    });
  });

  it('ends by --fail-on', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=*sine key=60 keyy=61\n' });
    expect((await run(folder, ['check', 'a.sfz'])).status).toBe(0);
    expect((await run(folder, ['check', 'a.sfz', '--fail-on', 'warning'])).status).toBe(1);
    const broken = folderWith({ 'a.sfz': '<region> sample=gone.wav key=60\n' });
    expect((await run(broken, ['check', '.'])).status).toBe(1);
    expect((await run(broken, ['check', '.', '--fail-on', 'none'])).status).toBe(0);
  });

  it('checks included files as parts of the files that include them, each finding once', async () => {
    const folder = folderWith({
      'a-module.sfz': '<region> sample=$S key=$K\n',
      'main.sfz': '#define $S gone.wav\n#define $K 60\n#include "a-module.sfz"\n#include "a-module.sfz"\n',
      'other.sfz': '#define $S gone.wav\n#define $K 62\n#include "a-module.sfz"\n',
    });
    const { out } = await run(folder, ['check', '.', '--format', 'json']);
    const { files } = JSON.parse(out);
    const found = files.flatMap((file: { path: string; findings: { code: string }[] }) =>
      file.findings.map(({ code }) => `${file.path} ${code}`),
    );
    expect(found.filter((one: string) => one.endsWith('sample-missing'))).toEqual([
      'a-module.sfz sample-missing',
    ]);
    expect(found.filter((one: string) => one.endsWith('define-unknown'))).toEqual([]);
  });

  it('reports files that include one another in a circle', async () => {
    const folder = folderWith({
      'a.sfz': '#include "b.sfz"\n<region> sample=*sine\n',
      'b.sfz': '#include "a.sfz"\n',
    });
    const { out } = await run(folder, ['check', '.', '--format', 'json']);
    expect(out).toContain('"include-cycle"');
  });

  it('lists audio files that nothing refers to, in sample folders only', async () => {
    const folder = folderWith({
      'a.sfz': '<region> sample=Samples/a.wav\n',
      'Samples/a.wav': wav(10),
      'Samples/spare.wav': wav(10),
      'elsewhere/song.wav': wav(10),
    });
    const { out } = await run(folder, ['check', '.']);
    expect(out).toContain('Samples/spare.wav:1:1: information');
    expect(out).not.toContain('song.wav');
  });

  it('leaves other XML alone and reads zonewright.json', async () => {
    const folder = folderWith({
      'zonewright.json': '{ "severity": { "sample-missing": "hint" } }',
      'x/page.xml': '<html><region sample="gone.wav"/></html>',
      'x/a.sfz': '<region> sample=gone.wav\n',
    });
    const { status, out } = await run(folder, ['check', 'x']);
    expect(out).toContain('x/a.sfz:1:17: hint');
    expect(out).toContain('1 file checked');
    expect(status).toBe(0);
  });

  it('writes SARIF 2.1.0', async () => {
    const folder = folderWith({ 'a b.sfz': '<region> sample=gone.wav\n' });
    const log = JSON.parse((await run(folder, ['check', '.', '--format', 'sarif'])).out);
    expect(log.version).toBe('2.1.0');
    expect(log.runs[0].results[0]).toMatchObject({
      ruleId: 'sample-missing',
      level: 'error',
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: 'a%20b.sfz' },
            region: { startLine: 1, startColumn: 17 },
          },
        },
      ],
    });
  });
});

describe('regions', () => {
  it('gives the values in force by canonical names, numbers as numbers', async () => {
    const folder = folderWith({ 'a.sfz': instrument });
    const { status, out } = await run(folder, ['regions', 'a.sfz', '--format', 'json']);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toEqual({
      format: 'sfz',
      regions: [
        {
          group_label: 'soft',
          volume: -3,
          loop_mode: 'loop_continuous',
          sample: 'Samples/a.wav',
          lokey: 57,
          hikey: 60,
          pitch_keycenter: 60,
          loop_start: 0,
          loop_end: 99,
          label: 'soft',
        },
        {
          group_label: 'soft',
          volume: -3,
          loop_mode: 'loop_continuous',
          sample: 'Samples/b.wav',
          lokey: 61,
          hikey: 61,
          pitch_keycenter: 61,
          label: 'soft',
        },
      ],
      notes: [],
    });
  });

  it('tells names that the format does not know, each once', async () => {
    const text = '<region> sample=a.wav key=60 roof=2\n<region> sample=b.wav key=61 roof=3\n';
    const xml = '<instrument><region sample="a.wav" lokey="60" roof="2"/></instrument>';
    const folder = folderWith({ 'a.sfz': text, 'a.xml': xml });
    const notes = async (path: string) =>
      JSON.parse((await run(folder, ['regions', path, '--format', 'json'])).out).notes;
    expect(await notes('a.sfz')).toEqual([
      { kind: 'ignored', line: 1, message: expect.stringMatching(/^roof is not .* 1 more like this\.$/) },
    ]);
    expect(await notes('a.xml')).toEqual([
      { kind: 'ignored', line: 1, message: expect.stringMatching(/^roof is not /) },
    ]);
  });

  it('reads standard input and Latin-1', async () => {
    const folder = folderWith({ 'a.sfz': Buffer.from('<region> sample=Fl\u00f6te.wav\n', 'latin1') });
    expect((await run(folder, ['regions', 'a.sfz'])).out).toContain('Fl\u00f6te.wav');
    expect((await run(folder, ['regions', '-'], '<region> key=c4\n')).out).toContain('C4');
  });
});

describe('convert', () => {
  it('keeps the values in force between SFZ and XML, and leads samples back from another folder', async () => {
    const folder = folderWith({ 'in/a.sfz': instrument, 'out/keep.txt': '' });
    const json = async (path: string) =>
      JSON.parse((await run(folder, ['regions', path, '--format', 'json'])).out).regions;
    expect(
      (await run(folder, ['convert', 'in/a.sfz', '--to', 'xml', '--output', 'out/a.instrument.xml'])).status,
    ).toBe(0);
    const before = await json('in/a.sfz');
    const expected = before.map((one: { sample: string }) => ({ ...one, sample: `../in/${one.sample}` }));
    expect(await json('out/a.instrument.xml')).toEqual(expected);
    await run(folder, ['convert', 'out/a.instrument.xml', '--to', 'sfz', '--output', 'in/b.sfz']);
    expect(await json('in/b.sfz')).toEqual(before);
  });

  it('leaves what is there as it is when it cannot write, and no half-written file', async () => {
    const folder = folderWith({ 'a.sfz': instrument, 'taken/keep.txt': 'kept' });
    const { status } = await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--output', 'taken']);
    expect(status).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(['a.sfz', 'taken']);
    expect(readFileSync(join(folder, 'taken/keep.txt'), 'utf8')).toBe('kept');
  });

  it('turns a table into regions, its samples found in a folder', async () => {
    const folder = folderWith({
      'zones.tsv': 'Sample\tLow key\tHigh key\tRoot\nlow\t36\t47\t40\nhigh.wav\t48\t60\t52\n',
      'pool/deep/Low.wav': wav(10),
      'pool/high.wav': wav(10),
      'out/x.txt': '',
    });
    const args = [
      'convert',
      'zones.tsv',
      '--to',
      'sfz',
      '--samples',
      'pool',
      '--output',
      'out/a.sfz',
      '--notes',
      'notes.md',
    ];
    expect(await run(folder, args)).toMatchObject({ status: 0, out: '' });
    const { out } = await run(folder, ['regions', 'out/a.sfz', '--format', 'json']);
    expect(JSON.parse(out).regions).toEqual([
      { sample: '../pool/deep/Low.wav', lokey: 36, hikey: 47, pitch_keycenter: 40 },
      { sample: '../pool/high.wav', lokey: 48, hikey: 60, pitch_keycenter: 52 },
    ]);
    expect(existsSync(join(folder, 'notes.md'))).toBe(true);
  });
});

describe('map and sample', () => {
  it('writes the map as SVG', async () => {
    const folder = folderWith({ 'a.sfz': instrument });
    expect((await run(folder, ['map', 'a.sfz', '--output', 'a.svg'])).status).toBe(0);
    expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toMatch(/^<(\?xml|svg)/);
  });

  it('gives one JSON object a file', async () => {
    const folder = folderWith({ 'x/a.wav': wav(22050), 'x/b.wav': wav(10) });
    const { out } = await run(folder, ['sample', 'x/a.wav', 'x/b.wav', '--format', 'json']);
    const [first, second] = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(first).toMatchObject({
      path: 'x/a.wav',
      container: 'wav',
      encoding: 'pcm',
      sampleRate: 44100,
      channels: 1,
      bitsPerSample: 16,
      frames: 22050,
      lengthSeconds: 0.5,
      loops: [],
      rootKey: null,
      fineTuneCents: null,
      pitch: null,
    });
    expect(second.frames).toBe(10);
  });
});
