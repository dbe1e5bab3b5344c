import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const strike = (key: number, wav: string, more: string) =>
  `<strike wav="${wav}.wav" low="${key}" high="${key + 2}" root="${key + 1}" ${more}/>`;

/** Two takes of one range of keys, three of another and one alone, as position and count. */
const strikes = (said: string, position: string, count: string) => {
  const more = (one: number, of: number) => `${position}="${one}" ${count}="${of}"`;
  return `<gongs>${said && `<!-- ${said} -->`}${strike(40, 'a', more(1, 2))}${strike(40, 'b', more(2, 2))}${[
    1, 2, 3,
  ]
    .map((one) => strike(50, `c${one}`, more(one, 3)))
    .join('')}${strike(60, 'd', more(1, 1))}</gongs>`;
};

describe('a position among takes and how many there are', () => {
  it.each([
    ['take', 'takes', 'take / takes: which of how many recordings that follow one another in turn'],
    ['take', 'takes', ''],
    ['turn', 'turns', ''],
    ['nr', 'outOf', 'nr/outOf: number of the take and how many there are, in turn'],
    ['go', 'goes', 'go and goes: which of how many takes'],
    ['var', 'vars', 'var/vars = welche von wie vielen Aufnahmen, reihum'],
    ['round', 'rounds', 'round robin: round of rounds'],
  ])('%s and %s by "%s"', (position, count, said) => {
    expect(valuesIn(strikes(said, position, count), 'seq_position', 'seq_length')).toEqual([
      '1 2',
      '2 2',
      '1 3',
      '2 3',
      '3 3',
      '1 1',
    ]);
  });
});
