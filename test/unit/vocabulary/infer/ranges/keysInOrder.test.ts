import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const keys = (text: string) => valuesIn(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter');
const one = (sample: string, key: number) => `${sample} ${key} ${key} ${key}`;

// How people lay sounds of a drum kit on keys one after the other (common practice).
describe('regions that play one key each in their order', () => {
  it('take the keys from the one that an element around them names; empty ones take up theirs', () => {
    const text = `<padBank firstNote="36">
      <about>Pads run upwards from firstNote, one key each, in the order in which they stand; an empty pad takes up its key too.</about>
      <pad>kick.wav</pad><pad/><pad>rim &amp; stick.wav</pad><pad gainDb="-4">hat.wav</pad>
    </padBank>`;
    expect(readInferred(text).regions.map((region) => /sample=(.*?\.wav)/.exec(region)?.[1])).toEqual([
      'kick.wav',
      'rim & stick.wav',
      'hat.wav',
    ]);
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['36 36 36', '38 38 38', '39 39 39']);
  });

  it.each([
    '<Trommeln ersteTaste="48"><!-- Die Klänge liegen der Reihe nach auf den Tasten ab ersteTaste, je eine Taste --><Klang datei="a.wav"/><Klang datei="b.wav"/></Trommeln>',
    '<batterie><!-- Les sons se suivent, une touche chacun, à partir de la touche 48 --><son fichier="a.wav"/><son fichier="b.wav"/></batterie>',
    '<caja primeraNota="48"><!-- cada toma ocupa una tecla, en orden, desde primeraNota --><toma archivo="a.wav"/><toma archivo="b.wav"/></caja>',
    '<set van="48"><!-- elke klank krijgt één toets, op volgorde, vanaf "van" --><klank bestand="a.wav"/><klank bestand="b.wav"/></set>',
    '<bank startNote="48"><slot>a.wav</slot><slot>b.wav</slot></bank>',
  ])('are read in %s', (text) => {
    expect(keys(text)).toEqual([one('a.wav', 48), one('b.wav', 49)]);
  });

  it('are told, less surely where nothing says so', () => {
    const { decisions } = readInferred('<bank startNote="48"><slot>a.wav</slot><slot>b.wav</slot></bank>');
    expect(decisions.find(({ id }) => id === 'keysInOrder')).toMatchObject({
      isGuess: true,
      confidence: 0.6,
    });
  });

  it('are not taken where regions have root keys', () => {
    const text = '<bank startNote="48"><slot root="60">a.wav</slot><slot root="61">b.wav</slot></bank>';
    expect(keys(text)).toEqual(['a.wav 48 60 60', 'b.wav 61 127 61']);
  });

  it('are not taken from ranges of a whole instrument', () => {
    const text = '<bank lowKey="36" highKey="60"><slot>a.wav</slot><slot>b.wav</slot></bank>';
    expect(keys(text)).toEqual(['a.wav 36 60 -', 'b.wav 36 60 -']);
  });
});
