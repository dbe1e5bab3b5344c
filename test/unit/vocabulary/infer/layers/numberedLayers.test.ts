import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const velocities = (text: string) => valuesIn(text, 'lovel', 'hivel');
/** Two bars of the same layers, the numbers of which stand in `name`. */
const bars = (comment: string, name: string, ...numbers: readonly string[]) => `<vibes>
  <!-- ${comment} -->
  <bar low="50" high="54" root="52">${numbers.map((one) => `<hit ${name}="${one}" wav="d_${one}.wav"/>`).join('')}</bar>
  <bar low="55" high="59" root="57">${numbers.map((one) => `<hit ${name}="${one}" wav="g_${one}.wav"/>`).join('')}</bar>
</vibes>`;
/** Equal parts of the velocities 1 to 127 (our choice, as in tables). */
const [thirds, halves] = [
  ['1 42', '43 84', '85 127'],
  ['1 63', '64 127'],
];

describe('numbers of velocity layers', () => {
  it('share the velocities out where their name speaks of velocities', () => {
    expect(velocities(bars('middle C is 60', 'dynamic', '1', '2', '3'))).toEqual([...thirds, ...thirds]);
    expect(velocities(bars('middle C is 60', 'velocity', '0', '1'))).toEqual([...halves, ...halves]);
  });

  it('go by what the text says of their order', () => {
    const turned = [...thirds].reverse();
    expect(velocities(bars('layer 1 is the loudest, layer 3 the softest', 'layer', '1', '2', '3'))).toEqual([
      ...turned,
      ...turned,
    ]);
    expect(velocities(bars('couches : 1 = la plus douce, 2 = la plus forte', 'couche', '1', '2'))).toEqual([
      ...halves,
      ...halves,
    ]);
    expect(velocities(bars('lagen van zacht naar hard genummerd', 'laag', '1', '2'))).toEqual([
      ...halves,
      ...halves,
    ]);
  });

  it('go by words for loudness in the names of the samples', () => {
    const text = `<bells>
      <bell low="60" high="63" root="62" layer="1">b62_loud.wav</bell><bell low="60" high="63" root="62" layer="2">b62_soft.wav</bell>
      <bell low="64" high="67" root="65" layer="1">b65_loud.wav</bell><bell low="64" high="67" root="65" layer="2">b65_soft.wav</bell>
    </bells>`;
    expect(velocities(text)).toEqual(['64 127', '1 63', '64 127', '1 63']);
  });

  it('may stand on groups, of as many as an element around says', () => {
    const text = `<bank layers="3"><!-- layers: 1 = softest, 3 = loudest -->
      <layer number="1"><zone file="a1.wav" from="40" to="47" root="43"/><zone file="b1.wav" from="48" to="55" root="50"/></layer>
      <layer number="2"><zone file="a2.wav" from="40" to="47" root="43"/><zone file="b2.wav" from="48" to="55" root="50"/></layer>
    </bank>`;
    expect(velocities(text)).toEqual(['1 42', '1 42', '43 84', '43 84']);
  });

  it('reach up to the next layer where keys lack louder ones', () => {
    const text = `<marimba><!-- capa 1 la más suave, capa 3 la más fuerte -->
      <lamina desde="48" hasta="52" nota="50"><toma capa="1">m1.wav</toma><toma capa="2">m2.wav</toma><toma capa="3">m3.wav</toma></lamina>
      <lamina desde="53" hasta="57" nota="55"><toma capa="1">n1.wav</toma><toma capa="2">n2.wav</toma></lamina>
    </marimba>`;
    expect(velocities(text).map((one) => one.replace('-', '127'))).toEqual([...thirds, '1 42', '43 127']);
  });

  it('are told to be shared out', () => {
    const { decisions } = readInferred(bars('middle C is 60', 'dynamic', '1', '2', '3'));
    const message = '"dynamic" numbers velocity layers: the velocities 1 to 127 are shared out among them.';
    expect(decisions.find((one) => one.message === message)?.isGuess).toBe(true);
  });

  it.each([
    ['layers that sound together', 'both layers always sound together', 'layer'],
    ['numbers of takes', 'three takes of each', 'take'],
    ['numbers of hits', 'middle C is 60', 'n'],
  ])('are not taken from %s', (_, comment, name) => {
    expect(velocities(bars(comment, name, '1', '2'))).toEqual(['- -', '- -', '- -', '- -']);
  });
});
