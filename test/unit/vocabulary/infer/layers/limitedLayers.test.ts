import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const values = (text: string) => valuesIn(text, 'lokey', 'hikey', 'lovel', 'hivel');

/** Two keys with layers of which `name` gives one end. */
const layers = (name: string, first: readonly string[], second: readonly string[]) => `<piano>
  <key low="45" high="50" root="48">${first.map((end, at) => `<hit ${name}="${end}" wav="a${at}.wav"/>`).join('')}</key>
  <key low="51" high="57" root="54">${second.map((end, at) => `<hit ${name}="${end}" wav="b${at}.wav"/>`).join('')}</key>
</piano>`;

// The loudest velocity is 127 (MIDI 1.0); that a layer begins above the one below it is common practice.
describe('one end of velocity layers alone', () => {
  it.each(['upTo', 'bis', 'jusque', 'fino', 'flam'])(
    'is the upper one in "%s", within elements that give the keys',
    (name) => {
      expect(values(layers(name, ['45', '92', '127'], ['70', '127']))).toEqual([
        '45 50 - 45',
        '45 50 46 92',
        '45 50 93 127',
        '51 57 - 70',
        '51 57 71 127',
      ]);
    },
  );

  it('is the lower one where a name says so', () => {
    expect(values(layers('from', ['1', '64'], ['1', '50', '100']))).toEqual([
      '45 50 1 63',
      '45 50 64 -',
      '51 57 1 49',
      '51 57 50 99',
      '51 57 100 -',
    ]);
  });

  it.each([
    ['ends below the loudest', 'flam', ['45', '92'], ['70', '90']],
    ['levels', 'volume', ['64', '127'], ['90', '127']],
    ['numbers from 0 that no name calls lower ends', 'flam', ['0', '40'], ['0', '50']],
  ] as const)('is not taken from %s', (_, name, first, second) => {
    expect(values(layers(name, first, second))).toEqual([
      ...first.map(() => '45 50 - -'),
      ...second.map(() => '51 57 - -'),
    ]);
  });

  it('takes a sentence about layers for no way to share keys out', () => {
    const text = `<batería><!-- cada golpe empieza justo por encima del anterior y llega hasta max -->
      <tambor nota="36"><golpe max="60" onda="b1.wav"/><golpe max="127" onda="b2.wav"/></tambor>
      <tambor nota="40"><golpe max="80" onda="c1.wav"/><golpe max="127" onda="c2.wav"/></tambor>
    </batería>`;
    expect(valuesIn(text, 'hikey', 'lovel', 'hivel')).toEqual([
      '36 - 60',
      '36 61 127',
      '40 - 80',
      '40 81 127',
    ]);
  });

  it('leaves upper keys of zones what they are', () => {
    const text = `<piano><section low="21" high="127">
      <zone upto="40" root="36" wav="a.wav"/><zone upto="60" root="50" wav="b.wav"/><zone upto="127" root="80" wav="c.wav"/>
    </section></piano>`;
    expect(valuesIn(text, 'hikey', 'hivel')).toEqual(['40 -', '60 -', '127 -']);
  });
});
