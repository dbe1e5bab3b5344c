import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const files = '<wave>a.wav</wave><wave>b.wav</wave><wave>c.wav</wave>';
const text = (numbers: readonly number[], says = '', list = files) =>
  `<box>${says}<waves>${list}</waves><tines>${numbers
    .map(
      (number, at) =>
        `<tine wave="${number}" low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}"/>`,
    )
    .join('')}</tines></box>`;

describe('positions in a list of samples that it does not have', () => {
  it.each([
    [
      'counted from 0, as is said',
      text([0, 2, 9], '<!-- The waves are counted from 0. -->'),
      ['a.wav 40', 'c.wav 45'],
    ],
    ['counted from 0, as all are used', text([0, 1, 2, 9]), ['a.wav 40', 'b.wav 45', 'c.wav 50']],
    ['counted from 1, as all are used', text([9, 1, 2, 3]), ['a.wav 45', 'b.wav 50', 'c.wav 55']],
  ])('leave their region out: %s', (_, xml, read) => {
    expect(valuesIn(xml, 'sample', 'lokey')).toEqual(read);
    const messages = readInferred(xml).decisions.map(({ message }) => message);
    expect(messages).toContain('No <wave> has the position "9": 1 region is left out.');
  });

  it('are not guessed at where either way of counting would do', () => {
    expect(valuesIn(text([1, 2, 9], '', `${files}<wave>d.wav</wave>`), 'sample')).toEqual(['-']);
  });
});
