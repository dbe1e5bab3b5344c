import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const places =
  '<places><place tag="N" called="near" level-db="-1"/><place tag="F" called="far" level-db="-4"/></places>';
const takes = (own: readonly (number | undefined)[]) =>
  own
    .map((db, at) => {
      const key = 40 + 3 * Math.floor(at / 2);
      const level = db === undefined ? '' : ` level-db="${db}"`;
      return `<take place="${'NF'[at % 2]}" file="${at}.wav" lo="${key}" hi="${key + 2}" root="${key}"${level}/>`;
    })
    .join('');
const sums = (text: string) =>
  valuesIn(text, 'volume', 'group_volume').map((both) =>
    both.split(' ').reduce((sum, one) => sum + (one === '-' ? 0 : Number(one)), 0),
  );

describe('levels of regions beside those of the entries of a list that they refer to', () => {
  it.each([
    'The level of a place is added to that of each take.',
    'Der Pegel eines Ortes wird zu dem der Aufnahme addiert.',
    'Le niveau du lieu s’ajoute à celui de la prise.',
  ])('are added where the text says so, also where some have none: %s', (said) => {
    const text = `<hall><!-- ${said} -->${places}<notes>${takes([-2, -6, -2.5, undefined])}</notes></hall>`;
    expect(sums(text)).toEqual([-3, -10, -3.5, -4]);
  });

  it('are added where all have both, which is asked', () => {
    const text = `<hall>${places}<notes>${takes([-2, -6, -2.5, -5])}</notes></hall>`;
    expect(sums(text)).toEqual([-3, -10, -3.5, -9]);
    const asked = readInferred(text).decisions.find(({ message }) => message.includes('is added to'));
    expect(asked?.message).toContain('<place>');
    expect(asked?.confidence).toBeLessThan(0.7);
    const [other] = asked?.choices ?? [];
    expect(
      other?.vocabulary.levels.at(-1)?.parameters.filter(({ parameter }) => parameter === 'volume'),
    ).toHaveLength(2);
  });

  it('go before them where few have one of their own, which is told', () => {
    const text = `<hall>${places}<notes>${takes([-8, undefined, undefined, undefined])}</notes></hall>`;
    expect(sums(text)).toEqual([-8, -4, -1, -4]);
    const messages = readInferred(text).decisions.map(({ message }) => message);
    expect(messages.some((message) => message.includes('that refers to it and gives none itself'))).toBe(
      true,
    );
  });

  it.each([
    'The level of a take replaces that of its place.',
    'A take inherits everything from its place and may change it.',
    'Eine Aufnahme übernimmt alles von ihrem Platz und kann es ändern.',
    'Une prise hérite de tout ce que dit son lieu et peut le changer.',
    'If a take has a level, its own value goes first.',
  ])('go before them where the text says so: %s', (said) => {
    expect(sums(`<hall><!-- ${said} -->${places}<notes>${takes([-2, -6, -2.5, -5])}</notes></hall>`)).toEqual(
      [-2, -6, -2.5, -5],
    );
  });
});
