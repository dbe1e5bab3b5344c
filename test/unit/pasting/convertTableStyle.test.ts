import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import type { FormatStyle } from '../../../server/model/formatStyle';
import type { TableChoices } from '../../../server/pasting/convertTable';
import { convertTable } from '../../../server/pasting/convertTable';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { notations } from '../../../server/workspace/notations/notationOf';
import { waveBytes } from '../server/host/waveBytes';
import { MemoryFiles } from '../workspace/memoryFiles';

const files = new MemoryFiles({});

/** Converts a table into a text at `|`, or at its end. */
async function convert(
  marked: string,
  table: string,
  choices: Partial<TableChoices> = {},
  format: 'sfz' | 'xml' = 'sfz',
  style: Partial<FormatStyle> = {},
) {
  const at = marked.includes('|') ? marked.indexOf('|') : marked.length;
  const text = marked.replace('|', '');
  const target = {
    text,
    start: at,
    end: at,
    notation: notations[format],
    path: '/music/a.sfz',
    folder: undefined,
    format: style,
  };
  const converted = await convertTable(files, new IncludeStore(files), table, target, {
    middleC: 'auto',
    ...choices,
  });
  return { ...converted, after: editedText(text, converted.edits), text };
}

const valuesIn = (text: string, format: 'sfz' | 'xml' = 'sfz') => {
  const instrument = notations[format].read(text, { path: 'a' });
  return [...instrument.regions].map((region) =>
    Object.fromEntries(
      instrument
        .effectiveParameters(region)
        .map(({ name, parameter }) => [instrument.names.text(name), instrument.valueText(parameter)]),
    ),
  );
};

const table =
  'Sample\tLow\tHigh\tRoot\tLo vel\tHi vel\na.wav\t36\t49\t40\t1\t127\nb.wav\t51\t61\t54\t1\t100\n';

describe('regions in the style of a document', () => {
  it('write keys as the document does', async () => {
    const line = (text: string) => text.split('\n').filter((one) => one.includes('b.wav'))[0];
    const numbers = await convert('<region> sample=*sine lokey=30 hikey=31\n', table);
    expect(line(numbers.after)).toMatch(/lokey=51 hikey=61 pitch_keycenter=54/);
    const names = await convert('<region> sample=*sine lokey=C1 hikey=F#1 pitch_keycenter=D1\n', table);
    expect(line(names.after)).toMatch(/lokey=D#3 hikey=C#4 pitch_keycenter=F#3/);
    const small = await convert('<region> sample=*sine lokey=eb1 hikey=f1 pitch_keycenter=e1\n', table);
    expect(line(small.after)).toMatch(/lokey=eb3 hikey=db4 pitch_keycenter=gb3/);
    // Numbers of the MIDI 1.0 key table with middle C = C4 = 60, as SFZ has it: the same regions in each spelling.
    expect(valuesIn(numbers.after).slice(1)).toMatchObject([{ lokey: '36' }, { lokey: '51', hikey: '61' }]);
  });

  it('leave out what the format has by default, unless a header around sets something else', async () => {
    // Defaults of the open SFZ format's opcode table: lokey 0, hikey 127, hivel 127; lovel 1 starts at the first note-on velocity.
    const { after } = await convert('', table);
    expect(after).not.toMatch(/lovel|hivel=127/);
    expect(after).toMatch(/hivel=100/);
    const within = await convert('<group> hivel=60\n<region> sample=*sine\n', table);
    expect(within.after).toMatch(/sample=a\.wav.*hivel=127/);
    expect(valuesIn(within.after)[1]).toMatchObject({ hivel: '127' });
    const whole = await convert('', 'Sample\tLow\tHigh\tRoot\na.wav\t0\t127\t60\n');
    expect(whole.after).toBe('<region> sample=a.wav pitch_keycenter=60\n');
  });

  it('stand in columns where those of the document do', async () => {
    const aligned =
      '<region> sample=short.wav       lokey=1   hikey=20\n<region> sample=much longer.wav lokey=100 hikey=101\n';
    const { after, insertText } = await convert(
      aligned,
      'Sample\tLow\tHigh\na.wav\t36\t47\nb.wav\t48\t127\n',
    );
    const columns = after
      .split('\n')
      .filter(Boolean)
      .map((line) => line.indexOf('lokey='));
    expect(columns).toHaveLength(4);
    expect(new Set(columns).size).toBe(1);
    expect(insertText).toBeDefined();
    const longer = await convert(
      aligned,
      'Sample\tLow\tHigh\na name that is longer still.wav\t36\t47\nb.wav\t48\t59\n',
    );
    const wider = longer.after
      .split('\n')
      .filter(Boolean)
      .map((line) => line.indexOf('lokey='));
    expect(new Set(wider).size).toBe(1);
    expect(valuesIn(longer.after)).toHaveLength(4);
    const loose = await convert(
      '<region> sample=x.wav lokey=1\n',
      'Sample\tLow\tHigh\na.wav\t36\t47\nlong.wav\t48\t59\n',
    );
    expect(loose.after).not.toMatch(/ {2}/);
  });

  it('have their opcodes on lines of their own where those of the document do', async () => {
    const { after } = await convert('<region>\nsample=*sine\nlokey=1\nhikey=2\n', table);
    expect(after).toMatch(/<region>\nsample=a\.wav\nlokey=36\n/);
    expect(valuesIn(after)).toHaveLength(3);
  });

  it('follow the settings of the document', async () => {
    const { after } = await convert('', 'Sample\tLow\tHigh\na.wav\t36\t47\nlonger.wav\t48\t59\n', {}, 'sfz', {
      alignColumns: true,
    });
    expect(after).toMatch(/a\.wav {6}lokey/);
  });
});

describe('corrections and choices', () => {
  it('take a column for what a person says', async () => {
    const odd = 'Name\tA\tB\na.wav\t36\t47\nb.wav\t48\t59\n';
    const { after } = await convert('', odd, {
      columns: new Map([
        [1, 'lokey'],
        [2, 'hikey'],
      ]),
    });
    expect(valuesIn(after)).toMatchObject([
      { lokey: '36', hikey: '47' },
      { lokey: '48', hikey: '59' },
    ]);
    const other = await convert('', odd, { columns: new Map([[1, 'unknown']]) });
    expect(other.after).not.toMatch(/36/);
  });

  it('count the numbers of a column as a person says', async () => {
    const { after } = await convert('', 'Sample\tLevel\na.wav\t100\nb.wav\t50\n', {
      scales: new Map([[1, 'percent']]),
    });
    expect(valuesIn(after).map(({ volume }) => volume)).toEqual([undefined, '-6.02']);
    const { after: quiet } = await convert('', 'Sample\tLevel\na.wav\t100\nb.wav\t50\n', {
      scales: new Map([[1, 'none']]),
    });
    expect(quiet).not.toMatch(/volume/);
  });

  it('keep the unit that the heading gives', async () => {
    const { after } = await convert('', 'Sample\tLevel (%)\na.wav\t50\nb.wav\t25\n', {
      columns: new Map([[1, 'volume']]),
    });
    // Half and a quarter of the amplitude: 20 · log10(0.5) = −6.02 dB, 20 · log10(0.25) = −12.04 dB (IEC 60027-3).
    expect(valuesIn(after).map(({ volume }) => volume)).toEqual(['-6.02', '-12.04']);
  });

  const named =
    'Sample\tRoot\nbell_p_rr1.wav\t60\nbell_p_rr2.wav\t60\nbell_f_rr1.wav\t60\nbell_f_rr2.wav\t60\nbell_rel.wav\t60\n';

  it('group by parts of file names only where that is chosen', async () => {
    const plain = await convert('', named);
    expect(plain.after).not.toMatch(/<group>/);
    expect(plain.reading.suggestions.map(({ kind }) => kind).sort()).toEqual([
      'layers',
      'releases',
      'round_robins',
    ]);
    const grouped = await convert('', named, { groupings: new Set(['layers', 'releases', 'round_robins']) });
    const values = valuesIn(grouped.after);
    expect(values.map(({ group_label }) => group_label)).toEqual(['p', 'p', 'f', 'f', 'release']);
    // Two layers part the note-on velocities 1..127 of MIDI 1.0 without gap or overlap; common practice: p below f.
    expect(values.map(({ lovel = '1', hivel = '127' }) => [lovel, hivel].map(Number))).toEqual([
      [1, 63],
      [1, 63],
      [64, 127],
      [64, 127],
      [1, 127],
    ]);
    expect(values.map(({ seq_position, seq_length }) => [seq_position, seq_length])).toEqual([
      ['1', '2'],
      ['2', '2'],
      ['1', '2'],
      ['2', '2'],
      [undefined, undefined],
    ]);
    expect(values[4]).toMatchObject({ trigger: 'release' });
    expect(grouped.notes.some(({ message }) => /layers share them/.test(message))).toBe(true);
  });

  it('count round robins within a group: a take alone in its group plays each time', async () => {
    const takes = 'Sample\tRoot\na_sus_rr1.wav\t60\na_sus_rr2.wav\t60\na_stac_rr1.wav\t60\n';
    const { after } = await convert('', takes, { groupings: new Set(['articulations', 'round_robins']) });
    // SFZ: a region plays when the count of notes is at its `seq_position`, out of `seq_length`; both are 1 by default.
    expect(
      valuesIn(after).map(({ group_label, seq_position = '1', seq_length = '1' }) =>
        [group_label, seq_position, seq_length].join(' '),
      ),
    ).toEqual(['sustain 1 2', 'sustain 2 2', 'staccato 1 1']);
  });

  it('keep the groups of the table around those of file names', async () => {
    const rows = 'Sample\tGroup\nx_p.wav\tBells\nx_f.wav\tBells\ny_p.wav\tBars\n';
    const { after } = await convert('', rows, { groupings: new Set(['layers']) });
    expect(valuesIn(after).map(({ sample, group_label }) => `${sample} ${group_label}`)).toEqual([
      'x_p.wav Bells p',
      'x_f.wav Bells f',
      'y_p.wav Bars p',
    ]);
  });
});

describe('a table into a document with its samples', () => {
  const document = `// mine
<group> volume=-3
<region> sample=a.wav lokey=C2 hikey=C3 pitch_keycenter=E2 pan=20 // keep
<region> sample=b.wav key=50
<region> sample=mine.wav key=70
`;

  it('changes only values that differ, and adds what is new', async () => {
    const { after, changedCount, unchangedCount, addedCount, matchCount } = await convert(
      document,
      'Sample\tLow\tHigh\tRoot\tPan\na.wav\t36\t49\t40\t0\nb.wav\t50\t50\t50\t0\nnew.wav\t80\t81\t80\t10\n',
      { update: true },
    );
    expect({ matchCount, changedCount, unchangedCount, addedCount }).toEqual({
      matchCount: 2,
      changedCount: 1,
      unchangedCount: 1,
      addedCount: 1,
    });
    const lines = after.split('\n');
    expect(lines[2]).toBe('<region> sample=a.wav lokey=C2 hikey=C#3 pitch_keycenter=E2 // keep');
    expect(lines.slice(0, 2)).toEqual(document.split('\n').slice(0, 2));
    expect(lines.slice(3, 5)).toEqual(document.split('\n').slice(3, 5));
    expect(valuesIn(after).at(-1)).toMatchObject({ sample: 'new.wav', pan: '10' });
  });

  it('writes in the region what its group says otherwise', async () => {
    const { after } = await convert(document, 'Sample\tLevel dB\na.wav\t-6\nb.wav\t-3\nmine.wav\t0\n', {
      update: true,
    });
    expect(valuesIn(after).map(({ volume }) => volume)).toEqual(['-6', '-3', '0']);
    expect(after).toContain('<group> volume=-3\n');
    expect(after).toContain('<region> sample=b.wav key=50\n');
  });

  it('writes behind what overrides an earlier opcode', async () => {
    const { after } = await convert(
      '<region> lokey=1 sample=a.wav key=60\n',
      'Sample\tLow\tHigh\tRoot\na.wav\t58\t62\t60\n',
      { update: true },
    );
    expect(valuesIn(after)).toMatchObject([{ lokey: '58', hikey: '62', pitch_keycenter: expect.anything() }]);
    const instrument = notations.sfz.read(after, { path: 'a' });
    expect([instrument.lowKey[0], instrument.highKey[0], instrument.rootKey(0)]).toEqual([58, 62, 60]);
  });

  it('tells regions of one sample apart by their keys, and leaves open what it cannot tell', async () => {
    const twice = '<region> sample=a.wav key=40\n<region> sample=a.wav key=50\n';
    const told = await convert(twice, 'Sample\tLow\tHigh\tRoot\tPan\na.wav\t50\t50\t50\t7\n', {
      update: true,
    });
    expect(told.after).toBe(twice.replace('key=50', 'key=50 pan=7'));
    const open = await convert(`${twice}<region> sample=b.wav key=1\n`, 'Sample\tPan\na.wav\t7\nb.wav\t8\n', {
      update: true,
    });
    expect(valuesIn(open.after).map(({ pan }) => pan)).toEqual([undefined, undefined, '8']);
    expect(open.notes.some(({ message }) => /which one is meant/.test(message))).toBe(true);
  });

  it('tells of regions that the table has no row for, and takes them out only when told to', async () => {
    const table = 'Sample\tLow\tHigh\na.wav\t36\t49\n';
    const kept = await convert(document, table, { update: true });
    expect(kept.goneCount).toBe(2);
    expect(kept.notes.map(({ message }) => message)).toContain(
      'The table has no row for 2 regions of the document (lines 4, 5). They stay as they are.',
    );
    expect(kept.after).toContain('<region> sample=b.wav key=50\n<region> sample=mine.wav key=70\n');
    const without = await convert(document, table, { update: true, takeOut: true });
    expect(without.after).toBe(kept.after.replace(/<region> sample=(b|mine)\.wav.*\n/g, ''));
    expect(without.notes.find(({ kind }) => kind === 'dropped')?.message).toMatch(/They are removed\.$/);
    // Regions of which the table does not tell which one is meant are not among them.
    const twice = '<region> sample=a.wav key=40\n<region> sample=a.wav key=50\n<region> sample=b.wav key=1\n';
    const open = await convert(twice, 'Sample\tPan\na.wav\t7\nb.wav\t8\n', { update: true, takeOut: true });
    expect(open.goneCount).toBe(0);
    expect(valuesIn(open.after)).toHaveLength(3);
  });

  it('compares no thousands of regions of one sample with thousands of rows', async () => {
    const regions = Array.from({ length: 1000 }, (_, at) => `<region> sample=a.wav lokey=${at % 100}\n`).join(
      '',
    );
    const rows = Array.from({ length: 1000 }, (_, at) => `a.wav\t${at % 100}\t${(at % 100) + 1}\n`).join('');
    const { edits, notes, addedCount } = await convert(
      `${regions}<region> sample=b.wav\n`,
      `Sample\tLow\tHigh\n${rows}b.wav\t0\t127\n`,
      { update: true },
    );
    expect(edits).toEqual([]);
    expect(addedCount).toBe(0);
    expect(notes.filter(({ message }) => /1000 regions with the sample "a\.wav"/.test(message))).toHaveLength(
      1,
    );
  });

  it('does the same in XML', async () => {
    const xml =
      '<instrument>\n  <group volume="-3">\n    <region sample="a.wav" lokey="36"/>\n  </group>\n</instrument>\n';
    const { after } = await convert(
      xml,
      'Sample\tLow\tHigh\na.wav\t37\t48\nb &amp; c.wav\t49\t60\n',
      { update: true },
      'xml',
    );
    expect(notations.xml.read(after, { path: 'a' }).findings).toEqual([]);
    expect(valuesIn(after, 'xml')).toMatchObject([
      { sample: 'a.wav', lokey: '37', hikey: '48', volume: '-3' },
      { sample: 'b &amp; c.wav', lokey: '49' },
    ]);
  });

  it('writes again by default, and again where no sample matches', async () => {
    const rows = 'Sample\tLow\tHigh\na.wav\t1\t2\n';
    expect((await convert(document, rows)).regionCount).toBe(1);
    expect(valuesIn((await convert(document, rows)).after)).toHaveLength(4);
    const other = await convert('<region> sample=z.wav\n', rows, { update: true });
    expect(valuesIn(other.after)).toHaveLength(2);
  });

  it('adds regions behind those that are there, their paths led by the default path in force there', async () => {
    const folder = new MemoryFiles({
      '/music/Samples/a.wav': waveBytes(1),
      '/music/Samples/new.wav': waveBytes(1),
    });
    const text = '<control> default_path=Samples/\n<region> sample=a.wav key=1\n';
    const target = {
      text,
      start: 0,
      end: 0,
      notation: notations.sfz,
      path: '/music/a.sfz',
      folder: '/music',
    };
    const rows = 'Sample\tLow\tHigh\na.wav\t1\t2\nnew.wav\t3\t4\n';
    const { edits } = await convertTable(folder, new IncludeStore(folder), rows, target, {
      middleC: 'auto',
      update: true,
    });
    const instrument = notations.sfz.read(editedText(text, edits), { path: '/music/a.sfz' });
    expect([...instrument.regions].map((region) => instrument.samplePath(region))).toEqual([
      'Samples/a.wav',
      'Samples/new.wav',
    ]);
  });

  it('makes regions say what the table says, and leaves all others as they are', async () => {
    const key = fc.nat(127);
    const zone = fc
      .record({
        keys: fc.tuple(key, key),
        root: key,
        level: fc.integer({ min: -60, max: 6 }),
        pan: fc.integer({ min: -100, max: 100 }),
      })
      .map(({ keys, ...rest }) => ({ ...rest, low: Math.min(...keys), high: Math.max(...keys) }));
    const own = fc.record(
      {
        lokey: key,
        hikey: key,
        key,
        pitch_keycenter: key,
        volume: fc.integer({ min: -60, max: 6 }),
        pan: fc.integer({ min: -100, max: 100 }),
      },
      { requiredKeys: [] },
    );
    const written = (values: object, format: 'sfz' | 'xml') =>
      Object.entries(values)
        .map(([name, value]) => (format === 'sfz' ? `${name}=${value}` : `${name}="${value}"`))
        .join(' ');
    await fc.assert(
      fc.asyncProperty(
        fc.array(own, { minLength: 1, maxLength: 6 }),
        fc.array(zone, { minLength: 2, maxLength: 6 }),
        own,
        fc.constantFrom('sfz', 'xml'),
        async (regions, zones, group, format) => {
          const lines = regions.map((values, at) => {
            const inside = `sample${format === 'sfz' ? `=s${at}.wav` : `="s${at}.wav"`} ${written(values, format)}`;
            return format === 'sfz' ? `<region> ${inside}` : `<region ${inside}/>`;
          });
          const text =
            format === 'sfz'
              ? `<group> ${written(group, 'sfz')}\n${lines.join('\n')}\n`
              : `<instrument>\n<group ${written(group, 'xml')}>\n${lines.join('\n')}\n</group>\n</instrument>\n`;
          const rows = zones.map(({ low, high, root, level, pan }, at) => [
            `s${at}.wav`,
            low,
            high,
            root,
            level,
            pan,
          ]);
          const cells = [
            ['Sample', 'Low key', 'High key', 'Root key', 'Level dB', 'Pan (-100..100)'],
            ...rows,
          ];
          const kinds = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'volume', 'pan'] as const;
          const { after } = await convert(
            text,
            cells.map((row) => row.join('\t')).join('\n'),
            { update: true, columns: new Map(kinds.map((kind, at) => [at, kind])) },
            format,
          );
          const instrument = notations[format].read(after, { path: 'a' });
          expect(instrument.findings).toEqual([]);
          const bySample = new Map([...instrument.regions].map((one) => [instrument.samplePath(one), one]));
          expect(bySample.size).toBe(Math.max(regions.length, zones.length));
          const number = (region: number, name: string) => {
            const parameter = instrument.effective(region, instrument.names.idOf(name));
            return parameter < 0 ? 0 : instrument.number(parameter);
          };
          for (const [at, { low, high, root, level, pan }] of zones.entries()) {
            const region = bySample.get(`s${at}.wav`) as number;
            expect([
              instrument.lowKey[region],
              instrument.highKey[region],
              instrument.rootKey(region),
            ]).toEqual([low, high, root]);
            // A scale of −1..1 or 0..127 is the other reading of a column of small or of positive positions.
            if (at < regions.length) expect(number(region, 'volume')).toBe(level);
            if (zones.some((one) => one.pan < -1) && at < regions.length)
              expect(number(region, 'pan')).toBe(pan);
          }
          for (const line of lines.slice(zones.length)) expect(after).toContain(line);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('changes nothing the second time', async () => {
    const rows =
      'Sample\tLow\tHigh\tRoot\tPan\tLevel dB\na.wav\t36\t49\t40\t0\t-2\nb.wav\t50\t51\t50\t-5\t0\n';
    const once = await convert(document, rows, { update: true });
    const twice = await convert(once.after, rows, { update: true });
    expect(twice.edits).toEqual([]);
    expect(twice.unchangedCount).toBe(2);
  });
});
