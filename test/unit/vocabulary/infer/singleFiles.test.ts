import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const keys = (at: number) => `low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}"`;

describe('a file in the place of the turns of other zones', () => {
  it.each([
    ['<takes><take no="1">a.wav</take><take no="2">b.wav</take></takes>', '<only>c.wav</only>'],
    ['<take no="1" file="a.wav"/><take no="2" file="b.wav"/>', '<only file="c.wav"/>'],
  ])('is that of its zone: %s', (takes, only) => {
    const zones = [takes, takes.replaceAll('.wav', '2.wav'), only];
    const text = `<marimba>${zones.map((zone, at) => `<bar ${keys(at)}>${zone}</bar>`).join('')}</marimba>`;
    expect(valuesIn(text, 'sample', 'lokey')).toEqual([
      'a.wav 40',
      'b.wav 40',
      'a2.wav 45',
      'b2.wav 45',
      'c.wav 50',
    ]);
  });

  it('is none beside turns, and told', () => {
    const zone = (at: number, more = '') =>
      `<bar ${keys(at)}><take>${at}.wav</take><take>${at}b.wav</take>${more}</bar>`;
    const { regions, unread } = readInferred(
      `<marimba>${zone(0)}${zone(1, '<rattle>r.wav</rattle>')}${zone(2)}</marimba>`,
    );
    expect(regions).toHaveLength(6);
    expect(unread).toEqual([
      '"r.wav" of <rattle> is not read, and no region plays it. Check whether it is a sample of the instrument.',
    ]);
  });
});

describe('audio files that no region plays', () => {
  const bars = (inside: string) =>
    `<marimba>${inside}<bar file="lo/a.wav" ${keys(0)}/><bar file="lo/b.wav" ${keys(1)}/></marimba>`;

  it('are told by themselves, the first of them by name', () => {
    const files = [1, 2, 3, 4, 5].map((at) => `<extra>x${at}.wav</extra>`).join('');
    expect(readInferred(bars(`<extras>${files}</extras>`)).unread).toEqual([
      '"x1.wav", "x2.wav", "x3.wav" and 2 more of <extra> are not read, and no region plays them. Check whether they are samples of the instrument.',
    ]);
  });

  it.each(['<reverb><room>hall.wav</room></reverb>', '<notes><of>A.wav</of></notes>'])(
    'are not those of an effect, or that are played: %s',
    (inside) => {
      const { unread } = readInferred(bars(inside));
      expect(unread.some((one) => one.includes('no region plays'))).toBe(false);
    },
  );
});
