import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLiterals } from '../../../server/table/cells/literals/literalTree';
import { lackOfZoneTable, looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { detect } from '../../../server/workspace/notations/detect';
import { notesOf, regions, table } from './tableRegions';

/** Two zones as each shape gives them. */
const plain = [
  { sample: 'ford 1.wav', lokey: '36', hikey: '47', pitch_keycenter: '41' },
  { sample: 'ford 2.wav', lokey: '48', hikey: '59', pitch_keycenter: '53' },
];

describe('shapes of zone tables', () => {
  it.each([
    [
      'JSON', // RFC 8259
      '{"instrument": "Ford lyre", "zones": [\n {"sample": "ford 1.wav", "range": [36, 47], "root": 41, "gain": null},\n {"sample": "ford 2.wav", "range": [48, 59], "root": 53}]}',
    ],
    [
      'JSON lines',
      '{"file":"ford 1.wav","lo":36,"hi":47,"root":41}\n{"file":"ford 2.wav","lo":48,"hi":59,"root":53}\n',
    ],
    [
      'lists with headings',
      '[["sample","low","high","root"],["ford 1.wav",36,47,41],["ford 2.wav",48,59,53]]',
    ],
    ['lists without headings', '[["ford 1.wav",36,47,41],["ford 2.wav",48,59,53]]'],
    [
      'headings beside lists',
      '{"columns":["sample","low","high","root"],"rows":[["ford 1.wav",36,47,41],["ford 2.wav",48,59,53]]}',
    ],
    [
      'a map by file',
      '{"ford 1.wav": {"keys": [36, 47], "root": 41}, "ford 2.wav": {"keys": [48, 59], "root": 53}}',
    ],
    [
      'tuples and maps of a script',
      "zones = [\n  ('ford 1.wav', {'keys': (36, 47), 'root': 41,}),  # first\n  ('ford 2.wav', {'keys': (48, 59), 'root': 53}),\n]\n",
    ],
    [
      'tables with equals signs',
      '-- all zones\nreturn {\n  { sample = "ford 1.wav", low = 36, high = 47, root = 41 },\n  { sample = "ford 2.wav", low = 48, high = 59, root = 53 },\n}',
    ],
    [
      'objects without quotation marks',
      "export const zones = [\n  { file: 'ford 1.wav', loKey: 36, hiKey: 47, rootKey: 41 }, // first\n  { file: 'ford 2.wav', loKey: 48, hiKey: 59, rootKey: 53 },\n];",
    ],
    [
      'calls of a function',
      'zone("ford 1.wav", low=36, high=47, root=41)\nzone("ford 2.wav", low=48, high=59, root=53)',
    ],
    [
      'named records',
      'let zones = vec![\n  Zone { sample: "ford 1.wav", low: 36, high: 47, root: 41 },\n  Zone { sample: "ford 2.wav", low: 48, high: 59, root: 53 },\n];',
    ],
    [
      'an indented list', // YAML 1.2, chapter 8
      'zones:\n  - sample: ford 1.wav\n    keys: [36, 47]\n    root: 41 # first\n  - sample: "ford 2.wav"\n    keys: [48, 59]\n    root: 53\n',
    ],
    [
      'sections of settings',
      '[zone 1]\nsample=ford 1.wav\nlow=36\nhigh=47\nroot=41\n\n[zone 2]\nsample=ford 2.wav\nlow=48\nhigh=59\nroot=53\n',
    ],
    [
      'double bars of a wiki',
      "== Zones ==\n|| '''Sample''' || '''Low''' || '''High''' || '''Root''' ||\n|| ford 1.wav || 36 || 47 || 41 ||\n|| ford 2.wav || 48 || 59 || 53 ||",
    ],
    [
      'headings between double bars alone',
      '||Sample||Low||High||Root||\n|ford 1.wav|36|47|41|\n|ford 2.wav|48|59|53|',
    ],
    [
      'a wiki table between brackets',
      '{| class="x"\n! Sample !! Low !! High !! Root\n|-\n| ford 1.wav || 36 || 47 || style="x" | 41\n|-\n| ford 2.wav\n| 48\n| 59\n| 53\n|}',
    ],
    [
      'headings between carets',
      '^ Sample ^ Low ^ High ^ Root ^\n| ford 1.wav | 36 | 47 | 41 |\n| ford 2.wav | 48 | 59 | 53 |',
    ],
    [
      'headings with equals signs',
      '|=Sample |=Low |=High |=Root |\n|ford 1.wav |36 |47 |41 |\n|ford 2.wav |48 |59 |53 |',
    ],
    [
      'a typeset table',
      'Sample & Low & High & Root \\\\ \\hline\nford 1.wav & 36 & 47 & 41 \\\\\nford 2.wav & 48 & 59 & 53 \\\\\n',
    ],
    [
      'tags in square brackets',
      '[table][tr][th]Sample[/th][th]Low[/th][th]High[/th][th]Root[/th][/tr]\n[tr][td]ford 1.wav[/td][td]36[/td][td]47[/td][td]41[/td][/tr]\n[tr][td]ford 2.wav[/td][td]48[/td][td]59[/td][td]53[/td][/tr][/table]',
    ],
    [
      'tags in square brackets below a quotation',
      '[quote=ann]Could you post them?[/quote]\nSure!\n[table][tr][th]Sample[/th][th]Low[/th][th]High[/th][th]Root[/th][/tr]\n[tr][td]ford 1.wav[/td][td]36[/td][td]47[/td][td]41[/td][/tr]\n[tr][td]ford 2.wav[/td][td]48[/td][td]59[/td][td]53[/td][/tr][/table]\n[i]bye[/i]',
    ],
    [
      'single blanks under headings with single blanks',
      'Name        Lo Hi Root\nford 1.wav  36 47   41\nford 2.wav  48 59   53',
    ],
  ])('%s', (_, text) => {
    expect(regions(text)).toEqual(plain);
    expect(lackOfZoneTable(text)).toBeUndefined();
    expect(detect('copied.txt', text)).toEqual({ kind: 'table' });
  });

  it('tell groups, and what goes for all zones of one', () => {
    const text = `{ "name": "Weir", "groups": [
      { "name": "soft", "velocity": [1, 80], "zones": [{ "sample": "a.wav", "key": 60 }, { "sample": "b.wav", "key": 61 }] },
      { "name": "loud", "velocity": [81, 127], "zones": [{ "sample": "c.wav", "key": 60 }] } ] }`;
    expect(regions(text).map(({ group, sample, lovel }) => `${group} ${sample} ${lovel}`)).toEqual([
      'soft a.wav 1',
      'soft b.wav 1',
      'loud c.wav 81',
    ]);
  });

  it('tell the key of a map by keys', () => {
    const kit = '{ "36": "kick.wav", "38": "snare.wav" }';
    expect(regions(kit).map(({ sample, key }) => `${sample} ${key}`)).toEqual([
      'kick.wav 36',
      'snare.wav 38',
    ]);
  });

  it('state the octave and scales in comments and in what goes for all', () => {
    const zones = '[{"sample": "a.wav", "low": "C2", "high": "E2", "root": "D2", "velocity": [1, 100]}]';
    const text = `{ "middleC": "C3", "velocityRange": [1, 100], "zones": ${zones} }`;
    expect(regions(text)[0]).toMatchObject({ lokey: '48', hivel: '127' });
    expect(regions(`// Middle C is C5.\n${zones}`)[0]).toMatchObject({ lokey: '24' });
  });

  it('read names of several words before values, from the right', () => {
    const text =
      'Name                Lo Hi Root Vol Pan\nSoft felt low       24 47   36 -3.0   0\nSoft felt high 2    48 59   54 -1.5 -25\n';
    expect(regions(text)).toEqual([
      { sample: 'Soft felt low', lokey: '24', hikey: '47', pitch_keycenter: '36', volume: '-3' },
      {
        sample: 'Soft felt high 2',
        lokey: '48',
        hikey: '59',
        pitch_keycenter: '54',
        volume: '-1.5',
        pan: '-25',
      },
    ]);
  });

  it('never throw on any literal, and keep to the text', () => {
    const pieces = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      '(',
      ')',
      ':',
      '=',
      ',',
      '"',
      "'",
      '\\',
      '#',
      '//',
      '/*',
      '\n',
      ' ',
      'a.wav',
      '36',
      'x',
      '|',
      '-',
      '- a: b\n',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 60 }), (drawn) => {
        const text = `[${drawn.join('')}`;
        const { top } = readLiterals(text);
        expect(top.end).toBeLessThanOrEqual(text.length);
        const { instrument } = readZoneTable(`{"a.wav": ${text}`);
        for (const region of instrument.regions) {
          const { start, end } = instrument.headerSpan(region);
          expect(start).toBeLessThanOrEqual(end);
        }
      }),
    );
  });

  it('give back any zones that were written as JSON', () => {
    const zone = fc.record({
      sample: fc
        .string({ minLength: 1, maxLength: 12 })
        .map((name) => `s${name.replace(/[\p{C}\p{Z}]/gu, '_')}e.wav`),
      root: fc.integer({ min: 0, max: 127 }),
      volumeDb: fc.integer({ min: -60, max: 6 }),
    });
    fc.assert(
      fc.property(fc.array(zone, { minLength: 1, maxLength: 8 }), fc.constantFrom(0, 2), (zones, space) => {
        const read = regions(JSON.stringify({ zones }, undefined, space));
        expect(
          read.map(({ sample, pitch_keycenter, volume = '0' }) => [sample, pitch_keycenter, volume]),
        ).toEqual(zones.map(({ sample, root, volumeDb }) => [sample, String(root), String(volumeDb)]));
      }),
    );
  });
});

describe('bare lists', () => {
  it.each([
    [
      '36 Kick.wav\n38 Snare rim 2.wav\n49 Crash 16.wav',
      ['36 Kick.wav', '38 Snare rim 2.wav', '49 Crash 16.wav'],
    ],
    ['Kick.wav 36\nSnare.wav 38', ['36 Kick.wav', '38 Snare.wav']],
    ['- 36 -> Kick.wav\n- 38 -> Snare.wav', ['36 Kick.wav', '38 Snare.wav']],
    ['[36] Kick.wav\n[38] Snare.wav', ['36 Kick.wav', '38 Snare.wav']],
    ['Kick.wav = C2\nTub.wav = D2', ['36 Kick.wav', '38 Tub.wav']],
    ['Kit of Tuesday\n36: Kick.wav\n38: Snare.wav', ['36 Kick.wav', '38 Snare.wav']],
  ])('%j', (text, expected) => {
    expect(regions(text).map(({ key, sample }) => `${key} ${sample}`)).toEqual(expected);
    expect(looksLikeZoneTable(text)).toBe(true);
  });

  it('give ranges too', () => {
    expect(regions('36-40 Low tub.wav\n41-45 High tub.wav')[0]).toEqual({
      sample: 'Low tub.wav',
      lokey: '36',
      hikey: '40',
    });
  });

  it('are none where values stand between the key and the files', () => {
    expect(
      regions('Keys,Root,Left sample,Right sample\n37-43,40,a_L.wav,a_R.wav\n44-50,47,b_L.wav,b_R.wav'),
    ).toMatchObject([
      { sample: 'a_L.wav', lokey: '37', hikey: '43', pan: '-100' },
      { sample: 'a_R.wav', lokey: '37', hikey: '43', pan: '100' },
      { sample: 'b_L.wav', lokey: '44', hikey: '50', pan: '-100' },
      { sample: 'b_R.wav', lokey: '44', hikey: '50', pan: '100' },
    ]);
  });

  it('that are only numbered give no keys', () => {
    const text = '1 Kick.wav\n2 Snare.wav\n3 Hat.wav';
    expect(regions(text).every(({ key, lokey }) => key === undefined && lokey === undefined)).toBe(true);
    expect(lackOfZoneTable(text)).toBe('it names samples, such as "Kick.wav", but no keys');
  });

  // General MIDI System Level 1, percussion key map (MIDI Manufacturers Association, 1991).
  it('tell their octave by drums', () => {
    const text = 'C1 - Kick.wav\nD1 - Snare.wav\nF#1 - Hat closed.wav\nA#1 - Hat open.wav';
    expect(regions(text).map(({ key }) => key)).toEqual(['36', '38', '42', '46']);
    expect(notesOf(text).join()).toMatch(/read as C3, because 4 of 4 drums/);
    expect(regions('C1 - Kick.wav\nD1 - Gong.wav').map(({ key }) => key)).toEqual(['24', '26']);
  });
});

describe('the octave by a number in one file name', () => {
  const root = (name: string) => regions(`File,Low,High,Root\n${name},A2,E3,C3`)[0]?.pitch_keycenter;

  it('counts in a table of one row', () => {
    expect(root('Glass jar 60.wav')).toBe('60');
    expect(root('Glass jar 36.wav')).toBe('36');
  });

  it('does not count where the number counts something else', () => {
    for (const name of ['jar v60.wav', 'jar 60bpm.wav', 'jar take 60.wav', 'jar 60 bit.wav', 'jar 160.wav'])
      expect(root(name), name).toBe('48');
  });
});

describe('what is no zone table', () => {
  it.each([
    [
      'Plant,Low (cm),High (cm),Group\nAlder,120,340,Wet\nQuince,45,90,Dry',
      'it has columns (Plant, Low (cm), High (cm), Group), but none of sample names and no keys',
    ],
    [
      'File\tDate\tPlace\nt1.wav\t2021-03-14\tquarry\nt2.wav\t2021-03-15\ttunnel',
      'it names samples, such as "t1.wav", but no keys',
    ],
    [
      'Part\tLowest\tHighest\nTreble\tC4\tD5\nTenor\tC3\tD4',
      'it has columns (Part, Lowest, Highest), but none of sample names',
    ],
    [
      'We met at ten and left at twelve.\nNobody brought the rope.',
      'its lines have no columns, and do not name samples with keys',
    ],
  ])('%j', (text, lack) => {
    expect(lackOfZoneTable(text)).toBe(lack);
  });
});

describe('rows that stand one cell beside the others', () => {
  const heading = 'File | Low | High | Root | Vel low | Vel high | Level | Group';
  const row = (name: string, low: number) =>
    `${name}.wav | ${low} | ${low + 4} | ${low + 2} | 1 | 64 | -4 dB | soft`;
  const keys = (...rows: string[]) =>
    regions(table(heading, ...rows)).map((one) =>
      [one.sample, one.lokey, one.hikey, one.pitch_keycenter, one.hivel].join(' '),
    );
  const straight = ['a', 'b', 'c', 'd'].map((name, at) => row(name, 40 + at * 5));
  const expected = ['a.wav 40 44 42 64', 'b.wav 45 49 47 64', 'c.wav 50 54 52 64', 'd.wav 55 59 57 64'];

  it('are put right where an empty cell stands before or within them, and told', () => {
    const [a = '', b = '', c = '', d = ''] = straight;
    expect(keys(a, b, `| ${c}`, d)).toEqual(expected);
    const within = table(heading, a, b, c.replace('wav |', 'wav | |'), d);
    expect(keys(a, b, c.replace('wav |', 'wav | |'), d)).toEqual(expected);
    expect(notesOf(within).join('\n')).toMatch(/The row of "c.wav" stands one cell too far right/);
  });

  it('are put right where their first cell is missing, and told', () => {
    const [a = '', b = '', c = '', d = ''] = straight;
    const text = table(`No. | ${heading}`, `1 | ${a}`, `2 | ${b}`, c, `4 | ${d}`);
    expect(regions(text).map((one) => `${one.sample} ${one.lokey}`)).toEqual([
      'a.wav 40',
      'b.wav 45',
      'c.wav 50',
      'd.wav 55',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/The row of "c.wav" stands one cell too far left/);
  });

  it('stay as they are where an empty cell stands for no value', () => {
    const [a = '', b = '', c = ''] = straight;
    const text = table(heading, a, b, c, 'd.wav | 55 | 59 |  | 1 | 64 | -4 dB | soft');
    expect(regions(text)[3]?.hivel).toBe('64');
    expect(notesOf(text).join('\n')).not.toMatch(/stands one cell/);
  });
});
