import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regions } from './tableRegions';

/** Headings as musicians of a language write them (from memory), the words between two ends, and the decimal mark. */
interface Language {
  sample: string;
  root: string;
  low: string;
  high: string;
  keys: string;
  velocity: string;
  level: string;
  pan: string;
  to: string;
  mark: '.' | ',';
}

const languages: Readonly<Record<string, Language>> = {
  English: heads('File, Root note, Low key, High key, Keys, Velocity, Level, Pan', 'to', '.'),
  German: heads(
    'Datei, Grundton, Tiefste Taste, Höchste Taste, Tasten, Anschlag, Pegel, Panorama',
    'bis',
    ',',
  ),
  French: heads(
    'Fichier, Note de base, Touche la plus basse, Touche la plus haute, Touches, Vélocité, Niveau, Panoramique',
    'à',
    ',',
  ),
  Spanish: heads('Archivo, Nota base, Tecla grave, Tecla aguda, Teclas, Velocidad, Volumen, Paneo', 'a', ','),
  Italian: heads(
    'Campione, Fondamentale, Tasto basso, Tasto alto, Tasti, Dinamica, Livello, Panorama',
    'a',
    ',',
  ),
  Portuguese: heads(
    'Ficheiro, Nota fundamental, Tecla mínima, Tecla máxima, Teclas, Velocidade, Volume, Panorama',
    'a',
    ',',
  ),
  Dutch: heads(
    'Bestand, Grondtoon, Laagste toets, Hoogste toets, Toetsen, Aanslag, Volume, Panorama',
    'tot',
    ',',
  ),
  Swedish: heads('Fil, Grundton, Lägsta ton, Högsta ton, Tangenter, Anslag, Nivå, Panorering', 'till', ','),
  Danish: heads(
    'Fil, Grundtone, Laveste tone, Højeste tone, Tangenter, Anslag, Niveau, Panorering',
    'til',
    ',',
  ),
  Polish: heads(
    'Plik, Ton podstawowy, Klawisz od, Klawisz do, Klawisze, Dynamika, Poziom, Panorama',
    'do',
    ',',
  ),
  // Of a language whose words are not known, values and units alone tell.
  Hungarian: heads('Fájl, Alaphang, Legalsó, Legfelső, Billentyűk, Leütés, Hangerő, Balra-jobbra', '-', ','),
};

function heads(list: string, to: string, mark: '.' | ','): Language {
  const [sample = '', root = '', low = '', high = '', keys = '', velocity = '', level = '', pan = ''] =
    list.split(', ');
  return { sample, root, low, high, keys, velocity, level, pan, to, mark };
}

interface Zone {
  sample: string;
  low: number;
  root: number;
  high: number;
  from: number;
  to: number;
  /** In dB, and as a position from −100 to 100. */
  level: number;
  pan: number;
}

/** Key ranges one above the other, each with as many layers as `layers` has parts; all shares add up to all velocities. */
const instrument: fc.Arbitrary<Zone[]> = fc
  .record({
    start: fc.integer({ min: 24, max: 48 }),
    widths: fc.array(fc.integer({ min: 3, max: 8 }), { minLength: 3, maxLength: 5 }),
    ends: fc.uniqueArray(fc.integer({ min: 20, max: 110 }), { minLength: 1, maxLength: 2 }),
    levels: fc.array(fc.integer({ min: -12, max: -1 }), { minLength: 15, maxLength: 15 }),
    pans: fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 15, maxLength: 15 }),
  })
  .map(({ start, widths, ends, levels, pans }) => {
    const zones: Zone[] = [];
    const tops = [...ends.sort((a, b) => a - b), 127];
    let low = start;
    for (const [at, width] of widths.entries()) {
      for (const [layer, to] of tops.entries()) {
        const count = zones.length;
        zones.push({
          sample: `take ${at + 1}${'abc'[layer]}.wav`,
          low,
          root: low + Math.floor(width / 2),
          high: low + width - 1,
          from: layer === 0 ? 1 : tops[layer - 1] + 1,
          to,
          level: levels[count] / 2,
          pan: pans[count] * 10,
        });
      }
      low += width;
    }
    return zones;
  });

const sharps = 'C C# D D# E F F# G G# A A# B'.split(' ');
const flats = 'C Db D Eb E F Gb G Ab A Bb B'.split(' ');
const signs = 'C C♯ D E♭ E F F♯ G A♭ A B♭ B'.split(' ');
const german = 'C Cis D Dis E F Fis G Gis A Ais H'.split(' ');
const namings: Readonly<Record<string, readonly string[] | undefined>> = {
  numbers: undefined,
  sharps,
  flats,
  signs,
  german,
};

interface Look {
  language: keyof typeof languages;
  naming: keyof typeof namings;
  /** One column for both ends of the keys, or two, and what stands between both ends. */
  isRange: boolean;
  between: string;
  inPercent: boolean;
  /** How levels and pan positions are written, as the heading says. */
  level: 'dB' | 'factor';
  pan: readonly [heading: string, scale: number];
  layout: keyof typeof layouts;
}

/** Ways to write a grid whose first row is the headings. */
const layouts: Readonly<Record<string, (grid: readonly (readonly string[])[]) => string>> = {
  tabs: (grid) => grid.map((row) => row.join('\t')).join('\n'),
  semicolons: (grid) => grid.map((row) => row.join(';')).join('\r\n'),
  bars: ([headings, ...rows]) =>
    [headings, headings.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n'),
  page: (grid) =>
    `<table>${grid.map((row) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join('')}</tr>`).join('\n')}</table>`,
  'a title over fixed columns': (grid) => {
    const widths = grid[0].map((_, column) => Math.max(...grid.map((row) => row[column].length)) + 3);
    const lines = grid.map((row) =>
      row
        .map((cell, at) => cell.padEnd(widths[at]))
        .join('')
        .trimEnd(),
    );
    return ['The old wheel in the mill, recorded in two rooms     3 of 4', '', ...lines].join('\n');
  },
  turned: (grid) => grid[0].map((_, column) => grid.map((row) => row[column]).join('\t')).join('\n'),
};

const looks: fc.Arbitrary<Look> = fc.record({
  language: fc.constantFrom(...Object.keys(languages)),
  naming: fc.constantFrom(...Object.keys(namings)),
  isRange: fc.boolean(),
  between: fc.constantFrom('-', '–', ' – ', 'word'),
  inPercent: fc.boolean(),
  level: fc.constantFrom('dB' as const, 'factor' as const),
  pan: fc.constantFrom(['-100..100', 100] as const, ['-1..1', 1] as const, ['-50..50', 50] as const),
  layout: fc.constantFrom(...Object.keys(layouts)),
});

/** The share of all velocities up to one, in percent. */
const percentOf = (velocity: number) => Math.round((velocity / 127) * 100);

function gridOf(zones: readonly Zone[], look: Look): string[][] {
  const language = languages[look.language];
  const names = namings[look.naming];
  const key = (one: number) => (names ? `${names[one % 12]}${Math.floor(one / 12) - 1}` : String(one));
  const between = look.between === 'word' ? ` ${language.to} ` : look.between;
  const number = (one: number, digits: number) =>
    String(Number(one.toFixed(digits))).replace('.', language.mark);
  const ends = ({ from, to }: Zone) =>
    look.inPercent
      ? [from === 1 ? 0 : percentOf(from - 1) + 1, percentOf(to)].join(between)
      : [from, to].join(between);
  const columns: [string, (zone: Zone) => string][] = [
    [language.sample, ({ sample }) => sample],
    ...(look.isRange
      ? ([[language.keys, ({ low, high }: Zone) => [key(low), key(high)].join(between)]] as [
          string,
          (zone: Zone) => string,
        ][])
      : ([
          [language.low, ({ low }: Zone) => key(low)],
          [language.high, ({ high }: Zone) => key(high)],
        ] as [string, (zone: Zone) => string][])),
    [language.root, ({ root }) => key(root)],
    [look.inPercent ? `${language.velocity} (%)` : language.velocity, ends],
    [
      look.level === 'dB' ? `${language.level} (dB)` : `${language.level} (x)`,
      ({ level }) => number(look.level === 'dB' ? level : 10 ** (level / 20), 4),
    ],
    [`${language.pan} (${look.pan[0]})`, ({ pan }) => number((pan * look.pan[1]) / 100, 2)],
  ];
  return [columns.map(([heading]) => heading), ...zones.map((zone) => columns.map(([, cell]) => cell(zone)))];
}

describe('any instrument in any layout, language of headings, naming of notes and scale', () => {
  it('reads back as the same regions', () => {
    fc.assert(
      fc.property(instrument, looks, (zones, look) => {
        // Positions from left to right have no heading that all languages share.
        const isKnown = look.language !== 'Hungarian';
        const read = regions(layouts[look.layout](gridOf(zones, look)), { middleC: 'C4' });
        expect(read).toHaveLength(zones.length);
        for (const [at, zone] of zones.entries()) {
          const value = (name: string, missing: number) => Number(read[at][name] ?? missing);
          expect(read[at].sample).toBe(zone.sample);
          expect([value('lokey', 0), value('pitch_keycenter', 60), value('hikey', 127)]).toEqual([
            zone.low,
            zone.root,
            zone.high,
          ]);
          // A hundredth of the velocities is more than one of 127.
          const near = look.inPercent ? 1.3 : 0;
          expect(Math.abs(Math.max(1, value('lovel', 1)) - zone.from)).toBeLessThanOrEqual(near);
          expect(Math.abs(value('hivel', 127) - zone.to)).toBeLessThanOrEqual(near);
          if (isKnown || look.level === 'dB') expect(value('volume', 0)).toBeCloseTo(zone.level, 1);
          if (isKnown) expect(value('pan', 0)).toBeCloseTo(zone.pan, 0);
        }
      }),
      { numRuns: 60 },
    );
  });
});
