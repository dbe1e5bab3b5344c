import { describe, expect, it } from 'vitest';
import { noteSpellingOf } from '../../../../server/vocabulary/infer/decideForms/noteSpelling';

const name = { kind: 'key', written: 'name' } as const;

describe('how a document spells notes', () => {
  it.each([
    ['c3 f3 db3', undefined, 'c db d eb e f gb g ab a bb b'],
    ['C3 Bb3', undefined, 'C Db D Eb E F Gb G Ab A Bb B'],
    ['Do3 Fa#3', 'syllables', 'Do Do# Re Re# Mi Fa Fa# Sol Sol# La La# Si'],
    ['DO3 FA3 LAb4', 'syllables', 'DO REb RE MIb MI FA SOLb SOL LAb LA SIb SI'],
    [
      'Fá3 Dó3 Sol\u266f2',
      'syllables',
      'Dó Dó\u266f Ré Ré\u266f Mi Fá Fá\u266f Sol Sol\u266f Lá Lá\u266f Si',
    ],
    ['Ré3 La3', 'syllables', 'Do Do# Ré Ré# Mi Fa Fa# Sol Sol# La La# Si'],
    ['Cis3 H3', 'german', 'C Cis D Dis E F Fis G Gis A Ais H'],
    ['des3 h2', 'german', 'c des d es e f ges g as a b h'],
  ] as const)('%s', (texts, naming, names) => {
    const form = naming === undefined ? name : { ...name, naming };
    expect(noteSpellingOf(texts.split(' '), form)).toBe(names);
  });

  it.each(['C3 F#3', '60 61', 'C D', ''])('is none of its own in "%s"', (texts) => {
    expect(noteSpellingOf(texts.split(' '), name)).toBeUndefined();
  });
});
