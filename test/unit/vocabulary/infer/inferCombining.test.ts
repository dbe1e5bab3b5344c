import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** Two groups whose regions have some values of their own. */
function bank(rules: string, ofGroups = ''): string {
  return `<dulzaina>${rules}
    <row gain="-4" tune="6" pan="-30" ${ofGroups}>
      <reed wav="d1.wav" low="50" high="54" root="52" gain="-1" pan="10"/>
      <reed wav="d2.wav" low="55" high="59" root="57" tune="-2"/></row>
    <row gain="-2" tune="-3" pan="30" ${ofGroups}>
      <reed wav="d3.wav" low="60" high="64" root="62" tune="9" gain="3"/>
      <reed wav="d4.wav" low="65" high="69" root="67" pan="0"/></row></dulzaina>`;
}

const told = (text: string) => readInferred(text).decisions.filter(({ id }) => id.endsWith('.adds'));
const sums = (text: string) =>
  readInferred(text).regions.map((region) => {
    const values = new Map(region.split(' ').map((one) => one.split('=') as [string, string]));
    const sum = (name: string) => Number(values.get(name) ?? 0) + Number(values.get(`group_${name}`) ?? 0);
    return `${sum('volume')} ${sum('tune')}`;
  });

const [added, replaced] = [
  ['-5 6', '-4 4', '1 6', '-2 -3'],
  ['-1 6', '-4 -2', '3 9', '-2 -3'],
];

describe('how values of outer elements go with those of regions, value by value', () => {
  it.each([
    [
      'rules that name the value',
      '<rules><rule value="tune" combine="add"/><rule value="gain" combine="add"/></rules>',
    ],
    [
      'rules in German',
      '<regeln><regel wert="Stimmung" art="addieren"/><regel wert="Pegel" art="summieren"/></regeln>',
    ],
    ['an attribute for each', '<nesting tune="sum" gain="cumulative"/>'],
    ['an element for each', '<nesting><tune>additive</tune><gain>additive</gain></nesting>'],
    ['an element for each with an attribute', '<tune how="stack"/><gain how="plus"/>'],
  ])('are added by %s', (_, rules) => {
    expect(sums(bank(rules))).toEqual(added);
    expect(told(bank(rules)).every(({ confidence }) => confidence > 0.9)).toBe(true);
  });

  it('are added by an attribute of the outer elements, which is not told as unread tuning', () => {
    const text = bank('', 'tuneMode="add" gainMode="add"');
    expect(sums(text)).toEqual(added);
    expect(
      readInferred(text)
        .decisions.map(({ message }) => message)
        .join(),
    ).not.toContain('tuneMode');
  });

  it('are replaced, also those of one kind while others are added', () => {
    const rules = (tune: string, gain: string) =>
      `<rules><rule of="tune" is="${tune}"/><rule of="gain" is="${gain}"/></rules>`;
    expect(sums(bank(rules('replace', 'override')))).toEqual(replaced);
    expect(told(bank(rules('replace', 'override')))).toEqual([]);
    expect(sums(bank(rules('add', 'replace')))).toEqual(['-1 6', '-4 4', '3 6', '-2 -3']);
  });

  it('are told where positions between left and right would have to be added', () => {
    const text = bank(
      '<rules><rule of="pan" is="add"/><rule of="tune" is="add"/><rule of="gain" is="add"/></rules>',
    );
    expect(valuesIn(text, 'pan')).toEqual(['10', '-30', '30', '0']);
    expect(
      told(text)
        .map(({ message }) => message)
        .join(),
    ).toMatch(/"pan" of <row> is the pan/);
  });
});
