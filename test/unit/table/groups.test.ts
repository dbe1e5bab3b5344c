import { describe, expect, it } from 'vitest';
import { HeaderKind } from '../../../server/model/headerKinds';
import { readZoneTable } from '../../../server/table/readTable';
import { table } from './tableRegions';

/** Each header with its own parameters, as `kind name=value …`. */
function headers(text: string): string[] {
  const { instrument } = readZoneTable(text);
  return Array.from({ length: instrument.headers.count }, (_, header) => {
    const own: string[] = [instrument.kind(header) === HeaderKind.group ? 'group' : 'region'];
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++)
      own.push(`${instrument.names.text(instrument.name(parameter))}=${instrument.valueText(parameter)}`);
    return own.join(' ');
  });
}

describe('values that all regions of a group share', () => {
  it('stand at the group, in a stable order', () => {
    expect(
      headers(
        table(
          'Sample | Group | Key | Pan | Gain | High vel | Low vel | Loop',
          'a.wav | A | 60 | L20 | -3 | 63 | 1 | on',
          'b.wav | A | 61 | L20 | -3 | 63 | 1 | on',
          'c.wav | B | 60 | L20 | -3 | 127 | 64 | on',
          'd.wav | B | 61 | R20 | -4 | 127 | 64 | off',
        ),
      ),
    ).toEqual([
      'group group_label=A lovel=1 hivel=63 volume=-3 pan=-20 loop_mode=loop_continuous',
      'region sample=a.wav key=60',
      'region sample=b.wav key=61',
      'group group_label=B lovel=64 hivel=127',
      'region sample=c.wav key=60 pan=-20 volume=-3 loop_mode=loop_continuous',
      'region sample=d.wav key=61 pan=20 volume=-4 loop_mode=no_loop',
    ]);
  });

  it('stay with a region that is alone, or in no group', () => {
    const text = table(
      'Sample | Group | Key | Gain',
      'b.wav | | 61 | -3',
      'c.wav | | 62 | -3',
      'a.wav | A | 60 | -3',
    );
    expect(headers(text)).toEqual([
      'region sample=b.wav key=61 volume=-3',
      'region sample=c.wav key=62 volume=-3',
      'group group_label=A',
      'region sample=a.wav key=60 volume=-3',
    ]);
  });
});

describe('suggestions', () => {
  const suggestions = (text: string) => readZoneTable(text).suggestions;

  it('name the regions of each part', () => {
    const text = table(
      'Sample | Key',
      'x_p_rr1.wav | 60',
      'x_p_rr2.wav | 60',
      'x_f_rr1.wav | 60',
      'y.wav | 61',
    );
    expect(suggestions(text)).toEqual([
      {
        kind: 'layers',
        message: expect.stringMatching(/3 regions .*velocity layers: p, f/),
        parts: [
          { label: 'p', regions: [0, 1] },
          { label: 'f', regions: [2] },
        ],
      },
      {
        kind: 'round_robins',
        message: expect.any(String),
        parts: [
          { label: 'rr1', regions: [0, 2] },
          { label: 'rr2', regions: [1] },
        ],
      },
    ]);
  });

  it('are left out where a column says the same, or all names do', () => {
    expect(suggestions(table('Sample | Key | RR', 'x_rr1.wav | 60 | 1', 'x_rr2.wav | 60 | 2'))).toEqual([]);
    expect(suggestions(table('Sample | Key', 'x_p_1.wav | 60', 'x_p_2.wav | 61'))).toEqual([]);
  });

  it('tell the sections between blank lines', () => {
    const text = table('Sample | Key', 'a.wav | 60', '', 'b.wav | 61', 'c.wav | 62');
    expect(suggestions(text)).toMatchObject([
      { kind: 'sections', parts: [{ regions: [0] }, { regions: [1, 2] }] },
    ]);
  });
});
