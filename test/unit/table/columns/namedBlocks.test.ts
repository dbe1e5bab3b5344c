import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const groups = (text: string) => regions(text).map(({ group }) => group);
const block = (heading: string, ...names: string[]) =>
  table(
    `${heading} | File | Low | High | Root`,
    ...names.map((name, at) => `${name} | p${at}.wav | ${30 + 5 * at} | ${34 + 5 * at} | ${32 + 5 * at}`),
  );

describe('a column whose heading is not known, before that of the samples', () => {
  it.each(['Rank', 'Stemband', 'Voice', 'Krabb'])('names the blocks of rows: %s', (heading) => {
    const text = block(heading, 'Flute', 'Flute', 'Reed', 'Reed', 'Reed');
    expect(groups(text)).toEqual(['Flute', 'Flute', 'Reed', 'Reed', 'Reed']);
    expect(notesOf(text)).toContainEqual(
      expect.stringMatching(/^assumed: .*is the group\..*rows of each stand together/),
    );
  });

  it.each([
    ['in another order', ['Flute', 'Reed', 'Flute', 'Reed']],
    ['that differ row by row', ['Flute', 'Reed', 'Horn', 'Oboe']],
    ['that are all the same', ['Flute', 'Flute', 'Flute', 'Flute']],
    ['that are missing somewhere', ['Flute', 'Flute', '', 'Reed']],
    ['that say yes and no', ['yes', 'yes', 'no', 'no']],
  ])('but no names %s', (_, names) => {
    expect(groups(block('Krabb', ...names))).toEqual(names.map(() => undefined));
  });

  it('names none where its heading says something else', () => {
    expect(groups(block('Loop', 'near', 'near', 'far', 'far'))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('names none where roots alone share the keys out', () => {
    const text = table(
      'Krabb | File | Root',
      'A. N. | a.wav | 40',
      'A. N. | b.wav | 50',
      'B. O. | c.wav | 60',
      'B. O. | d.wav | 70',
    );
    expect(groups(text)).toEqual([undefined, undefined, undefined, undefined]);
  });
});

describe('a remark below or above the rows', () => {
  const rows = [
    'Krabb;File;Grave;Aiguë;Base',
    'Pan;a.wav;36;43;40',
    'Pan;b.wav;44;50;47',
    'Tam;c.wav;51;60;55',
  ];

  it.each(['Made in Oslo; 3 files; 48 kHz', '*Made in Oslo; 3 files; 48 kHz*', 'Klangprobe; 24 Bit; 2019'])(
    'says nothing of its columns: %s',
    (remark) => {
      const text = [...rows, '', remark].join('\n');
      expect(regions(text).map(({ lokey, hikey }) => `${lokey}-${hikey}`)).toEqual([
        '36-43',
        '44-50',
        '51-60',
      ]);
      expect(notesOf(text).filter((note) => /is no zone/.test(note))).toHaveLength(1);
    },
  );

  it('is no example of what stands in them', () => {
    const text = [
      '|Odd|File|Key|',
      '|-|-|-|',
      '|ab ba|a.wav|36|',
      '|cd dc|b.wav|37|',
      '',
      '*Two files, 48 kHz.*',
    ].join('\n');
    const [note = ''] = notesOf(text).filter((one) => /column "Odd"/.test(one));
    expect(note).toContain('("ab ba", "cd dc")');
  });
});

describe('marks of bold text around cells', () => {
  it.each([';', '\t', ','])('are no part of them where %j parts the cells', (sign) => {
    const text = ['Group|File|Low|High', '**Pan**|**a.wav**|36|**43**', '***Pan***|b.wav|44|50']
      .join('\n')
      .replaceAll('|', sign);
    expect(regions(text)).toEqual([
      { group: 'Pan', sample: 'a.wav', lokey: '36', hikey: '43' },
      { group: 'Pan', sample: 'b.wav', lokey: '44', hikey: '50' },
    ]);
  });

  it('stay inside names', () => {
    const text = table('Group | File | Key', 'a**b** | a.wav | 36', '**ab | b.wav | 37');
    expect(groups(text)).toEqual(['a**b**', '**ab']);
  });
});
