import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { HeaderKind } from '../../../server/model/headerKinds';
import type { Instrument } from '../../../server/model/instrument';
import { keyOfNoteName } from '../../../server/model/keys';
import type { Included } from '../../../server/model/notation';
import { Parameter } from '../../../server/model/parameterNames';
import { readSfz } from '../../../server/sfz/read';

function read(text: string, included: Record<string, string> = {}): Instrument {
  const include = (path: string): Included =>
    path in included ? { kind: 'text', text: included[path] } : { kind: 'missing' };
  return readSfz(text, { path: 'main.sfz', include });
}

interface HeaderText {
  kind: 'global' | 'master' | 'group' | 'region' | 'curve';
  opcodes: [name: string, value: string][];
}

const key = fc.oneof(
  fc.integer({ min: -1, max: 127 }).map(String),
  fc.constantFrom('c4', 'F#3', 'eb-1', 'g9'),
);
const opcode: fc.Arbitrary<[string, string]> = fc.oneof(
  fc.tuple(fc.constantFrom('lokey', 'hikey', 'key', 'pitch_keycenter'), key),
  fc.tuple(fc.constantFrom('lovel', 'hivel'), fc.integer({ min: 0, max: 127 }).map(String)),
  fc.tuple(fc.constantFrom('volume', 'tune', 'loop_start', 'loopstart', 'made_up'), fc.nat(9).map(String)),
  fc.tuple(fc.constant('sample'), fc.constantFrom('a.wav', 'b c.wav')),
);
const header: fc.Arbitrary<HeaderText> = fc.record({
  kind: fc.constantFrom('global', 'master', 'group', 'region', 'region', 'region', 'curve'),
  opcodes: fc.array(opcode, { maxLength: 5 }),
});

const canonicalName = (name: string) => (name === 'loopstart' ? 'loop_start' : name);

/** What the rules of the format say of each region: a plain map from opcode to value, level by level. */
function byTheRules(headers: HeaderText[]): Map<string, string>[] {
  const levels = ['global', 'master', 'group'];
  const inForce: Map<string, string>[] = levels.map(() => new Map());
  const regions: Map<string, string>[] = [];
  for (const { kind, opcodes } of headers) {
    const own = new Map<string, string>();
    for (const [name, value] of opcodes) {
      const names = name === 'key' ? ['lokey', 'hikey', 'pitch_keycenter'] : [canonicalName(name)];
      for (const one of names) own.set(one, value);
    }
    const level = levels.indexOf(kind);
    if (level >= 0) {
      inForce[level] = own;
      for (let inner = level + 1; inner < levels.length; inner++) inForce[inner] = new Map();
    }
    if (kind === 'region') regions.push(new Map([...inForce, own].flatMap((values) => [...values])));
  }
  return regions;
}

const numberOf = (value: string) => keyOfNoteName(value) ?? Number(value);

// Headers and what they pass on, `key` and the order of values: public documentation of the open SFZ format (CC0 1.0),
// headers, key.
describe('inheritance', () => {
  it('follows the rules of the format', () => {
    fc.assert(
      fc.property(fc.array(header, { maxLength: 12 }), (headers) => {
        const text = headers
          .map(({ kind, opcodes }) =>
            [`<${kind}>`, ...opcodes.map(([name, value]) => `${name}=${value}`)].join('\n'),
          )
          .join('\n');
        const instrument = read(text);
        const expected = byTheRules(headers);
        expect(instrument.regions.length).toBe(expected.length);
        expected.forEach((values, number) => {
          const region = instrument.regions[number];
          const all = new Map(
            instrument
              .effectiveParameters(region)
              .map(({ name, parameter }) => [instrument.names.text(name), instrument.valueText(parameter)]),
          );
          expect(all).toEqual(values);
          for (const name of [
            'lokey',
            'hikey',
            'pitch_keycenter',
            'volume',
            'loop_start',
            'made_up',
            'sample',
          ]) {
            const parameter = instrument.effective(region, instrument.names.idOf(name));
            expect(parameter < 0 ? undefined : instrument.valueText(parameter)).toBe(values.get(name));
          }
          expect(instrument.lowKey[region]).toBe(numberOf(values.get('lokey') ?? '0'));
          expect(instrument.highKey[region]).toBe(numberOf(values.get('hikey') ?? '127'));
          expect(instrument.lowVelocity[region]).toBe(Number(values.get('lovel') ?? 1));
          expect(instrument.highVelocity[region]).toBe(Number(values.get('hivel') ?? 127));
          const root = numberOf(values.get('pitch_keycenter') ?? '60');
          expect(instrument.rootKey(region)).toBe(root < 0 ? 60 : root);
          expect(instrument.samplePath(region)).toBe(values.get('sample'));
          expect(instrument.regionNumber(region)).toBe(number);
        });
      }),
      { numRuns: 500 },
    );
  });

  it('tells the header that each value comes from', () => {
    const instrument = read('<global> volume=1 <group> volume=2 tune=3 <region> tune=4');
    const region = instrument.regions[0];
    const from = instrument
      .effectiveParameters(region)
      .map(({ name, header }) => `${instrument.names.text(name)} from ${instrument.headerName(header)}`);
    expect(from).toEqual(['volume from group', 'tune from region']);
    expect(instrument.headerName(instrument.enclosing(region, HeaderKind.global))).toBe('global');
    expect(instrument.enclosing(region, HeaderKind.master)).toBe(-1);
  });
});

// note_offset, octave_offset, -1 for off: public documentation of the open SFZ format (CC0 1.0); keys from 0 to 127: MIDI 1.0.
describe('keys and velocities', () => {
  const ranges = (text: string) => {
    const { regions, lowKey, highKey } = read(text);
    return [...regions].map((region) => [lowKey[region], highKey[region]]);
  };

  it('pass over values that are no keys', () => {
    expect(ranges('<region> lokey=40 lokey=soft <region> lokey=200 <region> hikey=-2')).toEqual([
      [40, 127],
      [0, 127],
      [0, 127],
    ]);
  });

  it('are moved by note and octave offset, within 0 and 127, and stay off where they are off', () => {
    expect(
      ranges('<control> note_offset=-2 octave_offset=1 <region> key=60 <region> lokey=-1 hikey=120'),
    ).toEqual([
      [70, 70],
      [-1, 127],
    ]);
    expect(ranges('<control> note_offset=-12 <region> lokey=5 <region> key=c4')).toEqual([
      [0, 127],
      [48, 48],
    ]);
  });

  it('move the root key too', () => {
    const instrument = read('<control> note_offset=3 <region> pitch_keycenter=60');
    expect(instrument.rootKey(instrument.regions[0])).toBe(63);
  });

  it('are moved by the control header before them', () => {
    expect(
      ranges(
        '<region> key=60 <control> note_offset=1 <region> key=60 <control> octave_offset=1 <region> key=60',
      ),
    ).toEqual([
      [60, 60],
      [61, 61],
      [72, 72],
    ]);
  });
});

// default_path is plain text before the sample, \ and / both part folders: public documentation of the open SFZ format (CC0
// 1.0), default_path.
describe('samples', () => {
  it('stand behind the default path as plain text, with / between folders', () => {
    const instrument = read(
      '<control> default_path=Samples\\Soft_ <region> sample=C4.wav <region> sample=*sine <region> key=1\n<control> <region> sample=x\\y.wav',
    );
    expect([...instrument.regions].map((region) => instrument.samplePath(region))).toEqual([
      'Samples/Soft_C4.wav',
      '*sine',
      undefined,
      'x/y.wav',
    ]);
  });

  it('that a group names are those of its regions', () => {
    const instrument = read('<group> sample=a.wav <region> key=1 <region> sample=b.wav <group> <region>');
    expect([...instrument.regions].map((region) => instrument.samplePath(region))).toEqual([
      'a.wav',
      'b.wav',
      undefined,
    ]);
  });
});

describe('labels', () => {
  it('of the nearest group win', () => {
    const instrument = read(
      '<global> global_label=All <region> <master> master_label=Ways <region> <group> group_label=Soft <region>',
    );
    expect([...instrument.regions].map((region) => instrument.groupLabel(region))).toEqual([
      'All',
      'Ways',
      'Soft',
    ]);
  });
});

describe('places in the text', () => {
  const text = '<group> volume=1\n<region> key=60 sample=a b.wav // why\n#include "b.sfz"\n<region> key=61';
  const instrument = read(text, { 'b.sfz': 'tune=5 <region> key=c2' });
  const cut = ({ source, start, end }: { source: number; start: number; end: number }) =>
    instrument.sources[source].text.slice(start, end);

  it('of parameters and headers reproduce what stands there', () => {
    const parameters = Array.from({ length: instrument.parameters.count }, (_, parameter) => parameter);
    expect(parameters.map((parameter) => cut(instrument.parameterSpan(parameter)))).toEqual([
      'volume=1',
      'key=60',
      'sample=a b.wav',
      'tune=5',
      'key=c2',
      'key=61',
    ]);
    expect(parameters.map((parameter) => instrument.parameterSource(parameter))).toEqual([0, 0, 0, 1, 1, 0]);
    expect(parameters.map((parameter) => instrument.headerOfParameter(parameter))).toEqual([
      0, 1, 1, 1, 2, 3,
    ]);
    expect([...instrument.regions].map((region) => cut(instrument.headerSpan(region)))).toEqual([
      '<region>',
      '<region>',
      '<region>',
    ]);
    expect([...instrument.regions].map((region) => instrument.headerSource(region))).toEqual([0, 1, 0]);
    expect(cut(instrument.bodySpan(0))).toBe('<group> volume=1');
  });

  it('are found again by their offset', () => {
    for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
      const { source, start, end } = instrument.parameterSpan(parameter);
      expect(instrument.parameterAt(source, start)).toBe(parameter);
      expect(instrument.parameterAt(source, end - 1)).toBe(parameter);
    }
    for (let header = 0; header < instrument.headers.count; header++) {
      const { source, start } = instrument.headerSpan(header);
      expect(instrument.headerAt(source, start)).toBe(header);
    }
    expect(instrument.headerAt(1, 0)).toBe(-1);
    expect(instrument.parameterAt(0, 0)).toBe(-1);
    expect(instrument.parameterAt(0, text.length)).toBe(5);
  });

  it('go on in the header of the main file where an included one has none', () => {
    const region = instrument.regions[0];
    expect(effectiveValues(instrument, region)).toMatchObject({ tune: 5, sample: 'a b.wav' });
    expect(instrument.own(region, Parameter.sample)).toBe(2);
    expect(instrument.own(region, Parameter.lovel)).toBe(-1);
  });
});
