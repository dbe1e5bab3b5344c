import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const groups = (name: string, first: string, second: string) => `<harpsichord>
  <set naam="strings" ${name}="${first}"><zone file="a.wav" low="36" high="41" root="38"/><zone file="b.wav" low="42" high="47" root="44"/></set>
  <set naam="thump" ${name}="${second}"><zone file="c.wav" low="36" high="41" root="38"/><zone file="d.wav" low="42" high="47" root="44"/></set>
</harpsichord>`;

// How people say that a sound starts as a key goes down or comes up (from memory).
describe('what starts regions, in a few words', () => {
  it.each([
    ['start', 'bij aanslag', 'bij loslaten van de toets'],
    ['beginn', 'beim Anschlagen', 'beim Loslassen der Taste'],
    ['begin', 'key down', 'when the key comes up'],
    ['debut', 'à l’appui de la touche', 'au relâchement de la touche'],
    ['inicio', 'al pulsar', 'al soltar la tecla'],
    ['suona', 'alla pressione del tasto', 'al rilascio del tasto'],
    ['börjar', 'vid anslag', 'när tangenten släpps'],
  ])('is read in "%s", though its name could be the place where samples start', (...words) => {
    expect(valuesIn(groups(...words), 'trigger', 'group_label')).toEqual([
      'attack strings',
      'attack strings',
      'release thump',
      'release thump',
    ]);
  });

  it('leaves frames where samples start alone, even where layers of the same keys have different ones', () => {
    const text = `<cembalo>
      <zona file="a.wav" da="36" a="41" base="38" inizio="120"/><zona file="b.wav" da="42" a="47" base="44" inizio="90"/>
      <zona file="c.wav" da="36" a="41" base="38" inizio="0"/><zona file="d.wav" da="42" a="47" base="44" inizio="0"/>
    </cembalo>`;
    expect(valuesIn(text, 'offset', 'lovel')).toEqual(['120 -', '90 -', '0 -', '0 -']);
  });

  it('takes no name without an ending for the file beside one with an ending', () => {
    const text =
      '<set><zone naam="low" bestand="a.wav" low="36" high="41" root="38"/><zone naam="top" bestand="b.wav" low="42" high="47" root="44"/></set>';
    expect(valuesIn(text, 'sample')).toEqual(['a.wav', 'b.wav']);
  });
});
