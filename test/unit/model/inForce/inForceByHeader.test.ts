import { describe, expect, it } from 'vitest';
import { inForceByHeader } from '../../../../server/model/inForce/inForceByHeader';
import type { Instrument } from '../../../../server/model/instrument';
import { readSfz } from '../../../../server/sfz/read';

/** The parameters chained from the last to the first, name by name. */
function chainsOf(instrument: Instrument) {
  const { names, parameters } = instrument;
  const last = new Int32Array(names.size).fill(-1);
  const before = new Int32Array(parameters.count);
  for (let parameter = 0; parameter < parameters.count; parameter++) {
    const name = instrument.canonicalName(parameter);
    before[parameter] = last[name];
    last[name] = parameter;
  }
  return { last, before };
}

/** The value in force in each header, `-` where there is none. */
function values(text: string, name: string): string[] | undefined {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const { names } = instrument;
  const column = inForceByHeader(instrument, chainsOf(instrument), names.canonical(names.idOf(name)));
  return column && Array.from(column, (parameter) => (parameter < 0 ? '-' : instrument.valueText(parameter)));
}

/** sfzformat.com: a header inherits from the headers around it; inner goes before outer, and the last of several before the others. */
describe('the value in force in each header', () => {
  it.each([
    ['<region> volume=1', ['1']],
    ['<region> volume=1 volume=2', ['2']],
    ['<region> volume=1 tune=3 volume=2', ['2']],
    ['<group> volume=1 <region>', ['1', '1']],
    ['<group> volume=1 <region> volume=2', ['1', '2']],
    ['<group> <region> volume=2', ['-', '2']],
    ['<group> volume=1 <region> <group> <region>', ['1', '1', '-', '-']],
    ['<global> volume=1 <master> <group> <region>', ['1', '1', '1', '1']],
    [
      '<global> volume=1 <master> volume=2 <group> <region> <master> <region>',
      ['1', '2', '2', '2', '1', '1'],
    ],
    ['<region> tune=1 <region> volume=1 <region> tune=2', ['-', '1', '-']],
    ['<group> volume=1 <curve> <region>', ['1', '-', '1']],
    ['<region> <region> <region> volume=1', ['-', '-', '1']],
    ['<region> volume=1 <region> <region>', ['1', '-', '-']],
  ])('%s', (text, expected) => {
    expect(values(text, 'volume')).toEqual(expected);
  });

  it('is not asked for where nothing sets it', () => {
    expect(values('<region> tune=1', 'volume')).toBeUndefined();
    expect(values('<region> tune=1', 'a_name_of_nothing')).toBeUndefined();
  });

  it('is found by any name of an opcode', () => {
    expect(values('<group> pitch=1 <region>', 'tune')).toEqual(['1', '1']);
  });
});
