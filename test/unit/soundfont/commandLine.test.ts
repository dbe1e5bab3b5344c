import { describe, expect, it } from 'vitest';
import { Generator as g } from '../../../server/soundfont/generators';
import { folderWith, run } from '../commandLine/runInFolder';
import { fontBytes, simpleFont, tone } from './fontBytes';

const twoPresets = () =>
  fontBytes({
    presets: [
      { name: 'Reed', zones: [{ gens: [[g.instrument, 0]] }] },
      { name: 'Kit', bank: 128, program: 3, zones: [{ gens: [[g.instrument, 1]] }] },
    ],
    instruments: [
      {
        name: 'Reed',
        zones: [
          {
            gens: [
              [g.sampleModes, 1],
              [g.sample, 0],
            ],
          },
        ],
      },
      {
        name: 'Kit',
        zones: [
          {
            gens: [
              [g.keyRange, [36, 36]],
              [g.attenuation, 100],
              [g.sample, 1],
            ],
          },
        ],
      },
    ],
    samples: [
      // Two seconds of 440 Hz: key 69 by name, key 60 by what the header says.
      { name: 'Reed A4', frames: tone(44100, 44100 / 440), loop: [4410, 39690] },
      { name: 'Drum', frames: tone(400, 20), root: 36 },
    ],
  });

describe('commands on a SoundFont', () => {
  it('regions: lists those of the preset that is named', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets() });
    const { status, out, error } = await run(folder, ['regions', 'two.sf2#128:3', '--format', 'json']);
    expect(status).toBe(0);
    expect(error).toBe('');
    const { format, regions, notes } = JSON.parse(out);
    expect(format).toBe('sfz');
    expect(regions).toHaveLength(1);
    expect(regions[0]).toMatchObject({
      sample: 'two.sf2/Drum.wav',
      lokey: 36,
      hikey: 36,
      volume: -10,
      label: 'Kit',
    });
    expect(notes).toMatchObject([{ kind: 'assumed', line: 2 }]);
  });

  it('regions: takes the first of several, and says which there are', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets() });
    const { status, out, error } = await run(folder, ['regions', 'two.sf2']);
    expect(status).toBe(0);
    expect(out).toContain('two.sf2/Reed A4.wav');
    expect(error).toContain(
      'two.sf2 has 2 presets; this is 0:0 Reed; name another as two.sf2#bank:preset: 0:0 Reed, 128:3 Kit',
    );
  });

  it('regions: takes 0.4 of the attenuation where it is told to', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets() });
    const { out } = await run(folder, [
      'regions',
      'two.sf2#128:3',
      '--format',
      'json',
      '--attenuation',
      '0.4',
    ]);
    expect(JSON.parse(out).regions[0].volume).toBe(-4);
  });

  it('check: finds what is odd in the file itself, once for all presets, as severe as one says', async () => {
    const whole = twoPresets();
    const cut = whole.slice(0, whole.length - 50);
    const settings = '{ "severity": { "font-structure": "error" } }';
    const folder = folderWith({ 'cut.sf2': cut, 'end.sf2': whole.slice(0, whole.length - 20) });
    const found = await run(folder, ['check', 'cut.sf2', 'end.sf2', '--format', 'json']);
    const { files } = JSON.parse(found.out) as {
      files: { path: string; findings: { code: string; severity: string; message: string }[] }[];
    };
    const odd = files.flatMap(({ path, findings }) =>
      findings.filter(({ code }) => code === 'font-structure').map((one) => ({ path, ...one })),
    );
    expect(odd).toMatchObject([
      { path: 'cut.sf2', severity: 'warning', message: expect.stringMatching(/of 2 samples, 1 is listed/) },
      { path: 'end.sf2', severity: 'warning', message: expect.stringMatching(/after its last sample/) },
    ]);
    const severe = folderWith({ 'cut.sf2': cut, 'zonewright.json': settings });
    expect((await run(severe, ['check', 'cut.sf2'])).status).toBe(1);
    const sound = folderWith({ 'two.sf2': whole });
    expect((await run(sound, ['check', 'two.sf2'])).out).not.toContain('font-structure');
  });

  it('tell a preset that is not there from those that are', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets() });
    for (const command of ['regions', 'check', 'report']) {
      const { status, error } = await run(folder, [command, 'two.sf2#0:7']);
      expect(status).toBe(2);
      expect(error).toBe('zonewright: two.sf2: there is no preset 0:7; there are 0:0 Reed, 128:3 Kit\n');
    }
  });

  it('take a file whose name looks like a preset as it is', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets(), 'two.sf2#0:0': '<region> sample=a.wav' });
    const { out } = await run(folder, ['regions', 'two.sf2#0:0']);
    expect(out).toContain('a.wav');
  });

  it('say in one line why a font cannot be read, and know one by its bytes', async () => {
    const folder = folderWith({ 'cut.bin': twoPresets().slice(0, 5000) });
    for (const command of ['regions', 'check', 'report']) {
      const { status, error } = await run(folder, [command, 'cut.bin']);
      expect(status).toBe(2);
      expect(error).toMatch(
        /^zonewright: cut.bin: This SoundFont cannot be read: the file is cut short.*\n$/,
      );
    }
  });

  it('check: looks at every preset, measures its samples, and finds fonts in folders', async () => {
    const folder = folderWith({ 'fonts/two.sf2': twoPresets(), 'fonts/broken.sf2': 'RIFF1234sfbk' });
    const { status, out } = await run(folder, ['check', 'fonts', '--format', 'json']);
    expect(status).toBe(1);
    const { files } = JSON.parse(out) as {
      files: { path: string; findings: { code: string; message: string }[] }[];
    };
    expect(files.map(({ path }) => path)).toEqual([
      'fonts/broken.sf2',
      'fonts/two.sf2#0:0',
      'fonts/two.sf2#128:3',
    ]);
    expect(files[0]!.findings).toMatchObject([{ code: 'syntax-error' }]);
    expect(files[1]!.findings).toMatchObject([{ code: 'root-mismatch' }]);
    expect(files[1]!.findings[0]!.message).toMatch(/^"Reed A4.wav" sounds at key 69/);
  });

  it('map and report: draw and list one preset', async () => {
    const folder = folderWith({ 'one.sf2': simpleFont([[g.keyRange, [48, 72]]]) });
    expect(await run(folder, ['map', 'one.sf2', '--output', 'map.svg'])).toMatchObject({
      status: 0,
      error: '',
    });
    const { status, out } = await run(folder, ['report', 'one.sf2', '--format', 'csv']);
    expect(status).toBe(0);
    expect(out).toContain('Reed C4.wav');
  });

  it('sample: describes every sample in a font', async () => {
    const folder = folderWith({ 'two.sf2': twoPresets() });
    const { status, out } = await run(folder, ['sample', 'two.sf2', '--format', 'json', '--pitch']);
    expect(status).toBe(0);
    const samples = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(samples).toMatchObject([
      {
        path: 'two.sf2/Reed A4.wav',
        frames: 44100,
        loops: [{ start: 4410, end: 39689 }],
        pitch: { key: 69 },
      },
      { path: 'two.sf2/Drum.wav', rootKey: 36 },
    ]);
  });
});
