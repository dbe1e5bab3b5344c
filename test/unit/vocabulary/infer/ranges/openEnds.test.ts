import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

/** Where one end alone is written, the outermost range needs none (common practice). */
describe('a range without the one end that others have', () => {
  it('begins above those that follow each other, in each layer', () => {
    const text =
      '<set><map highkey="43" highvel="80" file="a.wav"/><map highkey="55" highvel="80" file="b.wav"/><map highvel="80" file="c.wav"/><map highkey="49" lowvel="81" file="d.wav"/><map lowvel="81" file="e.wav"/></set>';
    expect(valuesIn(text, 'sample', 'lokey', 'hikey')).toEqual([
      'a.wav - 43',
      'b.wav 44 55',
      'c.wav 56 -',
      'd.wav - 49',
      'e.wav 50 -',
    ]);
  });

  it('reaches as far as is said, and is told of', () => {
    const text =
      '<pipes><!-- The first begins at key 24, the last goes up to key 96. --><pipe upTo="43" wave="a.wav" root="40"/><pipe upTo="55" wave="b.wav" root="50"/><pipe wave="c.wav" root="60"/></pipes>';
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['24 43', '44 55', '56 96']);
    const { decisions } = readInferred(text);
    expect(decisions.map(({ message }) => message).join('\n')).toContain('"upTo" is missing in 1 region.');
  });

  it('sounds on all keys where the others have root keys and it has none', () => {
    const text =
      '<Satz><Teil bis="59" Datei="a.wav" Grundton="55"/><Teil bis="71" Datei="b.wav" Grundton="66"/><Teil Datei="klick.wav"/></Satz>';
    expect(valuesIn(text, 'sample', 'lokey')).toEqual(['a.wav -', 'b.wav 60', 'klick.wav -']);
  });
});
