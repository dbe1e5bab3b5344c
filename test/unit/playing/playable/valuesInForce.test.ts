import { describe, expect, it } from 'vitest';
import { ValuesInForce } from '../../../../server/playing/playable/valuesInForce';
import { readSfz } from '../../../../server/sfz/read';

const valuesOf = (text: string) => new ValuesInForce(readSfz(text, { path: 'a.sfz' }));

/** sfzformat.com: a region inherits from the headers before it; inner goes before outer, later before earlier. */
const layered = `<global> volume=1
<region>
<group> volume=2 volume=3 tune=7
<region> volume=x
<region> volume=4
<group>
<region>`;

describe('values in force in all regions', () => {
  it('are the innermost and last, and something else where there is none', () => {
    const values = valuesOf(layered);
    expect([...values.numbers('volume', new Float64Array(4), -9)]).toEqual([1, -9, 4, 1]);
    expect([...values.numbers('tune', new Int16Array(4), -9)]).toEqual([-9, 7, 7, -9]);
    expect([...values.numbers('pan', new Float64Array(4), 5)]).toEqual([5, 5, 5, 5]);
  });

  it('are found by any name of an opcode', () => {
    const values = valuesOf('<region> pitch=5');
    expect([...values.numbers('tune', new Int16Array(1), 0)]).toEqual([5]);
    expect([...values.numbers('pitch', new Int16Array(1), 0)]).toEqual([5]);
  });

  it('stand where their parameters stand', () => {
    const values = valuesOf(layered);
    const { instrument } = values;
    const found = values.parametersOf('volume');
    expect(Array.from(found ?? [], (at) => instrument.valueText(at))).toEqual(['1', 'x', '4', '1']);
    expect([...(values.parametersOf('tune') ?? [])].map((at) => at >= 0)).toEqual([false, true, true, false]);
    expect(values.parametersOf('pan')).toBeUndefined();
  });

  it('know the names that are used, and all places of one from the last on', () => {
    const values = valuesOf(layered);
    const { names } = values.instrument;
    expect([...values.namesUsed()].map((name) => names.text(name)).sort()).toEqual(['tune', 'volume']);
    const places = [...values.parametersNamed(names.idOf('volume'))];
    expect(places.map((at) => values.instrument.valueText(at))).toEqual(['4', 'x', '3', '2', '1']);
    expect([...values.parametersNamed(names.idOf('pan'))]).toEqual([]);
    expect([...valuesOf('<region> pan=5').namesUsed()].map((name) => names.text(name))).toEqual(['pan']);
  });
});

describe('keys in force', () => {
  const keys = (text: string, offset = 0) => [
    ...valuesOf(text).keys('sw_last', new Int16Array(valuesOf(text).instrument.regions.length), () => offset),
  ];

  it('are numbers or note names, moved by their offset, on the keyboard', () => {
    expect(keys('<region> sw_last=24 <region> sw_last=c4 <region>')).toEqual([24, 60, -1]);
    expect(keys('<region> sw_last=24', 12)).toEqual([36]);
    expect(keys('<region> sw_last=120', 12)).toEqual([127]);
    expect(keys('<region> sw_last=5', -12)).toEqual([0]);
    expect(keys('<region> sw_last=0 <region> sw_last=127')).toEqual([0, 127]);
    expect(keys('<region> sw_last=24.9')).toEqual([24]);
  });

  it('are none where the value is no key', () => {
    expect(keys('<region> sw_last=-1 <region> sw_last=128 <region> sw_last=x', 12)).toEqual([-1, -1, -1]);
    expect(keys('<region>')).toEqual([-1]);
  });

  it('are moved by what each region is moved by', () => {
    const values = valuesOf('<global> sw_last=10 <region> <region>');
    const [first] = values.instrument.regions;
    const moved = values.keys('sw_last', new Int16Array(2), (region) => (region === first ? 1 : 2));
    expect([...moved]).toEqual([11, 12]);
  });
});

describe('words in force', () => {
  const words = (text: string) => {
    const values = valuesOf(text);
    const column = new Uint8Array(values.instrument.regions.length);
    return [...values.words('trigger', ['attack', 'release'], column, 9)];
  };

  it('are their positions, in any letter case', () => {
    expect(words('<region> trigger=attack <region> trigger=RELEASE <region>')).toEqual([0, 1, 9]);
    expect(words('<region> trigger=legato <region> trigger=attack')).toEqual([9, 0]);
    expect(words('<group> trigger=release <region> <region> <region> trigger=attack <region>')).toEqual([
      1, 1, 0, 1,
    ]);
    expect(words('<region> <region>')).toEqual([9, 9]);
  });
});
