import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { notesOf, regions, table } from './tableRegions';

describe('dynamics without velocities', () => {
  const ranges = (text: string) =>
    regions(text).map(({ sample, lovel, hivel }) => `${sample} ${lovel ?? 1}-${hivel ?? 127}`);

  it('share the velocities of a note-on, which MIDI 1.0 counts from 1 to 127', () => {
    const text = table('File | Dynamic | Key', 'a.wav | p | 60', 'b.wav | ff | 60', 'c.wav | mf | 60');
    expect(ranges(text)).toEqual(['a.wav 1-42', 'b.wav 85-127', 'c.wav 43-84']);
  });

  it('may be words under a heading of velocities', () => {
    const text = table('File | Velocity | Key', 'a.wav | Soft | 60', 'b.wav | Loud | 60');
    expect(ranges(text)).toEqual(['a.wav 1-63', 'b.wav 64-127']);
  });

  it('leave no velocity without a zone where a key lacks one of them', () => {
    const text = table(
      'File | Dynamics | Low | High',
      'a.wav | p | 60 | 63',
      'b.wav | mf | 60 | 61',
      'c.wav | f | 60 | 63',
      'd.wav | mf | 70 | 71',
    );
    expect(ranges(text)).toEqual(['a.wav 1-42', 'b.wav 43-84', 'c.wav 85-127', 'd.wav 1-127']);
  });

  it('are shared out apart where keys have others than those beside them', () => {
    const text = table(
      'File | Dynamics | Low | High',
      'a.wav | p | 40 | 44',
      'b.wav | mf | 40 | 44',
      'c.wav | f | 40 | 44',
      'd.wav | mp | 45 | 50',
      'e.wav | ff | 45 | 50',
    );
    expect(ranges(text)).toEqual(['a.wav 1-42', 'b.wav 43-84', 'c.wav 85-127', 'd.wav 1-63', 'e.wav 64-127']);
    expect(notesOf(text).join()).toMatch(/among p, mf, f, and on other keys among mp, ff\./);
  });

  it('are told apart within the groups that hold several of them', () => {
    const text = table(
      'File | Articulation | Dynamics | Key',
      'a.wav | Long | p | 60',
      'b.wav | Long | f | 60',
      'c.wav | Short | p | 60',
    );
    expect(ranges(text)).toEqual(['a.wav 1-63', 'b.wav 64-127', 'c.wav 1-127']);
  });

  it('do not count beside velocities, and one that is none is noted', () => {
    const beside = table(
      'File | Dynamics | Low vel | High vel',
      'a.wav | p | 1 | 90',
      'b.wav | f | 91 | 127',
    );
    expect(ranges(beside)).toEqual(['a.wav 1-90', 'b.wav 91-127']);
    expect(notesOf(beside).join()).toMatch(/"Dynamics" is not used/);
    const rows = Array.from({ length: 10 }, (_, at) => `${at}.wav | ${at % 2 ? 'p' : 'f'} | 60`);
    const odd = table('File | Dynamics | Key', ...rows, 'x.wav | tutti | 60');
    expect(notesOf(odd).join()).toMatch(/"tutti" names no dynamics/);
  });
});

describe('columns of samples side by side', () => {
  it('note once what several zones of a row share', () => {
    const text = table('Key | Pan | RR1 | RR2', '60 | wide | a.wav | b.wav', '61 | 0 | c.wav | d.wav');
    expect(notesOf(text).filter((note) => note.includes('"wide"'))).toHaveLength(1);
  });

  it('take what stands in a cell for a sample but is none for a mistake to be noted', () => {
    const text = table(
      'Key | Close | Room',
      '60 | a.wav | later',
      '61 | b.wav | -',
      '62 | c.wav | d.wav',
      '63 | e.wav | f.wav',
    );
    expect(regions(text).map(({ sample, group }) => `${group} ${sample}`)).toEqual([
      'Close a.wav',
      'Close b.wav',
      'Close c.wav',
      'Close e.wav',
      'Room d.wav',
      'Room f.wav',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/"later" names no sample file/);
  });

  it('keep the groups of a column of their own', () => {
    const text = table('Key | Group | Close | Room', '60 | One | a.wav | b.wav', '61 | Two | c.wav | d.wav');
    expect(regions(text).map(({ group, sample }) => `${group} ${sample}`)).toEqual([
      'One a.wav',
      'One b.wav',
      'Two c.wav',
      'Two d.wav',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/"Close" and column "Room"\. They sound together/);
  });

  it('are not zones where one names what a file was called before', () => {
    const text = table('Key | Sample | Old file', '60 | a.wav | b.wav', '61 | c.wav | d.wav');
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join('\n')).toMatch(/"Old file" is not used.*one zone/);
  });

  it('are panned to their sides', () => {
    const text = table('Root | Low | High | Left | Right', '60 | 58 | 62 | a l.wav | a r.wav');
    expect(regions(text).map(({ sample, pan }) => `${sample} ${pan}`)).toEqual([
      'a l.wav -100',
      'a r.wav 100',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/panned to their sides/);
  });

  it('sound on release where their heading says so', () => {
    const text = table('Key | Sample | Release sample', '60 | a.wav | b.wav');
    expect(regions(text).map(({ sample, trigger }) => `${sample} ${trigger}`)).toEqual([
      'a.wav undefined',
      'b.wav release',
    ]);
  });
});

describe('records', () => {
  it('are not seen in letters, settings and source text', () => {
    for (const text of [
      'From: one\nTo: two\nSubject: samples of a file\nDate: today\n\nHello there.',
      'name: thing\nversion: 2\nfile: x.txt\n',
      'key: 60\nroot: 61\n',
    ]) {
      expect(regions(text)).toEqual([]);
    }
  });

  it('may be parted by names of groups', () => {
    const text =
      'Soft\n\nSample: a.wav\nKey: 60\n\nSample: b.wav\nKey: 61\n\nLoud\n\nSample: c.wav\nKey: 60\n';
    expect(regions(text)).toEqual([
      { group: 'Soft', sample: 'a.wav', key: '60', hivel: '63' },
      { group: 'Soft', sample: 'b.wav', key: '61' },
      { group: 'Loud', sample: 'c.wav', key: '60', lovel: '64' },
    ]);
  });

  it('take labels in any order, and some that are missing or not known', () => {
    const text = 'File: a.wav\nKey: 60\nHue: red\n\nFile: b.wav\nPan: L20\nKey: 61\n';
    expect(regions(text)).toEqual([
      { sample: 'a.wav', key: '60' },
      { sample: 'b.wav', key: '61', pan: '-20' },
    ]);
    expect(notesOf(text).join()).toMatch(/"Hue" is not used/);
  });
});

describe('words in other languages', () => {
  it.each([
    ['Dynamika', 'cicho', 'średnio', 'głośno'],
    ['Velocity', 'svagt', 'mellan', 'starkt'],
    ['打鍵', '弱', '中', '強'],
    ['Сила', 'тихо', 'средне', 'громко'],
  ])('are layers below %s', (heading, soft, medium, loud) => {
    const text = table(
      `File | Key | ${heading}`,
      `a.wav | 60 | ${soft}`,
      `b.wav | 60 | ${medium}`,
      `c.wav | 60 | ${loud}`,
    );
    expect(regions(text).map(({ lovel, hivel }) => `${lovel} ${hivel}`)).toEqual([
      'undefined 42',
      '43 84',
      '85 undefined',
    ]);
  });

  it.each([
    ['quando toca', 'ao premir a tecla', 'ao soltar a tecla'],
    ['wann', 'beim Drücken der Taste', 'beim Loslassen der Taste'],
    ['kiedy', 'przy naciśnięciu klawisza', 'po puszczeniu klawisza'],
    ['いつ', '鍵を押した時', '鍵を離した時'],
  ])('say that a zone plays as the key is let go, below "%s"', (heading, press, release) => {
    const text = table(`File | Key | ${heading}`, `a.wav | 60 | ${press}`, `b.wav | 60 | ${release}`);
    expect(regions(text).map(({ trigger }) => trigger)).toEqual([undefined, 'release']);
  });
});

describe('columns of samples of which the text says that they play in turn', () => {
  const rows = table(
    'Name | Key | Hit A | Hit B',
    'Skin | 41 | a1.wav | a2.wav',
    'Rim | 43 | b1.wav | b2.wav',
  );
  const turns = (text: string) => regions(text).map((one) => one.seq_position);

  it.each([
    'i colpi si alternano a ogni nota',
    'die Schläge im Wechsel',
    'The hits take turns',
    '交互に鳴る',
  ])('%s', (said) => {
    expect(turns(`${said}\n\n${rows}`)).toEqual(['1', '2', '1', '2']);
  });

  it('sound together without such a text, or where it says no', () => {
    expect(turns(rows)).toEqual([undefined, undefined, undefined, undefined]);
    expect(turns(`The hits do not take turns\n\n${rows}`)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('velocities in percent that meet', () => {
  it('begin at 0, not at a 0 below it', () => {
    const text = table(
      'File | Velocity | Key',
      'a.wav | 0–50 % | 60',
      'b.wav | 50–100 % | 60',
      'c.wav | 0–100 % | 70',
    );
    const { instrument } = readZoneTable(text);
    const lowest = [...instrument.regions].map((region) => instrument.lowVelocity[region]);
    expect(lowest[0]).toBe(0);
    const numbers = Array.from({ length: instrument.parameters.count }, (_, at) => instrument.number(at));
    expect(numbers.filter((number) => Object.is(number, -0))).toEqual([]);
  });
});
