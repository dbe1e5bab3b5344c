import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** The messages of what was decided without being sure. */
function guesses(text: string): string[] {
  return readInferred(text).decisions.flatMap(({ isGuess, message, evidence }) =>
    isGuess ? [`${message} ${evidence.join(' ')}`] : [],
  );
}

describe('a value of which the text says that its element is not used', () => {
  const slat = (state: string, file: string, low: number) =>
    `<slat state="${state}" file="${file}" low="${low}" high="${low + 4}"/>`;
  const slats = (legend: string) =>
    `<shelf>${legend}${slat('a', 'x.wav', 40)}${slat('b', 'y.wav', 45)}${slat('a', 'z.wav', 50)}</shelf>`;

  it.each([
    ['behind a colon', '<!-- state="b": not used, kept until it is recorded anew -->'],
    ['in a sentence', '<!-- state="b" means that the slat is not played -->'],
    ['without quotes', '<!-- state=b: unused -->'],
    ['beside another value', '<!-- state="a" is played, state="b" is not played -->'],
    ['in an element', '<about><note>state="b": unused</note></about>'],
    ['in a list behind the name', '<!-- state: a = fine, b = dropped (not loaded) -->'],
    ['in German', '<!-- state="b" bedeutet: wird nicht gespielt -->'],
  ])('leaves out the elements that have it, and not the one behind the words: %s', (_, legend) => {
    expect(valuesIn(slats(legend), 'sample')).toEqual(['x.wav', 'z.wav']);
    expect(guesses(slats(legend)).join()).toContain('is left out');
  });

  it('may stand in an element of its own', () => {
    const slat = (use: number, file: string, low: number) =>
      `<slat><use>${use}</use><file>${file}</file><low>${low}</low><high>${low + 4}</high></slat>`;
    const text = `<shelf><!-- use=0: not used -->${slat(1, 'x.wav', 40)}${slat(0, 'y.wav', 45)}</shelf>`;
    expect(valuesIn(text, 'sample')).toEqual(['x.wav']);
  });

  it('still is the element behind where nothing else tells it from others than its file', () => {
    const slat = (file: string, low: number) =>
      `<slat><file>${file}</file><low>${low}</low><high>${low + 4}</high></slat>`;
    const text = `<shelf>${slat('x.wav', 40)}<!-- not used any more -->${slat('y.wav', 45)}${slat('z.wav', 50)}</shelf>`;
    expect(valuesIn(text, 'sample')).toEqual(['x.wav', 'z.wav']);
    expect(guesses(text).join()).toContain('"y.wav" is left out');
  });

  it('still is the element behind where nothing names a value', () => {
    expect(valuesIn(slats('<!-- not used -->'), 'sample')).toEqual(['y.wav', 'z.wav']);
  });
});

describe('a number around the regions that moves keys', () => {
  const rods = [48, 53, 58]
    .map((low) => `<rod file="r${low}.wav" low="${low}" high="${low + 4}" root="${low + 2}"/>`)
    .join('');
  const moved = (by: number) => [48, 53, 58].map((low) => `${low + by} ${low + by + 4} ${low + by + 2} -`);

  it.each([
    ['key-shift', '12', 'key-shift is to be added to every key number below'],
    ['noteOffset', '-12', 'noteOffset is added to all note numbers'],
    ['move', '3', 'move wird zu allen Tastennummern addiert'],
    ['octave-shift', '12', 'octave-shift moves every key of the list by whole octaves', '1'],
    ['versatz', '-5', 'Zu jeder Tastennummer wird versatz addiert'],
  ])('is added to all of them where the text says so: %s', (name, by, says, written = by) => {
    const text = `<rack ${name}="${written}"><!-- ${says} -->${rods}</rack>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter', 'transpose')).toEqual(moved(Number(by)));
    expect(guesses(text).join()).toContain(`Keys are moved by ${by}`);
  });

  it('is left out where the text says that it is in the keys already', () => {
    const text = `<rack transpose="-12"><!-- transpose is already contained in the keys below -->${rods}</rack>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter', 'transpose')).toEqual(moved(0));
    expect(guesses(text).join()).toContain('"transpose" of <rack> is left out');
  });

  it('is a transposition where the text speaks of the sound', () => {
    const text = `<rack key-shift="12"><!-- key-shift is added to the key when it is played --> ${rods}</rack>`;
    expect(valuesIn(text, 'lokey', 'transpose')).toEqual(['48 12', '53 12', '58 12']);
  });

  it('leaves a question where no text says what it moves', () => {
    const text = `<rack key-shift="12">${rods}</rack>`;
    expect(valuesIn(text, 'lokey', 'transpose')).toEqual(['48 12', '53 12', '58 12']);
    expect(guesses(text).join()).toContain('transposes the sound and leaves the keys');
    expect(guesses(`<rack transpose="12">${rods}</rack>`).join()).not.toContain('leaves the keys');
  });
});
