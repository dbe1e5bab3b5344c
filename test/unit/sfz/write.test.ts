import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { HeaderKind } from '../../../server/model/headerKinds';
import type { Instrument } from '../../../server/model/instrument';
import { InstrumentBuilder } from '../../../server/model/instrumentBuilder';
import { readSfz } from '../../../server/sfz/read';
import { writeSfz } from '../../../server/sfz/write';

const read = (text: string, included: Record<string, string> = {}) =>
  readSfz(text, {
    path: 'a.sfz',
    include: (path) => (path in included ? { kind: 'text', text: included[path] } : { kind: 'missing' }),
  });
const regions = (instrument: Instrument) =>
  [...instrument.regions].map((region) => effectiveValues(instrument, region));

/** Parameters by name and value, on no text: what a reader of another notation could hand over. */
function add(builder: InstrumentBuilder, values: Record<string, string>): void {
  for (const [name, value] of Object.entries(values)) {
    builder.setValue(builder.addParameter(builder.names.idOf(name), 0, 0, 0, Number.NaN), value);
  }
}

describe('writing', () => {
  it('keeps headers, opcodes and comments in their order', () => {
    const text = `// A struck bar, made up for this test
<control>
default_path=Samples/

// Soft
<group>
hivel=63
<region> sample=a b.wav key=60 // first take
<region> sample=c.wav key=61
`;
    expect(writeSfz(read(text)).text).toBe(`// A struck bar, made up for this test

<control>
default_path=Samples/
// Soft

<group>
hivel=63
<region> sample=a b.wav key=60 // first take
<region> sample=c.wav key=61
`);
  });

  it('uses the line end that is asked for', () => {
    expect(writeSfz(read('<group> tune=1 <region> key=60'), { lineEnd: '\r\n' }).text).toBe(
      '<group>\r\ntune=1\r\n<region> key=60\r\n',
    );
  });

  it('keeps every line of a block comment behind its own mark', () => {
    expect(writeSfz(read('/* one\n two */\n<region> key=60')).text).toBe('// one\n// two\n<region> key=60\n');
  });

  it('writes variables and included files out and says so', () => {
    const instrument = read('#define $K 60\n<region> key=$K\n#include "b.sfz"', {
      'b.sfz': '<region> key=61',
    });
    const { text, notes } = writeSfz(instrument);
    expect(text).toBe('<region> key=60\n<region> key=61\n');
    expect(
      notes.map(({ kind, start, end }) => `${kind}: ${instrument.sources[0].text.slice(start, end)}`),
    ).toEqual(['approximated: #define $K 60', 'approximated: #include "b.sfz"']);
  });

  it('leads samples back to the folder that they are in', () => {
    expect(writeSfz(read('<region> sample=x/a.wav'), { move: { from: '/b', to: '/a' } }).text).toBe(
      '<region> sample=../b/x/a.wav\n',
    );
  });

  it('opens an outer header again where nested text goes back to it', () => {
    const builder = new InstrumentBuilder('xml', 0);
    builder.enterSource('a.xml', '');
    builder.openHeader(HeaderKind.master, 0, 0);
    add(builder, { tune: '7' });
    const inMaster = builder.scope();
    builder.openHeader(HeaderKind.group, 0, 0);
    add(builder, { lovel: '64' });
    builder.openHeader(HeaderKind.region, 0, 0);
    add(builder, { key: '60' });
    builder.restore(inMaster);
    builder.openHeader(HeaderKind.region, 0, 0);
    add(builder, { key: '61' });
    builder.restore({ global: -1, master: -1, group: -1 });
    builder.openHeader(HeaderKind.region, 0, 0);
    add(builder, { key: '62' });
    const instrument = builder.finish();
    const { text, notes } = writeSfz(instrument);
    expect(regions(read(text))).toEqual([
      { tune: 7, lovel: 64, lokey: 60, hikey: 60, pitch_keycenter: 60 },
      { tune: 7, lokey: 61, hikey: 61, pitch_keycenter: 61 },
      { lokey: 62, hikey: 62, pitch_keycenter: 62 },
    ]);
    expect(notes).toEqual([]);
  });

  it.each([
    'two\nlines',
    'a=b',
    'a //b',
    ' blank',
    'blank ',
    'x <region> y',
    'x #define $A 1',
    'one\rtwo',
    'a /*b',
  ])('leaves out the value %j, which SFZ text cannot hold, and says so', (value) => {
    const builder = new InstrumentBuilder('xml', 0);
    builder.enterSource('a.xml', '');
    builder.openHeader(HeaderKind.region, 0, 0);
    add(builder, { region_label: value, key: '60' });
    const { text, notes } = writeSfz(builder.finish());
    expect(text).toBe('<region> key=60\n');
    expect(notes).toMatchObject([{ kind: 'dropped' }]);
    expect(notes[0].message).toContain('region_label');
  });

  it.each([
    'a b',
    'C#4 (take 2).wav',
    'a/b\\c',
    'x & y',
    '100%',
    'Größe',
    'a#define',
    'x > y',
    '1 < 2',
    '*sine',
    '',
  ])('keeps the value %j', (value) => {
    const builder = new InstrumentBuilder('xml', 0);
    builder.enterSource('a.xml', '');
    builder.openHeader(HeaderKind.region, 0, 0);
    add(builder, { region_label: value, key: '60' });
    const { text, notes } = writeSfz(builder.finish());
    const again = read(text);
    expect(effectiveValues(again, again.regions[0])).toMatchObject({ region_label: value, lokey: 60 });
    expect(notes).toEqual([]);
  });
});
