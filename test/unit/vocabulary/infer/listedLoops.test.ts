import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const withLoop = (loop: (start: number, length: number) => string) =>
  `<viola><zones><zone low="48" high="54" plays="#p"/><zone low="55" high="61" plays="#q"/></zones>
  <pool><wave id="p" file="p.wav" root="51">${loop(9000, 4000)}</wave><wave id="q" file="q.wav" root="58">${loop(7000, 2500)}</wave></pool></viola>`;

describe('loops of samples in a list', () => {
  it.each([
    ['repeat', 'first', 'length'],
    ['loop', 'start', 'len'],
    ['schleife', 'anfang', 'laenge'],
    ['boucle', 'debut', 'longueur'],
  ])('end by their length: <%s %s %s>', (element, start, length) => {
    const text = withLoop((from, long) => `<${element} ${start}="${from}" ${length}="${long}"/>`);
    expect(valuesIn(text, 'loop_start', 'loop_end')).toEqual(['9000 12999', '7000 9499']);
  });

  it('end so where child elements hold both', () => {
    const text = withLoop((from, long) => `<loopStart>${from}</loopStart><loopLength>${long}</loopLength>`);
    expect(valuesIn(text, 'loop_start', 'loop_end')).toEqual(['9000 12999', '7000 9499']);
  });

  it('do not end by the length of the file', () => {
    const text = withLoop((from) => `<loop start="${from}"/>`).replaceAll('<wave ', '<wave length="40000" ');
    expect(valuesIn(text, 'loop_start', 'loop_end', 'end')).toEqual(['9000 - -', '7000 - -']);
  });
});
