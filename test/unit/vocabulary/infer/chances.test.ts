import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const zone = (file: string, key: number, more: string) =>
  `<zone file="${file}.wav" low="${key}" high="${key + 1}" root="${key}" ${more}/>`;
const knocks = (name: string, chances: readonly string[]) =>
  `<box>${zone('tone', 60, '')}${chances.map((chance, at) => zone(`k${at}`, 30, `${name}="${chance}"`)).join('')}</box>`;

describe('chances of regions of the same keys', () => {
  it.each([
    ['chance', ['20%', '30%', '50%']],
    ['probability', ['0.2', '0.3', '0.5']],
    ['Wahrscheinlichkeit', ['20 %', '30 %', '50 %']],
    ['probabilité', ['0,2', '0,3', '0,5']],
    ['kans', ['20', '30', '50']],
  ])('share out what one sounds of at a time: %s', (name, chances) => {
    const text = knocks(name, chances);
    expect(valuesIn(text, 'lorand', 'hirand')).toEqual(['- -', '- 0.2', '0.2 0.5', '0.5 -']);
    const { unread, decisions } = readInferred(text);
    expect(unread).toEqual([]);
    expect(decisions.some(({ message }) => message.includes('chance'))).toBe(true);
  });

  it('may stand in an element of theirs, be rounded and begin anew', () => {
    const set = (name: string) =>
      [1, 2, 3]
        .map(
          (at) =>
            `<zone file="${name}${at}.wav" low="30" high="31" root="30"><pick probability="33%"/></zone>`,
        )
        .join('');
    expect(valuesIn(`<box>${set('a')}${set('b')}</box>`, 'lorand', 'hirand')).toEqual([
      '- 0.33',
      '0.33 0.66',
      '0.66 -',
      '- 0.33',
      '0.33 0.66',
      '0.66 -',
    ]);
  });

  it('leave the rest silent where there is one', () => {
    expect(valuesIn(knocks('chance', ['35%']), 'lorand', 'hirand')).toEqual(['- -', '- 0.35']);
  });

  it('are not read, which is told, where they make up no whole', () => {
    const text = knocks('chance', ['60%', '70%']);
    expect(valuesIn(text, 'lorand', 'hirand')).toEqual(['- -', '- -', '- -']);
    expect(readInferred(text).unread.join(' ')).toContain('chance');
  });
});
