import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const bank = (said: string, name: string, inner = '', holder = 'program') =>
  `<shelf ${said}>${['Dusk', 'Dawn', 'Noon']
    .map(
      (one, at) =>
        `<${holder} ${name}="${name === 'no' ? at + 1 : one}" ${inner.replace('#', String(20 + at))}>
          <bit wav="${one}1.wav" low="40" high="59" root="50"/><bit wav="${one}2.wav" low="60" high="80" root="70"/></${holder}>`,
    )
    .join('')}</shelf>`;
const samples = (text: string) => valuesIn(text, 'sample');
const all = ['Dusk1.wav', 'Dusk2.wav', 'Dawn1.wav', 'Dawn2.wav', 'Noon1.wav', 'Noon2.wav'];

describe('programs of which one is loaded', () => {
  it.each([
    ['selected="Dawn"', 'title'],
    ['currentProgram="Dawn"', 'title'],
    ['aktiv="Dawn"', 'name'],
    ['selected="2"', 'no'],
  ])('by %s, are read without the others, which is told', (said, name) => {
    expect(samples(bank(said, name))).toEqual(['Dawn1.wav', 'Dawn2.wav']);
    const told = readInferred(bank(said, name)).decisions.filter(({ message }) =>
      message.includes('left out'),
    );
    expect(told).toHaveLength(2);
    expect(told.every(({ isGuess, evidence }) => isGuess && evidence.join().includes(said))).toBe(true);
  });

  it.each([
    ['nothing says which', bank('colour="Dawn"', 'title')],
    ['a default is named', bank('default="Dawn"', 'title')],
    ['no program has the name', bank('selected="Night"', 'title')],
    ['key switches choose among them', bank('selected="Dawn"', 'title', 'keyswitch="#"')],
    ['layers are selected, as in an editor', bank('selected="Dawn"', 'title', '', 'layer')],
  ])('are all read where %s', (_, text) => {
    expect(samples(text)).toEqual(all);
  });
});
