import { describe, expect, it } from 'vitest';
import { readSfz } from '../../../server/sfz/read';
import { writeSfz } from '../../../server/sfz/write';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { readXml } from '../../../server/xml/read';
import { writeXml } from '../../../server/xml/write';
import { regions } from './tableRegions';

const refused = (text: string) => {
  const { problem, instrument, notes, suggestions } = readZoneTable(text);
  expect(instrument.regions).toHaveLength(0);
  expect([notes, suggestions]).toEqual([[], []]);
  expect(looksLikeZoneTable(text)).toBe(false);
  return problem;
};

describe('what is no text', () => {
  // The first bytes of a PNG image (ISO/IEC 15948, 5.2 and 11.2.2), as a clipboard gives them when taken for text.
  const png = '\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x10\0\0\0\x10\b\x06\0\0\0';

  it.each([png, '\ufffdPNG\r\n\u001a\n\ufffd\u0001\ufffd,\ufffd', 'RIFF\u0010\0\0\0WAVEfmt '])(
    '%j',
    (text) => {
      expect(refused(text)).toMatch(/binary data/);
    },
  );
});

describe('tables that are none', () => {
  it.each([
    ['60', /no zone table/],
    ['Sample\tLow\tHigh', /headings only/],
    ['<table><tr><th>Sample</th><th>Low</th></tr></table>', /headings only/],
    ['<table><tr><td>one cell</td></tr></table>', /sample names/],
    ['<table><tr><td', /no zone table|sample names/],
  ])('%j', (text, problem) => {
    expect(refused(text)).toMatch(problem);
  });
});

describe('large and odd text', () => {
  it('takes 20 MB of lines, of one line and of nothing but delimiters', () => {
    const line = 'some words that are no table at all and go on for a while\n';
    expect(readZoneTable(line.repeat(Math.ceil(20e6 / line.length))).problem).toBeDefined();
    expect(readZoneTable('a'.repeat(20e6)).problem).toBeDefined();
    expect(readZoneTable(`${'\t'.repeat(2e6)}\n`).problem).toBeDefined();
  });

  // Work that grows with the square of the length would not end within the time limit of these tests.
  const long = (piece: string, before = '') => before + piece.repeat(Math.ceil(4e5 / piece.length));
  it.each([
    ['quotation marks', long('"')],
    ['quotation marks that open', long('"a\t')],
    ['bars', long('|')],
    ['escaped bars', long('\\|', '|a|b|\n|---|---|\n')],
    ['words in columns', long('a  ')],
    ['commas', long(',')],
    ['equals signs', long('a=')],
    ['colons', long('a: ')],
    [
      'labels with much space',
      long(`Sa${' '.repeat(3000)}x\n`, 'Sample: a.wav\nRoot: 60\n\nSample: b.wav\nRoot: 61\n'),
    ],
    [
      'values with much space',
      long(`file=a${' '.repeat(3900)}b root=60\n`, 'file=a.wav root=60\n'.repeat(100)),
    ],
    [
      'records with ever new labels',
      `${'Sample: a.wav\nRoot: 60\n\n'.repeat(100)}${Array.from({ length: 8000 }, (_, at) => `Sample: b.wav\nL${at}x: 1\n`).join('')}`,
    ],
    [
      'a thousand columns of words',
      long(`${Array.from({ length: 1000 }, (_, at) => `x${at}`).join('\t')}\n`),
    ],
    ['formulas', long('=HYPERLINK("x")\t=1+1\n', 'Sample\tRoot\n')],
    ['wide characters', long('é.wav\t６０\t½\n')],
    ['tags', long('<td>a.wav</td><tr>', '<table>')],
  ])('takes 400,000 characters of %s', (_, text) => {
    looksLikeZoneTable(text);
    const { instrument, notes } = readZoneTable(text);
    expect(notes.length).toBeLessThan(2000);
    expect(instrument.parameters.count).toBeLessThan(text.length);
  });

  it('takes more blank lines than a set can hold', () => {
    expect(readZoneTable(`a,b\n${'\n'.repeat(17e6)}`).problem).toBeDefined();
  });

  it('takes a thousand columns', () => {
    const headings = Array.from({ length: 1000 }, (_, at) =>
      at === 500 ? 'Sample' : at === 501 ? 'Root' : `P${at}x`,
    );
    const row = (file: string, root: number) =>
      headings.map((_, at) => (at === 500 ? file : at === 501 ? root : at)).join('\t');
    const text = [headings.join('\t'), row('a.wav', 60), row('b.wav', 61)].join('\n');
    expect(regions(text)).toEqual([
      { sample: 'a.wav', pitch_keycenter: '60' },
      { sample: 'b.wav', pitch_keycenter: '61' },
    ]);
  });

  it('spreads cells over no more than a bounded number of rows and columns', () => {
    const cell = '<td rowspan="999999" colspan="999999">x</td>';
    const text = `<table><tr>${cell.repeat(2000)}</tr>${'<tr></tr>'.repeat(2000)}</table>`;
    expect(readZoneTable(text).problem).toBeDefined();
  });

  it('stays linear on tags and comments that nothing closes', () => {
    // Quadratic work on these would not end within the time limit of the test.
    for (const piece of ['<td ', '<!-- ', '<td><script>', '<td a="', '<table>', '<td>&#', '</td']) {
      readZoneTable(`<table><tr><td>a.wav</td><td>60</td></tr>${piece.repeat(100_000)}`);
    }
  });

  it('tells words that are no headings apart without looking them up again and again', () => {
    // Slow look-ups on every row would not end within the time limit of the test.
    const word = (at: number) => `w${at}`.replace(/\d/g, (digit) => String.fromCharCode(97 + Number(digit)));
    const rows = (count: number, row: (at: number) => string) =>
      Array.from({ length: count }, (_, at) => row(at)).join('\n');
    const text = rows(5000, (at) => [1, 2, 3, 4].map((times) => word(at * times)).join('\t'));
    expect(readZoneTable(`Sample\tRoot\tLow\tHigh\n${text}`).problem).toMatch(/no keys/);
    const headings = rows(5000, (at) => (at % 2 ? 'a.wav\t60\t58\t62' : `Sample\tRoot\tLow\t${word(at)}`));
    expect(readZoneTable(headings).notes.length).toBeLessThan(2000);
  });

  it('turns control characters into spaces', () => {
    expect(regions('Sample\tRoot\na\u0007b\u001b.wav\t60\nc.wav\t61')[0]).toMatchObject({
      sample: 'a b .wav',
    });
  });
});

describe('text that would act', () => {
  it.each([
    '<region> key=1.wav',
    'a<group>.wav',
    '$x.wav',
    '#include "b.sfz" c.wav',
    'a // b.wav',
    '/* a */ b.wav',
    'a.wav key=1.wav',
    '"/><region sample="b.wav',
    ']]>&lt;.wav',
  ])('stays a name when written: %s', (name) => {
    const { instrument } = readZoneTable(`Sample\tRoot\n"${name.replaceAll('"', '""')}"\t60\nb.wav\t61`);
    expect(instrument.samplePath(instrument.regions[0])).toBe(name);
    const sfz = writeSfz(instrument);
    const back = readSfz(sfz.text, { path: 'a.sfz' });
    expect(back.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(back.regions).toHaveLength(2);
    // What SFZ text cannot hold is left out with a note, never written so that it means something else.
    const kept = back.samplePath(back.regions[0]);
    expect(kept ?? sfz.notes.map(({ kind }) => kind).join()).toBe(kept === undefined ? 'dropped' : name);
    expect(back.lowKey[back.regions[0]]).toBe(0);
    const xml = readXml(writeXml(instrument).text, { path: 'a.xml' });
    expect(xml.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect([xml.regions.length, xml.samplePath(xml.regions[0]), xml.lowKey[xml.regions[0]]]).toEqual([
      2,
      name,
      0,
    ]);
  });

  it('keeps formulas out and markup as text', () => {
    const text = '<table><tr><th>Sample</th><th>Group</th><th>Root</th></tr>'
      .concat('<tr><td><img src=x onerror=alert(1)>a.wav</td><td>&lt;region&gt; key=1</td><td>60</td></tr>')
      .concat('<tr><td>=HYPERLINK("http://example.org","b.wav")</td><td></td><td>61</td></tr></table>');
    expect(regions(text)).toEqual([{ sample: 'a.wav', group: '<region> key=1', pitch_keycenter: '60' }]);
    expect(
      readZoneTable(text)
        .notes.map(({ message }) => message)
        .join(),
    ).toMatch(/formula/);
  });
});
