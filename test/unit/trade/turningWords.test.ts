import { describe, expect, it } from 'vitest';
import { readClause } from '../../../server/trade/phrases/clause';
import { startInTitle } from '../../../server/trade/readings/startInTitle';
import { levelChangeIn } from '../../../server/trade/statements/amounts/levelChange';
import { bracketsCountIn } from '../../../server/trade/statements/bracketsCount';
import { endsIn } from '../../../server/trade/statements/playing/statedEnds';
import { turnStatement } from '../../../server/trade/statements/playing/turns';

// Words from dictionaries of each language (from memory); that all places know them alike is our choice.
describe('words that turn a sentence round', () => {
  it.each(['The takes of a row alternate', 'Las tomas se alternan', 'Próbki zmieniają się'])(
    'takes %s for what it says',
    (text) => {
      expect(turnStatement([text])).toBe(text);
    },
  );

  it.each([
    'The takes of a row don\u2019t alternate',
    'Kein Take: abwechselnd',
    'Las tomas nunca se alternan',
    'Żadna próbka: na zmianę',
    'Aucune prise: en alternance',
  ])('hears that %s says the opposite', (text) => {
    expect(turnStatement([text])).toBeUndefined();
  });

  it.each([
    ['the soft ones 3 dB down', undefined],
    ['sample no. 3: 3 dB down', undefined],
    ['the soft ones, apart from the last, 3 dB down', 'it speaks of exceptions'],
    ['de zachte, tenzij kort, 3 dB zachter', 'it speaks of exceptions'],
    ['miękkie z wyjątkiem ostatniej 3 dB ciszej', 'it speaks of exceptions'],
  ])('tells of exceptions in %s', (text, doubt) => {
    expect(levelChangeIn(text)?.doubt).toBe(doubt);
  });

  it.each(['plays from 36 to 40', 'soa de 36 a 40'])('reads %s', (clause) => {
    expect(readClause(clause)?.meaning).toBe('key_range');
  });

  it.each([
    'never plays from 36 to 40',
    'speelt nooit van 36 tot 40',
    'nunca soa de 36 a 40',
    'joue seulement de 36 à 40',
    'hrá pouze od 36 do 40',
  ])('does not read %s as if it had no such word', (clause) => {
    expect(readClause(clause)).toBeUndefined();
  });

  it('hears that a zone sounds on release alone', () => {
    expect(readClause('sounds only when the key is released')?.meaning).toBe('trigger');
  });

  it('takes `no` for `at the` before a release in Portuguese', () => {
    expect(startInTitle('Ruídos no release')).toBe('release');
    expect(startInTitle('Nunca no release')).toBeUndefined();
  });

  it.each([
    ['the soft ones were 3 dB down already', true],
    ['de zachte reeds 3 dB zachter', true],
    ['deja fait : les douces 3 dB moins fort', true],
    ['de zachte 3 dB zachter, ja', false],
  ])('hears what has been done in %s', (text, isDone) => {
    expect(levelChangeIn(text)?.doubt === 'it may tell what has been done already').toBe(isDone);
  });

  it('knows a frame that is never played in more languages', () => {
    expect(endsIn('koniec pętli: próbka nigdy nie jest odtwarzana')?.are).toBe('behind');
    expect(endsIn('Schleifenende: kein gespieltes Sample')?.are).toBe('behind');
  });

  it('counts values in brackets, but not where they are said not to', () => {
    expect(bracketsCountIn(['The values in brackets count'])).toBeDefined();
    expect(bracketsCountIn(["The values in brackets aren't valid"])).toBeUndefined();
    expect(bracketsCountIn(['Waarden tussen haakjes gelden nooit'])).toBeUndefined();
  });
});
