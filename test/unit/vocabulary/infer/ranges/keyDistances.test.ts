import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const pipes = (name: string, ...texts: readonly string[]) =>
  `<organ>${texts.map((text, at) => `<pipe root="${48 + 6 * at}" ${name}="${text}" wav="p${at}.wav"/>`).join('')}</organ>`;

// So many keys below and above the root key (common practice).
describe('distances below and above the root key in one text', () => {
  it.each([
    ['span', '-3 +2', '-3 +2', '-3 +4'],
    ['reach', '-3..2', '-3..2', '-3..4'],
    ['around', '3/2', '3/2', '3/4'],
  ])('are the ends of the range in "%s"', (name, ...texts) => {
    expect(valuesIn(pipes(name, ...texts), 'lokey', 'hikey')).toEqual(['45 50', '51 56', '57 64']);
  });

  it('are told by a name that says range and numbers below and above', () => {
    expect(valuesIn(pipes('span', '-1 +1', '-2 +1'), 'lokey', 'hikey')).toEqual(['47 49', '52 55']);
  });
});
