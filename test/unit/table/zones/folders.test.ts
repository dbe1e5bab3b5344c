import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const samplesOf = (text: string) => regions(text).map(({ sample }) => sample);
const told = 'put before the sample';

describe('a folder beside or above samples', () => {
  it.each([
    'folder: pluck/',
    'dir: pluck',
    'path: pluck',
    'verzeichnis: pluck',
    'carpeta: pluck',
    'dossier: pluck',
  ])('is heard among the defaults of YAML: %s', (line) => {
    const text = `defaults:\n  ${line}\nzones:\n  - file: harp_1.wav\n    low: 40\n    high: 44\n    root: 42\n  - file: harp_2.wav\n    low: 45\n    high: 50\n    root: 47\n`;
    expect(samplesOf(text)).toEqual(['pluck/harp_1.wav', 'pluck/harp_2.wav']);
    expect(notesOf(text).join('\n')).toContain(told);
  });

  it('is heard among the defaults of JSON and INI', () => {
    const json =
      '{"defaults": {"folder": "pluck/soft", "volume": -2}, "zones": [{"file": "h1.wav", "lo": 40, "hi": 44}, {"file": "h2.wav", "lo": 45, "hi": 50}]}';
    expect(samplesOf(json)).toEqual(['pluck/soft/h1.wav', 'pluck/soft/h2.wav']);
    const ini =
      '[defaults]\nfolder = pluck/\nvelocity = 1-90\n[z1]\nfile = h1.wav\nlow = 40\nhigh = 44\n[z2]\nfile = h2.wav\nlow = 45\nhigh = 50\n';
    expect(samplesOf(ini)).toEqual(['pluck/h1.wav', 'pluck/h2.wav']);
  });

  it('is heard in a column, row by row, and leaves names with one alone', () => {
    const text = table(
      'Folder | File | Key',
      'skins\\ | a.wav | 50',
      'metal | b.wav | 51',
      'metal | other/c.wav | 52',
      '- | d.wav | 53',
    );
    expect(samplesOf(text)).toEqual(['skins/a.wav', 'metal/b.wav', 'other/c.wav', 'd.wav']);
    expect(notesOf(text).join('\n')).toContain(
      'The folders in column "Folder" are put before the sample names',
    );
  });

  it('is heard on a line of its own above the table', () => {
    expect(samplesOf(`Ordner: Harfe leise\n${table('Datei | Taste', 'a.wav | 50', 'b.wav | 51')}`)).toEqual([
      'Harfe leise/a.wav',
      'Harfe leise/b.wav',
    ]);
  });

  it('is not where samples were recorded, and no remark', () => {
    const text = table('Location | File | Key', 'hall | a.wav | 50', 'booth | b.wav | 51');
    expect(samplesOf(text)).toEqual(['a.wav', 'b.wav']);
    expect(
      samplesOf(`Folder: ask Jo, she has the disk\n${table('File | Key', 'a.wav | 50', 'b.wav | 51')}`),
    ).toEqual(['a.wav', 'b.wav']);
  });

  it.each([
    '[instrument]\nname=Psaltery\npath=psalt',
    '[general]\n\nname = "Psaltery"\ndir = "psalt/"',
    '[Settings]\n\nOrdner = psalt',
    '[info]\nlocation=psalt/\nname=Psaltery',
  ])('is heard in the first section of INI: %s', (head) => {
    const zones = `[zone1]\nsample=p_40.wav\nlow=36\nhigh=42\nroot=40\n\n[zone2]\nsample=p_47.wav\nlow=43\nhigh=49\nroot=47\n`;
    const text = `${head}\n\n${zones}`;
    expect(regions(text)).toMatchObject([
      { sample: 'psalt/p_40.wav', lokey: '36', hikey: '42' },
      { sample: 'psalt/p_47.wav', lokey: '43', hikey: '49' },
    ]);
    expect(notesOf(text).join('\n')).toContain(told);
  });

  it('is heard in sections over others, each for the zones below', () => {
    const zone = (name: string, file: string, low: number) =>
      `[${name}]\nfile=${file}\nlow=${low}\nhigh=${low + 4}\nroot=${low}\n`;
    const text = `[bowed]\npath=bow\n${zone('b1', 'b.wav', 40)}${zone('b2', 'c.wav', 45)}[plucked]\npath=pluck\n${zone('p1', 'd.wav', 60)}${zone('p2', 'e.wav', 65)}`;
    expect(samplesOf(text)).toEqual(['bow/b.wav', 'bow/c.wav', 'pluck/d.wav', 'pluck/e.wav']);
  });
});

describe('a folder that a sentence names', () => {
  it.each([
    ['The samples are in the folder "Low Reeds".', 'Low Reeds/'],
    ['Os arquivos estão na pasta "Palhetas".', 'Palhetas/'],
    ['Alle Dateien liegen im Ordner "Zungen".', 'Zungen/'],
    ['Les fichiers sont dans le dossier « Anches ».', 'Anches/'],
    ['Los archivos están en la carpeta Cañas/', 'Cañas/'],
    ['The files are not in the folder "Low Reeds".', ''],
  ])('goes before the samples: %s', (text, folder) => {
    const table = `${text}\n\nfile\tlow\thigh\troot\nr1.wav\t40\t45\t42\nr2.wav\t46\t50\t48\n`;
    expect(regions(table).map(({ sample }) => sample)).toEqual([`${folder}r1.wav`, `${folder}r2.wav`]);
  });

  it('in a column goes before names without endings, too', () => {
    const table = 'All samples are .flac\n\nFolder\tSample\tLow\tHigh\nHeld\tr1\t40\t45\nNoise\tr2\t40\t45\n';
    expect(regions(table).map(({ sample }) => sample)).toEqual(['Held/r1.flac', 'Noise/r2.flac']);
  });
});

describe('what is said of all of them', () => {
  it('is written for all zones', () => {
    const table = 'Please set all of them to -5 dB.\n\nfile\tlow\thigh\nr1.wav\t40\t45\nr2.wav\t46\t50\n';
    expect(regions(table).map(({ volume }) => volume)).toEqual(['-5', '-5']);
  });
});

describe('shortened velocities between from and to', () => {
  it.each([['veloc. de', 'veloc. a']])('are both ends: %s, %s', (from, to) => {
    const table = `arquivo\ttecla de\ttecla a\t${from}\t${to}\nr1.wav\t40\t45\t1\t70\nr2.wav\t40\t45\t71\t127\n`;
    expect(regions(table).map(({ lovel = '1', hivel = '127' }) => `${lovel}-${hivel}`)).toEqual([
      '1-70',
      '71-127',
    ]);
  });
});
