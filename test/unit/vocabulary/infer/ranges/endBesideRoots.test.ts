import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const strings = (name: string, ...keys: (readonly [end: number | string, root: number | string])[]) =>
  `<zither>${keys.map(([end, root], at) => `<string wav="s${at}.wav" ${name}="${end}" root="${root}"/>`).join('')}</zither>`;

describe('one end of key ranges beside root keys', () => {
  it.each(['start', 'zib'])('is told by where it lies: %s', (name) => {
    const text = strings(name, [34, 37], [42, 44], [50, 53]);
    expect(valuesIn(text, 'lokey', 'hikey', 'offset')).toEqual(['34 41 -', '42 49 -', '50 - -']);
  });

  it('may be the high one, and a note name', () => {
    expect(valuesIn(strings('zib', [40, 37], [46, 44], [60, 53]), 'lokey', 'hikey')).toEqual([
      '- 40',
      '41 46',
      '47 60',
    ]);
    const named = strings('zib', ['A#2', 'C3'], ['F3', 'G3'], ['B3', 'D4']);
    expect(valuesIn(named, 'lokey', 'hikey')).toEqual(['46 52', '53 58', '59 -']);
  });

  it.each([
    ['startsAt', ['37 43 -', '44 52 -', '53 - -']],
    ['endsAt', ['- 37 -', '38 44 -', '45 53 -']],
  ])('is one of keys by its name where all are the roots themselves: %s', (name, read) => {
    expect(valuesIn(strings(name, [37, 37], [44, 44], [53, 53]), 'lokey', 'hikey', 'offset')).toEqual(read);
  });

  it('is a place in the sample beside ranges of keys', () => {
    const text = `<zither>${[37, 44, 53]
      .map(
        (key) => `<string wav="${key}.wav" low="${key}" high="${key + 3}" startsAt="${key}" root="${key}"/>`,
      )
      .join('')}</zither>`;
    expect(valuesIn(text, 'lokey', 'offset')).toEqual(['37 37', '44 44', '53 53']);
  });

  it('is none where it lies elsewhere', () => {
    const text = strings('start', [34, 37], [30, 44], [50, 53]);
    expect(valuesIn(text, 'lokey', 'offset')).toEqual(['0 34', '41 30', '49 50']);
  });
});

describe('an end beside root keys, where an element around gives the end of all', () => {
  const tubes = (name: string, around: string, ends: readonly number[]) =>
    `<tubes>${around}${ends
      .map((end, at) => `<tube ${name}="${end}" root="${50 + 6 * at}">t${at}.wav</tube>`)
      .join('')}</tubes>`;

  it.each([
    ['start', '<info><topKey>80</topKey></info>'],
    ['begin', '<top-key>80</top-key>'],
    ['entry', '<info highest-key="80"/>'],
  ])('"%s" holds low keys', (name, around) => {
    expect(valuesIn(tubes(name, around, [47, 54, 61, 66]), 'lokey', 'hikey', 'offset')).toEqual([
      '47 53 -',
      '54 60 -',
      '61 65 -',
      '66 80 -',
    ]);
  });

  it('"stop" holds high keys', () => {
    const text = tubes('stop', '<info><bottomKey>40</bottomKey></info>', [52, 58, 64, 71]);
    expect(valuesIn(text, 'lokey', 'hikey', 'end')).toEqual(['40 52 -', '53 58 -', '59 64 -', '65 71 -']);
  });
});
