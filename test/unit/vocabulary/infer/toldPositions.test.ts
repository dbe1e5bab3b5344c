import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const bows = (said: string, ...values: string[]) =>
  `<fiddle>${said && `<!-- ${said} -->`}\n${values
    .map(
      (value, at) =>
        `<note wav="b${at}.wav" bottom="${40 + 5 * at}" top="${44 + 5 * at}" root="${42 + 5 * at}" ${value}/>`,
    )
    .join('\n')}</fiddle>`;

describe('a bare start beside the points of a loop', () => {
  const offsets = (text: string) => valuesIn(text, 'offset', 'lovel');

  it.each([
    ['start', 'loop points and start in frames'],
    ['start', 'start and loop points are in samples'],
    ['begin', 'begin, loopA and loopB are counted in frames'],
    ['start', 'Anfang der Schleife und start in Frames'],
    ['start', ''],
    ['from', ''],
    ['begin', 'all lengths in frames'],
  ])('%s by "%s"', (name, said) => {
    const loops = (from: number) => `loopFrom="${from}" loopTo="${from * 4}"`;
    const text = bows(said, `${loops(22000)} ${name}="0"`, `${loops(29111)} ${name}="220"`, `${name}="48"`);
    expect(offsets(text)).toEqual(['0 -', '220 -', '48 -']);
  });

  it('of small numbers', () => {
    const loop = 'loopStart="9100" loopEnd="41000"';
    expect(offsets(bows('', `${loop} start="0"`, `${loop} start="55"`, `${loop} start="12"`))).toEqual([
      '0 -',
      '55 -',
      '12 -',
    ]);
    expect(offsets(bows('start in frames', `start="0"`, `start="55"`, `start="12"`))).toEqual([
      '0 -',
      '55 -',
      '12 -',
    ]);
  });

  it('in seconds and milliseconds', () => {
    const text = bows(
      'start and end in ms',
      'start="0" end="900"',
      'start="12" end="1200"',
      'start="30" end="800"',
    );
    expect(offsets(text)).toEqual(['0 -', '529 -', '1323 -']);
  });
});
