import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { Generator as g } from '../../../server/soundfont/generators';
import { readerOf } from '../audio/byteFiles';
import { folderWith, run } from '../commandLine/runInFolder';
import type { TestGenerator } from './fontBytes';
import { fontBytes, tone } from './fontBytes';
import { brokenRules } from './publishedRules';
import { viewOf } from './readFonts';
import { wav } from './writtenFonts';

const stereo = () =>
  fontBytes({
    presets: [
      { name: 'Reed', zones: [{ gens: [[g.instrument, 0]] }] },
      { name: 'Kit', bank: 128, zones: [{ gens: [[g.instrument, 1]] }] },
    ],
    instruments: [
      {
        name: 'Reed',
        zones: ([-500, 500] as const).map((pan, sample) => ({
          gens: [
            [g.pan, pan],
            [g.sampleModes, 1],
            [g.sample, sample],
          ] as TestGenerator[],
        })),
      },
      {
        name: 'Kit',
        zones: [
          {
            gens: [
              [g.keyRange, [36, 36]],
              [g.sample, 2],
            ],
          },
        ],
      },
    ],
    samples: [
      { name: 'Reed L', frames: tone(300, 20), loop: [40, 240], type: 4, link: 1 },
      { name: 'Reed R', frames: tone(300, 15), loop: [40, 240], type: 2, link: 0 },
      { name: 'Drum', frames: tone(100, 20), root: 36 },
    ],
  });

const bytesOf = (folder: string, path: string) => new Uint8Array(readFileSync(join(folder, path)));

describe('from a SoundFont to text', () => {
  it('writes every preset with its samples to a folder', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    const { status, error } = await run(folder, ['convert', 'a.sf2', '--to', 'sfz', '--output', 'out']);
    expect(status).toBe(0);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([
      '000-000 Reed.sfz',
      '128-000 Kit.sfz',
      'Samples',
    ]);
    expect(readdirSync(join(folder, 'out/Samples')).sort()).toEqual(['Drum.wav', 'Reed.wav']);
    expect(readFileSync(join(folder, 'out/000-000 Reed.sfz'), 'utf8')).toMatch(/sample=Samples\/Reed.wav/);
    expect(error).toMatch(
      /a.sf2, 000-000 Reed.sfz:2: assumed: .*The same holds in 2 places of 2 instruments/,
    );
    const facts = await readSampleFacts(readerOf(bytesOf(folder, 'out/Samples/Reed.wav')));
    expect(facts).toMatchObject({
      kind: 'facts',
      facts: { channels: 2, frames: 300, loops: [{ start: 40, end: 239 }], problems: [] },
    });
    const checked = await run(folder, ['check', 'out']);
    expect(checked.out).not.toMatch(/sample-missing|loop-past-end|syntax-error/);
  });

  it('writes one preset to a file, its samples beside it, in instrument XML as well', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    expect(
      (await run(folder, ['convert', 'a.sf2#128:0', '--to', 'xml', '--output', 'kit.instrument.xml'])).status,
    ).toBe(0);
    expect(readdirSync(join(folder, 'kit Samples'))).toEqual(['Drum.wav']);
    expect(readFileSync(join(folder, 'kit.instrument.xml'), 'utf8')).toMatch(
      /sample="kit Samples\/Drum.wav"/,
    );
    const listed = await run(folder, ['regions', 'kit.instrument.xml', '--format', 'json']);
    expect(JSON.parse(listed.out).regions).toMatchObject([
      { sample: 'kit Samples/Drum.wav', lokey: 36, hikey: 36 },
    ]);
  });

  it('asks for a preset where one file is to hold several', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    const { status, error } = await run(folder, ['convert', 'a.sf2', '--to', 'sfz', '--output', 'one.sfz']);
    expect(status).toBe(2);
    expect(error).toBe(
      'zonewright: a.sf2 has 2 presets, but one.sfz is one file; name one preset, a.sf2#bank:preset, or a folder with --output\n',
    );
  });

  it('leaves samples that are there already, and writes over none of other content', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    const args = ['convert', 'a.sf2', '--to', 'sfz', '--output', 'out'];
    await run(folder, args);
    expect((await run(folder, args)).status).toBe(0);
    writeFileSync(join(folder, 'out/Samples/Drum.wav'), 'mine');
    const { status, error } = await run(folder, args);
    expect(status).toBe(2);
    expect(error).toContain('Samples/Drum.wav is there already with other content');
    expect(readFileSync(join(folder, 'out/Samples/Drum.wav'), 'utf8')).toBe('mine');
  });

  it('leads to an existing set where the audio is the same', async () => {
    const folder = folderWith({
      'a.sf2': stereo(),
      'set/left.wav': wav([tone(300, 20), tone(300, 15)]),
      'set/drum.wav': wav([tone(100, 21)]),
    });
    const { status } = await run(folder, [
      'convert',
      'a.sf2',
      '--to',
      'sfz',
      '--output',
      'out',
      '--samples',
      'set',
    ]);
    expect(status).toBe(0);
    expect(readdirSync(join(folder, 'out/Samples'))).toEqual(['Drum.wav']);
    expect(readFileSync(join(folder, 'out/000-000 Reed.sfz'), 'utf8')).toMatch(/sample=..\/set\/left.wav/);
  });

  it('prints text alone where nothing says where to write, and says that the samples stay', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    const { status, out, error } = await run(folder, ['convert', 'a.sf2#0:0', '--to', 'sfz']);
    expect(status).toBe(0);
    expect(out).toMatch(/sample=a.sf2\/Reed.wav/);
    expect(error).toMatch(/the samples stay in a.sf2/);
    expect(readdirSync(folder)).toEqual(['a.sf2']);
  });
});

describe('to a SoundFont', () => {
  const kit = () => ({
    'reed.sfz': '<region> sample=a.wav key=60 polyphony=2',
    'kit.sfz': '<region> sample=a.wav key=36',
    'a.wav': wav([tone(200, 20)]),
  });

  it('writes one instrument or many, where they are told to stand', async () => {
    const folder = folderWith(kit());
    const { status, error } = await run(folder, [
      'convert',
      'reed.sfz',
      'kit.sfz#128:0',
      '--to',
      'sf2',
      '--output',
      'Both.sf2',
    ]);
    expect(status).toBe(0);
    expect(error).toBe('all, reed.sfz:1: dropped: Left out: a SoundFont has no place for "polyphony".\n');
    const bytes = bytesOf(folder, 'Both.sf2');
    expect(brokenRules(bytes)).toEqual([]);
    const { font, presets } = await viewOf(bytes);
    expect(presets.map(({ bank, program, name }) => `${bank}:${program} ${name}`)).toEqual([
      '0:0 reed',
      '128:0 kit',
    ]);
    expect(font.info.get('INAM')).toBe('Both');
    expect(font.samples).toHaveLength(1);
    const listed = await run(folder, ['regions', 'Both.sf2#128:0', '--format', 'json']);
    expect(JSON.parse(listed.out).regions).toMatchObject([
      { sample: 'Both.sf2/a.wav', lokey: 36, hikey: 36 },
    ]);
  });

  it('writes a SoundFont again, with its banks and programs', async () => {
    const folder = folderWith({ 'a.sf2': stereo() });
    const { status } = await run(folder, [
      'convert',
      'a.sf2',
      '--to',
      'sf2',
      '--output',
      'b.sf2',
      '--notes',
      'notes.md',
    ]);
    expect(status).toBe(0);
    expect(readFileSync(join(folder, 'notes.md'), 'utf8')).toMatch(/Carried over exactly: \d+/);
    const [one, other] = await Promise.all(['a.sf2', 'b.sf2'].map((name) => viewOf(bytesOf(folder, name))));
    expect(brokenRules(bytesOf(folder, 'b.sf2'))).toEqual([]);
    const text = (view: typeof one) =>
      view!.presets.map(
        (preset) => view!.text(preset, 'x.sf2', { samplePath: ({ name }) => name, attenuation: 1 }).text,
      );
    // The loop is moved on by eight frames for players; what sounds is the same.
    expect(
      text(other).map((one) => one.replace('loop_start=48 loop_end=247', 'loop_start=40 loop_end=239')),
    ).toEqual(text(one));
  });

  it('says what cannot be written in one line, and leaves nothing', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=gone.wav' });
    const { status, error } = await run(folder, ['convert', 'a.sfz', '--to', 'sf2', '--output', 'a.sf2']);
    expect(status).toBe(2);
    expect(error).toBe(
      'zonewright: "a" has no region that a SoundFont can hold; the first: a region whose sample cannot be read: gone.wav.\n',
    );
    expect(existsSync(join(folder, 'a.sf2'))).toBe(false);
  });

  it('leaves what is there as it is where a sample breaks while it is written', async () => {
    const folder = folderWith({ ...kit(), 'old.sf2': 'old' });
    mkdirSync(join(folder, 'old.sf2.d'));
    const { status } = await run(folder, ['convert', 'reed.sfz', '--to', 'sf2', '--output', 'nowhere/a.sf2']);
    expect(status).toBe(2);
    expect(readFileSync(join(folder, 'old.sf2'), 'utf8')).toBe('old');
    expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
  });

  it('never replaces what it reads', async () => {
    const folder = folderWith({ ...kit(), 'a.sf2': stereo() });
    for (const args of [
      ['a.sf2', '--output', 'a.sf2'],
      ['a.sf2#0:0', '--output', 'a.sf2'],
      ['reed.sfz', '--output', 'a.wav'],
      ['reed.sfz', '--output', 'reed.sfz'],
    ]) {
      const { status, error } = await run(folder, ['convert', '--to', 'sf2', ...args]);
      expect(status).toBe(2);
      expect(error).toMatch(
        /this would replace a file that the command reads; choose another name, or --force/,
      );
    }
    expect(Buffer.compare(bytesOf(folder, 'a.sf2'), stereo())).toBe(0);
  });

  it('says which options have no effect elsewhere', async () => {
    const folder = folderWith(kit());
    const { error } = await run(folder, ['convert', 'reed.sfz', '--to', 'xml', '--bits', '24']);
    expect(error).toContain('--bits is for --to sf2, so it has no effect');
    const several = await run(folder, ['convert', 'reed.sfz', 'kit.sfz', '--to', 'xml']);
    expect(several.error).toBe('zonewright: convert takes one file, or several with --to sf2\n');
  });
});
