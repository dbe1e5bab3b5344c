import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const text = (list: string, name: string, first: string, second: string) => `<box>
  <layers>${list}</layers>
  <tine key="60" low="58" high="61"><rec ${name}="${first}">a1.wav</rec><rec ${name}="${second}">a2.wav</rec></tine>
  <tine key="64" low="62" high="66"><rec ${name}="${first}">b1.wav</rec><rec ${name}="${second}">b2.wav</rec></tine>
</box>`;

describe('velocities of layers in a list', () => {
  it.each([
    [
      'upper ends',
      '<layer name="soft" upto="50"/><layer name="hard" upto="127"/>',
      'layer',
      'soft',
      'hard',
      '1 50',
      '51 127',
    ],
    [
      'lower ends',
      '<level sign="A" from="1"/><level sign="B" from="70"/>',
      'level',
      'A',
      'B',
      '1 69',
      '70 127',
    ],
    [
      'what ends lie above',
      '<nuance sign="p" above="0"/><nuance sign="f" above="60"/>',
      'nuance',
      'p',
      'f',
      '1 60',
      '61 127',
    ],
    [
      'what ends lie below',
      '<nuance sign="p" below="61"/><nuance sign="f" below="128"/>',
      'nuance',
      'p',
      'f',
      '1 60',
      '61 127',
    ],
    ['ranges', '<dyn mark="p" vel="1-80"/><dyn mark="f" vel="81-127"/>', 'dyn', 'p', 'f', '1 80', '81 127'],
    [
      'numbers',
      '<niveau no="1"><max>40</max></niveau><niveau no="2"><max>127</max></niveau>',
      'niveau',
      '1',
      '2',
      '1 40',
      '41 127',
    ],
  ])('are read by %s', (_, list, name, first, second, soft, hard) => {
    expect(valuesIn(text(list, name, first, second), 'lovel', 'hivel')).toEqual([soft, hard, soft, hard]);
  });
});

describe('velocities of a region beside those of the entry that it refers to', () => {
  it.each(['velocity="1-127" mould="hard"', 'mould="hard" velocity="1-127"'])('count: %s', (own) => {
    const xml = `<bakery><mould id="soft" velocity="1-64"/><mould id="hard" velocity="65-127"/>
      <bun ${own} wav="a.wav" low="30" high="35" root="32"/>
      <bun mould="soft" wav="b.wav" low="36" high="40" root="38"/>
      <bun mould="hard" wav="c.wav" low="36" high="40" root="38"/></bakery>`;
    expect(valuesIn(xml, 'lovel', 'hivel')).toEqual(['1 127', '1 64', '65 127']);
  });

  it.each([
    ['places between left and right', 'pan="0"', 'pan="25"'],
    ['tunings', 'tune="0"', 'tune="127"'],
    ['numbers from 0 that no name calls lower ends', 'metres="0"', 'metres="25"'],
  ])('are not taken from %s', (_, near, far) => {
    const list = `<stand sign="near" ${near}/><stand sign="far" ${far}/>`;
    expect(valuesIn(text(list, 'stand', 'near', 'far'), 'lovel', 'hivel')).toEqual([
      '- -',
      '- -',
      '- -',
      '- -',
    ]);
  });

  it('leave places between left and right to the regions that refer to them', () => {
    const list = '<stand sign="near" pan="0"/><stand sign="far" pan="25"/>';
    expect(valuesIn(text(list, 'stand', 'near', 'far'), 'pan')).toEqual(['0', '25', '0', '25']);
  });
});
