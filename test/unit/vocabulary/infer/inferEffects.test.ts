import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const tones =
  '<tones><t snd="a.wav" lo="40" hi="43" root="41" level-db="-3"/><t snd="b.wav" lo="44" hi="47" root="45" level-db="-1"/></tones>';

function levels(around: string): string[] {
  return valuesIn(`<case title="x">${around}${tones}</case>`, 'volume', 'global_volume');
}

describe('levels of effects and of what stands among them are none of the instrument', () => {
  it.each([
    ['an equaliser', '<fx><eq lowDb="-2" gain="3"/></fx>'],
    ['an equaliser of its own', '<equalizer low="-2 dB" gain-db="-4"/>'],
    ['an Italian equaliser', '<equalizzatore><guadagno>-4</guadagno></equalizzatore>'],
    ['a stage among effects', '<chain><reverb wet="0.2"/><warmth gain-db="-6"/></chain>'],
    ['a stage in elements', '<rack><delay><mix>0.3</mix></delay><stage><gain>-6</gain></stage></rack>'],
    ['bands of an unknown element', '<tilting low-db="-2" high-db="2"/>'],
  ])('%s', (_, around) => {
    expect(levels(around)).toEqual(['-3 -', '-1 -']);
  });

  it('but one beside an effect and the regions is', () => {
    expect(levels('<reverb wet="0.2"/><overall gain-db="-6"/>').join()).not.toBe('-3 -,-1 -');
  });
});
