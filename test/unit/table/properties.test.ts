import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { regions } from './tableRegions';

interface DrawnZone {
  sample: string;
  group: string;
  low: number;
  root: number;
  high: number;
  lowVelocity: number;
  highVelocity: number;
  tune: number;
  volume: number;
  pan: number;
}

const letters = 'abcdefghijklmnopqrstuvwxyzABC é-_().';
const nameParts = fc.string({ unit: fc.constantFrom(...letters), minLength: 1, maxLength: 12 });
const awkward = fc.constantFrom('', '', '', ',', ';', '|', '"', '""', '\t');

const drawnZone: fc.Arbitrary<DrawnZone> = fc
  .record({
    name: fc.tuple(nameParts, awkward, nameParts),
    group: fc.constantFrom('Soft', 'Loud, open', 'Bowed "1"'),
    keys: fc.tuple(...Array.from({ length: 3 }, () => fc.integer({ min: 0, max: 127 }))),
    velocities: fc.tuple(fc.integer({ min: 0, max: 127 }), fc.integer({ min: 0, max: 127 })),
    tune: fc.integer({ min: -100, max: 100 }),
    volume: fc.integer({ min: -600, max: 60 }).map((tenths) => tenths / 10),
    pan: fc.integer({ min: -100, max: 100 }),
  })
  .map(({ name, group, keys, velocities, tune, volume, pan }) => {
    const [low, root, high] = [...keys].sort((a, b) => a - b) as [number, number, number];
    const [lowVelocity, highVelocity] = [...velocities].sort((a, b) => a - b) as [number, number];
    const sample = `s${name.join('')}e.wav`;
    return { sample, group, low, root, high, lowVelocity, highVelocity, tune, volume, pan };
  });

const sharps = 'C C# D D# E F F# G G# A A# B'.split(' ');
const noteName = (key: number) => `${sharps[key % 12]}${Math.floor(key / 12) - 1}`;

interface Look {
  delimiter: string;
  quoteAll: boolean;
  lineEnd: string;
  names: boolean;
  comma: boolean;
  unit: string;
}

const looks: fc.Arbitrary<Look> = fc.record({
  delimiter: fc.constantFrom('\t', ';', ',', '|'),
  quoteAll: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  names: fc.boolean(),
  comma: fc.boolean(),
  unit: fc.constantFrom('', ' dB'),
});

/** Columns by heading; the order is shuffled. */
const columns = (look: Look): [string[], (zone: DrawnZone) => string][] => {
  const key = (value: number) => (look.names ? noteName(value) : String(value));
  return [
    [['Sample', 'File name', 'AUDIO FILE'], (zone) => zone.sample],
    [['Group', 'layer'], (zone) => zone.group],
    [['Root', 'Root key', 'base_note'], (zone) => key(zone.root)],
    [['Low key', 'loKey', 'Key (low)'], (zone) => key(zone.low)],
    [['High key', 'hiKey', 'Max note'], (zone) => key(zone.high)],
    [['Low vel (0..127)', 'Velocity min (0–127)'], (zone) => String(zone.lowVelocity)],
    [['High vel (0..127)', 'Velocity max (0–127)'], (zone) => String(zone.highVelocity)],
    [['Tune in cents', 'Fine tune (ct)'], (zone) => String(zone.tune).replace('-', '\u2212')],
    [
      ['Volume (dB)', 'Gain dB'],
      (zone) => String(zone.volume).replace('.', look.comma ? ',' : '.') + look.unit,
    ],
    [
      ['Pan (-100..100)', 'Panning [-100..100]'],
      ({ pan }) => (pan === 0 ? 'C' : pan < 0 ? `L${-pan}` : `R${pan}`),
    ],
  ];
};

function quoted(text: string, { delimiter, quoteAll }: Look): string {
  const needed = quoteAll || text.includes(delimiter) || text.includes('"') || text.includes('\t');
  return needed ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The regions that zones stand for, written without the code under test. */
function expected(zones: readonly DrawnZone[]): Record<string, string>[] {
  const groups = [...new Set(zones.map(({ group }) => group))];
  const rows = groups.flatMap((group) => zones.filter((zone) => zone.group === group));
  return rows.map((zone) => ({
    // A tab in a name is a control character, which becomes a space.
    sample: zone.sample.replace(/\t/g, ' '),
    group: zone.group,
    lokey: String(zone.low),
    pitch_keycenter: String(zone.root),
    hikey: String(zone.high),
    lovel: String(zone.lowVelocity),
    hivel: String(zone.highVelocity),
    ...(zone.tune !== 0 && { tune: String(zone.tune) }),
    ...(zone.volume !== 0 && { volume: String(zone.volume) }),
    ...(zone.pan !== 0 && { pan: String(zone.pan) }),
  }));
}

describe('any zones in any table', () => {
  it('read back as the same regions', () => {
    fc.assert(
      fc.property(
        fc.array(drawnZone, { minLength: 1, maxLength: 8 }),
        looks,
        fc.array(fc.nat(), { minLength: 20, maxLength: 20 }),
        (zones, look, order) => {
          const shuffled = columns(look)
            .map((column, at) => ({ column, by: order[at] }))
            .sort((a, b) => a.by - b.by)
            .map(({ column: [headings, cell] }, at) => {
              return { heading: headings[order[at + 10] % headings.length], cell };
            });
          const lines = [
            shuffled.map(({ heading }) => heading),
            ...zones.map((zone) => shuffled.map(({ cell }) => cell(zone))),
          ].map((line) => line.map((text) => quoted(text, look)).join(look.delimiter));
          const text = lines.join(look.lineEnd);
          expect(regions(text, { middleC: 'C4' })).toEqual(expected(zones));
        },
      ),
      { numRuns: 80 },
    );
  });

  it('read back from columns of spaces', () => {
    const plain = drawnZone.map((zone) => ({ ...zone, sample: `${zone.root}-${zone.low}.wav`, group: 'x' }));
    fc.assert(
      fc.property(fc.array(plain, { minLength: 1, maxLength: 8 }), (zones) => {
        const rows = [
          ['Sample', 'Root', 'Low key', 'High key', 'Tune'],
          ...zones.map((zone) => [zone.sample, zone.root, zone.low, zone.high, zone.tune].map(String)),
        ];
        const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)) + 2);
        const text = rows
          .map((row) =>
            row
              .map((cell, at) => cell.padEnd(widths[at]))
              .join('')
              .trimEnd(),
          )
          .join('\n');
        expect(regions(text)).toEqual(
          zones.map((zone) => ({
            sample: zone.sample,
            pitch_keycenter: String(zone.root),
            lokey: String(zone.low),
            hikey: String(zone.high),
            ...(zone.tune !== 0 && { tune: String(zone.tune) }),
          })),
        );
      }),
      { numRuns: 50 },
    );
  });
});

/** Ways to write a grid of cells, whose first row is the headings, as a text. */
const layouts: Readonly<Record<string, (grid: readonly (readonly string[])[]) => string>> = {
  html: (grid) => {
    const row = (cells: readonly string[], tag: string) =>
      `<tr>${cells.map((cell) => `<${tag}>${cell.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</${tag}>`).join('')}</tr>`;
    return `<table>${grid.map((cells, at) => row(cells, at === 0 ? 'th' : 'td')).join('\n')}</table>`;
  },
  markdown: ([headings, ...rows]) => {
    const line = (cells: readonly string[]) =>
      `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
    return [line(headings), line(headings.map(() => '---')), ...rows.map(line)].join('\n');
  },
  'a column for each zone': (grid) =>
    grid[0].map((_, column) => grid.map((row) => row[column]).join('\t')).join('\n'),
  'headings again on every page': ([headings, ...rows]) =>
    rows
      .flatMap((row, at) => (at % 3 === 0 ? [headings, row] : [row]))
      .map((row) => row.join('\t'))
      .join('\n'),
  'between titles and totals': (grid) =>
    ['All zones', '', ...grid.map((row) => row.join('\t')), '', `Total\t${grid.length - 1}`].join('\n'),
  'records of lines': ([headings, ...rows]) =>
    rows.map((row) => row.map((cell, column) => `${headings[column]}: ${cell}\n`).join('')).join('\n'),
  'records without blank lines between': ([headings, ...rows]) =>
    rows.map((row) => row.map((cell, column) => `  ${headings[column]} = ${cell}\r\n`).join('')).join(''),
  'records on a line': ([headings, ...rows]) =>
    rows.map((row) => row.map((cell, column) => `${headings[column]}: ${cell}`).join('; ')).join('\n'),
  'headings on two lines': ([headings, ...rows]) => {
    const words = headings.map((heading) => heading.split(' '));
    const upper = words.map(([first, second]) => (second === undefined ? '' : first));
    const lower = words.map(([first, second]) => second ?? first);
    return [upper, lower, ...rows].map((row) => row.join('\t')).join('\n');
  },
  'every row over two lines': (grid) =>
    grid.map((row) => `${row.slice(0, 3).join('\t')}\n${row.slice(3).join('\t')}`).join('\n'),
  'semicolons, all quoted': (grid) =>
    grid.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(';')).join('\r\n'),
  'drawn lines between rows': ([headings, ...rows]) => {
    const ruling = `+${headings.map(() => '--------').join('+')}+`;
    const line = (cells: readonly string[]) =>
      `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
    return [ruling, line(headings), ruling, ...rows.map(line), ruling].join('\n');
  },
  'several tables': ([headings, ...rows]) =>
    rows
      .flatMap((row, at) => (at % 4 === 0 ? ['', headings.join('\t'), row.join('\t')] : [row.join('\t')]))
      .join('\n'),
  'row numbers': (grid) => grid.map((row, at) => [at === 0 ? '#' : at, ...row].join('\t')).join('\n'),
  'marks for the same as above': (grid) =>
    grid
      .map((row, at) =>
        row.map((cell, column) => (at > 1 && cell === grid[at - 1][column] ? '"' : cell)).join('\t'),
      )
      .join('\n'),
};

describe('any zones in other shapes', () => {
  const file = fc.string({ unit: fc.constantFrom(...'abcxyz&<|'), minLength: 1, maxLength: 6 });
  const zone = fc.tuple(drawnZone, file).map(([drawn, name]) => ({ ...drawn, sample: `${name}!.wav` }));

  it.each(Object.keys(layouts))('%s', (name) => {
    fc.assert(
      fc.property(fc.array(zone, { minLength: 2, maxLength: 8 }), (zones) => {
        const keys = ['pitch_keycenter', 'lokey', 'hikey', 'lovel', 'hivel'] as const;
        const values = zones.map(({ sample, root, low, high, lowVelocity, highVelocity }) =>
          [sample, root, low, high, lowVelocity, highVelocity].map(String),
        );
        const grid = [
          ['Sample', 'Root key', 'Low key', 'High key', 'Low velocity', 'High velocity'],
          ...values,
        ];
        const truth = values.map(([sample, ...numbers]) => ({
          sample,
          ...Object.fromEntries(keys.map((key, at) => [key, numbers[at]])),
        }));
        expect(regions(layouts[name](grid))).toEqual(truth);
      }),
      { numRuns: 40 },
    );
  });
});

describe('any text', () => {
  const piece = fc.oneof(
    fc.constantFrom(
      'a.wav',
      'C3',
      '60',
      'Sample',
      'Root',
      'Low key',
      '-3,5 dB',
      'L20',
      '=1+1',
      'C3-B3',
      'Loop',
      'on',
    ),
    fc.constantFrom(
      '\t',
      ';',
      ',',
      '|',
      '  ',
      '\n',
      '\r\n',
      '\r',
      '"',
      '""',
      '---',
      '\u0000',
      '\ufeff',
      '\ud800',
      '=',
      '<table>',
      '<tr>',
      '<td rowspan=3>',
      '</td>',
      '&#60;',
      '〃',
    ),
    fc.string({ unit: 'binary', maxLength: 4 }),
  );

  it('is read, its spans within the text', () => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        const text = pieces.join('');
        looksLikeZoneTable(text);
        const { instrument, notes, columns, problem } = readZoneTable(text);
        expect(problem === undefined).toBe(instrument.regions.length > 0);
        for (const { start, end } of [...notes, ...columns.flatMap(({ headingSpan }) => headingSpan ?? [])]) {
          expect(start >= 0 && start <= end && end <= text.length).toBe(true);
        }
        for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
          const { start, end } = instrument.parameterSpan(parameter);
          expect(start >= 0 && start < end && end <= text.length).toBe(true);
          expect(instrument.valueText(parameter)).not.toMatch(/[\r\n\u0000]/);
        }
      }),
      { numRuns: 300 },
    );
  });
});
