import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../../server/model/effectiveValues';
import { vocabularyNotation } from '../../../../../server/vocabulary/vocabularyNotation';
import { readInferred, valuesIn } from '../inferred';

const asked = ['lokey', 'hikey', 'pitch_keycenter'];

// A sound on one key alone is its own root key in the open SFZ format too (`key`).
describe('single keys among ranges of keys', () => {
  it('are root keys too, on elements around', () => {
    const text = `<batería>
      <pieza nota="36"><golpe archivo="b1.wav" vel="1-89"/><golpe archivo="b2.wav" vel="90-127"/></pieza>
      <pieza nota="38-40" raiz="39"><golpe archivo="c.wav" vel="1-127"/></pieza>
      <pieza nota="42"><golpe archivo="h.wav" vel="1-127"/></pieza>
    </batería>`;
    expect(valuesIn(text, ...asked)).toEqual(['36 36 36', '36 36 36', '38 40 39', '42 42 42']);
  });

  it.each([
    [
      '<hit note="C1" wav="a.wav"/><hit note="D1" wav="b.wav"/><hit note="A1 - B1" base="A1" wav="c.wav"/>',
      'note names',
      ['24 24 24', '26 26 26', '33 35 33'],
    ],
    [
      '<hit key="36" wav="a.wav"/><hit key="38" wav="b.wav"/><hit key="40-45" wav="c.wav"/>',
      'no root keys',
      ['36 36 36', '38 38 38', '40 45 -'],
    ],
    [
      '<hit root="30" key="36" wav="a.wav"/><hit key="38" wav="b.wav" root="31"/><hit key="40-45" wav="c.wav"/>',
      'root keys before and behind',
      ['36 36 30', '38 38 31', '40 45 -'],
    ],
  ])('are read in %s: %s', (hits, _, values) => {
    expect(valuesIn(`<kit><!-- middle C is C4 -->${hits}</kit>`, ...asked)).toEqual(values);
  });

  it('are told', () => {
    const { decisions } = readInferred(
      '<kit><hit key="36" wav="a.wav"/><hit key="38" wav="b.wav"/><hit key="40-45" wav="c.wav"/></kit>',
    );
    expect(decisions.find(({ id }) => id === 'singleRoots')?.isGuess).toBe(true);
  });

  it('are not written as root keys', () => {
    const text =
      '<kit><hit key="36" wav="a.wav"/><hit key="38" wav="b.wav"/><hit key="40-45" root="41" wav="c.wav"/></kit>';
    const { vocabulary } = readInferred(text);
    if (!vocabulary) throw new Error('no vocabulary');
    const notation = vocabularyNotation(vocabulary);
    const written = notation.write(notation.read(text, { path: 'a.xml' }), {});
    const again = notation.read(written.text, { path: 'a.xml' });
    const roots = [...again.regions].map((region) => effectiveValues(again, region).pitch_keycenter);
    expect(roots).toEqual([36, 38, 41]);
  });
});
