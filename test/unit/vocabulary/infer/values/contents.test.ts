import { describe, expect, it } from 'vitest';
import { columnFactsOf } from '../../../../../server/vocabulary/infer/values/columnFacts';
import { readByUnit, readKeyTriple } from '../../../../../server/vocabulary/infer/values/contents';

const place = (name: string, ...texts: (string | undefined)[]) => ({
  name,
  texts,
  facts: columnFactsOf(texts),
});

function triple(...places: ReturnType<typeof place>[]) {
  const readings = readKeyTriple(places);
  return {
    targets: places.map((one) => readings.get(one)?.target),
    weights: new Set([...readings.values()].map(({ weight }) => weight)),
    evidence: [...readings.values()][0]?.evidence,
  };
}

/** A root key lies from the low to the high key of its zone, as whoever maps recordings puts it (common practice). */
describe('three places of keys', () => {
  const low = place('a', '36', '48', '60', '72');
  const root = place('b', '40', '54', '66', '78');
  const high = place('c', '47', '59', '71', '83');

  it.each([
    [
      [low, root, high],
      ['lokey', 'pitch_keycenter', 'hikey'],
    ],
    [
      [low, high, root],
      ['lokey', 'hikey', 'pitch_keycenter'],
    ],
    [
      [root, low, high],
      ['pitch_keycenter', 'lokey', 'hikey'],
    ],
    [
      [root, high, low],
      ['pitch_keycenter', 'hikey', 'lokey'],
    ],
    [
      [high, low, root],
      ['hikey', 'lokey', 'pitch_keycenter'],
    ],
    [
      [high, root, low],
      ['hikey', 'pitch_keycenter', 'lokey'],
    ],
  ])('are the low, the root and the high key in any order of places', (places, targets) => {
    expect(triple(...places).targets).toEqual(targets);
  });

  it('may be note names', () => {
    expect(triple(place('a', 'C2', 'C3'), place('b', 'E2', 'E3'), place('c', 'B2', 'B3')).targets).toEqual([
      'lokey',
      'pitch_keycenter',
      'hikey',
    ]);
  });

  it('are surer the more regions there are', () => {
    const weightOf = (rows: number) => {
      const cut = (name: string, from: number) =>
        place(name, ...Array.from({ length: rows }, (_, row) => String(from + 12 * row)));
      const { weights, evidence } = triple(cut('a', 36), cut('b', 40), cut('c', 47));
      expect(evidence).toContain(`all of ${rows} regions`);
      return [...weights][0] ?? 0;
    };
    expect(weightOf(4)).toBeGreaterThan(weightOf(3));
    expect(weightOf(3)).toBe(weightOf(2));
    expect(weightOf(2)).toBeGreaterThan(weightOf(1));
  });

  it('are told apart by their names where the values leave it open', () => {
    // Each zone starts with its root key: which of two equal places is which, only names tell.
    const first = place('x', '36', '48');
    const other = place('low', '36', '48');
    const top = place('y', '47', '59');
    const named = triple(first, other, top);
    expect(named.targets).toEqual(['pitch_keycenter', 'lokey', 'hikey']);
    const open = triple(first, place('z', '36', '48'), top);
    expect(open.targets).toContain('lokey');
    expect([...named.weights][0]).toBeGreaterThan([...open.weights][0] ?? 1);
    const byHigh = triple(place('x', '36', '48'), place('high', '47', '59'), place('y', '47', '59'));
    expect(byHigh.targets).toEqual(['lokey', 'hikey', 'pitch_keycenter']);
  });

  it.each([
    ['two places', [low, root]],
    ['four places', [low, root, high, place('d', '40', '50', '60', '70')]],
    ['no order in all rows', [low, root, place('c', '38', '59', '71', '83'), undefined].slice(0, 3)],
    ['all keys alike', [place('a', '36', '48'), place('b', '36', '48'), place('c', '36', '48')]],
    ['not whole', [low, root, place('c', '47.5', '59', '71', '83')]],
    ['past the keys', [low, root, place('c', '47', '59', '71', '128')]],
    ['below the keys', [place('a', '-1', '48', '60', '72'), root, high]],
    ['with a unit', [low, root, place('c', '47 dB', '59 dB', '71 dB', '83 dB')]],
    ['words', [low, root, place('c', 'x', 'y', 'z', 'w')]],
    ['empty', [low, root, place('c', undefined, undefined, undefined, undefined)]],
    ['counting', [low, root, place('c', '1', '2', '3', '4')]],
    ['constant', [low, root, place('c', '127', '127', '127', '127')]],
    ['only 0 and 1', [place('a', '0', '1', '0', '1'), root, high]],
  ])('are none: %s', (_, places) => {
    expect(
      triple(...places.filter((one) => one !== undefined)).targets.every((one) => one === undefined),
    ).toBe(true);
  });

  it('may lack a value here and there', () => {
    const { targets, evidence } = triple(low, root, place('c', '47', undefined, '71', '83'));
    expect(targets).toEqual(['lokey', 'pitch_keycenter', 'hikey']);
    expect(evidence).toContain('all of 3 regions');
  });
});

describe('what a unit behind the numbers says', () => {
  it.each([
    ['volume', ['-3 dB', '-6 dB'], 'dB'],
    ['tune', ['5 ct', '-7 ct'], 'ct'],
    ['tune', ['1 st', '2 st'], 'st'],
  ])('is %s in %j', (target, texts, unit) => {
    const reading = readByUnit(place('x', ...texts));
    expect(reading?.target).toBe(target);
    expect(reading?.evidence).toContain(`"${unit}"`);
  });

  it('is nothing for other units, or without one', () => {
    expect(readByUnit(place('x', '5 ms', '6 ms'))).toBeUndefined();
    expect(readByUnit(place('x', '5', '6'))).toBeUndefined();
  });
});
