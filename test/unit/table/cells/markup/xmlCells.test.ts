import { describe, expect, it } from 'vitest';
import { xmlCells } from '../../../../../server/table/cells/markup/xmlCells';
import { looksLikeZoneTable } from '../../../../../server/table/looksLikeZoneTable';
import { xmlTable } from '../../../../../server/xml/tableInXml';
import { regions } from '../../tableRegions';

/** Rows as XML: cells of a row parted by `|`, attributes of a cell before `:`. */
function sheet(cell: string, ...rows: string[]): string {
  const written = rows.map((row) => {
    const cells = row.split('|').map((one) => {
      const [, attributes = '', text = ''] = /^(?:(\w+="[^"]*"):)?(.*)$/.exec(one.trim()) ?? [];
      return `<${cell}${attributes && ` ${attributes}`}>${text}</${cell}>`;
    });
    return `<line>${cells.join('')}</line>`;
  });
  return `<?xml version="1.0"?>\n<page>\n${written.join('\n')}\n</page>`;
}

function valuesOf(text: string): string[][] {
  const cells = xmlCells(text);
  if (!cells) return [];
  return Array.from({ length: cells.rowCount }, (_, row) =>
    Array.from({ length: cells.width(row) }, (__, column) => cells.value(cells.cell(row, column))),
  );
}

describe('rows of cells in XML', () => {
  it.each([
    ['the number of rows, whatever it is called', 'lignes="2":doux', 'lignes="1":fort'],
    ['the number of further rows', 'down="1":doux', 'down="0":fort'],
  ])('a cell reaches down by %s', (_, soft, loud) => {
    const text = sheet(
      'case',
      'Layer|File|Low|High',
      `${soft}|a.wav|40|47`,
      'b.wav|48|55',
      `${loud}|c.wav|56|60`,
    );
    expect(valuesOf(text).slice(1)).toEqual([
      ['doux', 'a.wav', '40', '47'],
      ['doux', 'b.wav', '48', '55'],
      ['fort', 'c.wav', '56', '60'],
    ]);
  });

  it('a cell reaches over columns, which are empty but for the first', () => {
    const text = sheet('k', 'bred="2":Keys|File|Root', '40|47|a.wav|44', '48|55|b.wav|52');
    expect(valuesOf(text)[0]).toEqual(['Keys', '', 'File', 'Root']);
  });

  it.each([
    ['letters', 'A', 'B', 'C', 'D'],
    ['numbers from 1', '1', '2', '3', '4'],
    ['numbers from 0', '0', '1', '2', '3'],
  ])('cells that are left out leave their place empty where %s say the column', (_, a, b, c, d) => {
    const text = sheet(
      'f',
      `p="${a}":File|p="${b}":Key|p="${c}":Tune ct|p="${d}":Volume dB`,
      `p="${a}":a.wav|p="${b}":40|p="${d}":-6`,
      `p="${a}":b.wav|p="${b}":41|p="${c}":12`,
    );
    expect(valuesOf(text)[1]).toEqual(['a.wav', '40', '', '-6']);
    expect(regions(text).map(({ tune, volume }) => [tune, volume])).toEqual([
      [undefined, '-6'],
      ['12', undefined],
    ]);
  });

  it.each([
    ['rows', 'rows="2"', 'rows="3"'],
    ['further rows', 'more="1"', 'more="2"'],
  ])('cells that say their column may reach down by %s too', (_, two, three) => {
    const cell = (at: number, value: string, more = '') => `<c i="${at}" ${more}>${value}</c>`;
    const rows = [
      [cell(1, 'Title', 'wide="5"')],
      [cell(1, 'File'), cell(2, 'Low'), cell(3, 'High'), cell(4, 'Softest'), cell(5, 'Loudest')],
      [cell(1, 'a.wav'), cell(2, '40'), cell(3, '47'), cell(4, '1', two), cell(5, '64', two)],
      [cell(1, 'b.wav'), cell(2, '48'), cell(3, '55')],
      [cell(1, 'c.wav'), cell(2, '40'), cell(3, '47'), cell(4, '65', three), cell(5, '127', three)],
      [cell(1, 'd.wav'), cell(2, '48'), cell(3, '55')],
      [cell(1, 'e.wav'), cell(2, '56'), cell(3, '60')],
    ].map((cells) => `<r>${cells.join('')}</r>`);
    expect(valuesOf(`<book>${rows.join('\n')}</book>`).slice(2)).toEqual([
      ['a.wav', '40', '47', '1', '64'],
      ['b.wav', '48', '55', '1', '64'],
      ['c.wav', '40', '47', '65', '127'],
      ['d.wav', '48', '55', '65', '127'],
      ['e.wav', '56', '60', '65', '127'],
    ]);
  });

  it('another sheet that names no audio file gives no zones', () => {
    const sheetOf = (name: string, ...rows: string[]) =>
      `<sheet name="${name}">${rows.map((row) => `<r>${row.replace(/[^|]+/g, '<c>$&</c>').replaceAll('|', '')}</r>`).join('\n')}</sheet>`;
    const text = `<book>${sheetOf('Zones', 'File|Low|High', 'a.wav|40|47', 'b.wav|48|55')}
      ${sheetOf('Costs', 'Item|Euro|Paid', 'Hall|90|yes', 'Tuner|60|no')}</book>`;
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'b.wav']);
    expect(valuesOf(text).at(-1)).toEqual(['Tuner 60 no']);
  });

  it('cells hold their text in an element, an attribute or a section of characters', () => {
    const row = (one: string, other: string) =>
      `<r><c><t>${one}</t></c><c><t>${other}</t></c><c><t>5</t></c></r>`;
    expect(valuesOf(`<s>${row('a &amp; b.wav', '40')}${row('<![CDATA[c.wav]]>', '41')}</s>`)).toEqual([
      ['a & b.wav', '40', '5'],
      ['c.wav', '41', '5'],
    ]);
    const given = (one: string, other: string) => `<r><c is="${one}"/><c is="${other}"/><c is="5"/></r>`;
    expect(valuesOf(`<s>${given('a.wav', '40')}${given('b.wav', '41')}</s>`)[1]).toEqual([
      'b.wav',
      '41',
      '5',
    ]);
  });

  it('comments say how they are read', () => {
    const text = sheet('c', 'Datei|Von|Bis|Grundton', 'a.wav|G3|B3|A3', 'b.wav|H3|D4|C4');
    const said = text.replace('<page>', '<page><!-- Notennamen deutsch, C4 = MIDI 60 -->');
    expect(regions(said).map(({ lokey, hikey }) => [lokey, hikey])).toEqual([
      ['55', '58'],
      ['59', '62'],
    ]);
  });

  it.each([
    ['a list of pieces', sheet('c', 'File|Length|Composer', 'a.mp3|3:20|Smith', 'b.mp3|4:10|Jones')],
    [
      'elements that are named by an attribute',
      '<s><r><p n="wave">a.wav</p><p n="low">1</p><p n="high">2</p></r><r><p n="wave">b.wav</p><p n="low">1</p><p n="high">2</p></r></s>',
    ],
    [
      'regions with attributes',
      '<s><r wave="a.wav" low="1" high="2"/><r wave="b.wav" low="3" high="4"/></s>',
    ],
  ])('%s is no table', (_, text) => {
    expect(looksLikeZoneTable(text)).toBe(false);
  });
});

describe('parallel lists in XML', () => {
  const lists = (more: string) =>
    `<set><info>Notes are MIDI numbers.</info><files>a.wav; b c.wav; d.wav</files><root>60; 64; 67</root><lowest>55; 63; 66</lowest>
    <highest>62; 65; 70</highest><detune unit="cents">0; -4; 7</detune>${more}</set>`;

  it('are a row for each sample', () => {
    expect(
      regions(lists('')).map((one) => [one.sample, one.lokey, one.hikey, one.pitch_keycenter, one.tune]),
    ).toEqual([
      ['a.wav', '55', '62', '60', undefined],
      ['b c.wav', '63', '65', '64', '-4'],
      ['d.wav', '66', '70', '67', '7'],
    ]);
    expect(xmlCells(lists(''))?.around).toEqual(['Notes are MIDI numbers.']);
  });

  it('of another length are left out, and told of', () => {
    const told = xmlCells(lists('<pan>0; -20</pan>'))?.assumptions.map(({ text }) => text);
    expect(told).toEqual(['<pan> is left out: it does not hold one value for each of the 3 samples.']);
  });

  it('are none where files are named elsewhere too', () => {
    expect(xmlCells(lists('<more><files>e.wav; f.wav</files></more>'))).toBeUndefined();
  });
});

describe('what attributes around rows say', () => {
  const rows =
    '<r><c>File</c><c>Low</c><c>High</c><c>Root</c></r><r><c>a.wav</c><c>C2</c><c>B2</c><c>G2</c></r><r><c>b.wav</c><c>C3</c><c>B3</c><c>G3</c></r>';

  it.each([
    `<book naming="C3 is middle C (60)">${rows}</book>`,
    `<book><page noteNames="C3 = 60, as usual">${rows}</page></book>`,
    `<book><about keys="the middle C is C3"/><page>${rows}</page></book>`,
    `<buch><blatt tonnamen="C3 ist das mittlere C">${rows}</blatt></buch>`,
  ])('holds for the rows: %s', (text) => {
    expect(regions(text).map(({ lokey, hikey }) => [lokey, hikey])).toEqual([
      ['48', '59'],
      ['60', '71'],
    ]);
  });
});

describe('what says in one word how values of rows in XML are read', () => {
  const rows = `<r><c>wav</c><c>low</c><c>high</c><c>root</c></r>
    <r><c>m1.wav</c><c>C2</c><c>E2</c><c>D2</c></r><r><c>m2.wav</c><c>F2</c><c>A2</c><c>G2</c></r>`;

  // MIDI 1.0: middle C is key 60; that C3 and C5 are other names for it is common practice.
  it.each([
    ['an attribute', `<grid middleC="C3">${rows}</grid>`, 48],
    ['an attribute in Portuguese', `<grid do-central="C3">${rows}</grid>`, 48],
    ['an attribute named after the key', `<grid key60="C5">${rows}</grid>`, 24],
    ['an attribute named after a note', `<grid c3="60">${rows}</grid>`, 48],
    ['an element', `<grid><octaves><middleC>C3</middleC></octaves>${rows}</grid>`, 48],
  ])('%s names middle C', (_, text, low) => {
    expect(regions(text).map(({ lokey }) => Number(lokey))).toEqual([low, low + 5]);
  });

  it('says so too around rows that are lines of text', () => {
    const text = `<bank mittleres-c="C3"><zones>
wav;low;high;root
m1.wav;C2;E2;D2
m2.wav;F2;A2;G2
</zones></bank>`;
    expect(xmlTable(text)?.said).toEqual(['mittleres c: C3']);
  });
});
