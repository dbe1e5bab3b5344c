import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const low = (attributes: string) =>
  `<cello ${attributes}><zone sound="a.wav" root="36" upto="39"/><zone sound="b.wav" root="42" upto="45"/><zone sound="c.wav" root="48" upto="51"/></cello>`;
const high = (attributes: string) =>
  `<cello ${attributes}><zone sound="a.wav" root="38" from="36"/><zone sound="b.wav" root="43" from="41"/><zone sound="c.wav" root="48" from="46"/></cello>`;

// Each range starts above the one below it, so the lowest needs a key of its own (common practice).
describe('the key of the outermost zone', () => {
  it.each(['lowest="36"', 'tiefste="36"', 'firstKey="C2"', 'lowKey="36"'])(
    'is the low one in %s',
    (attributes) => {
      expect(valuesIn(low(attributes), 'lokey', 'hikey')).toEqual(['36 39', '40 45', '46 51']);
    },
  );

  it.each(['highest="60"', 'topKey="60"', 'última="60"'])('is the high one in %s', (attributes) => {
    expect(valuesIn(high(attributes), 'lokey', 'hikey')).toEqual(['36 40', '41 45', '46 60']);
  });

  it.each(['lowest="50"', 'lowVelocity="1"', 'lowpass="36"', 'name="36"'])(
    'is not taken from %s',
    (attributes) => {
      expect(valuesIn(low(attributes), 'lokey', 'hikey')).toEqual(['- 39', '40 45', '46 51']);
    },
  );
});
