import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const zone = (file: string, low: number, high: number) =>
  `<z file="${file}" lo="${low}" hi="${high}" root="${low + 4}"/>`;

/** Words for letting a key go are common practice; a section of its own holds what sounds then. */
describe('a section of regions that is named after letting a key go', () => {
  it.each([
    ['voci', 'rilasci'],
    ['voci', 'suoni_al_rilascio'],
    ['sons', 'relâchements'],
    ['Töne', 'Loslassgeräusche'],
    ['Töne', 'Nachklänge'],
    ['pijpen', 'naklanken'],
    ['dźwięki', 'puszczenia'],
    ['sonidos', 'sueltas'],
    ['pipes', 'tails'],
    ['voices', 'key-up-noises'],
  ])('starts them on release and is told: %s and %s', (one, other) => {
    const text = `<set><${one}>${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</${one}><${other}>${zone('r.wav', 40, 60)}</${other}></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -', 'r.wav release']);
    const told = readInferred(text).decisions.map(({ message }) => message);
    expect(told).toContain(`Regions inside <${other}> start when a key is released.`);
  });

  it('is none where the name is another one', () => {
    const text = `<set><voci>${zone('a.wav', 40, 50)}</voci><suoni>${zone('b.wav', 51, 60)}</suoni></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -']);
  });
});

describe('a region of another name in a section that is named after letting a key go', () => {
  it('is one too', () => {
    const text = `<set><zones>${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</zones><releases><release file="r.wav" lo="40" hi="60" root="50"/></releases></set>`;
    expect(valuesIn(text, 'sample', 'lokey', 'trigger')).toEqual([
      'a.wav 40 -',
      'b.wav 51 -',
      'r.wav 40 release',
    ]);
  });
});

describe('groups and regions that are named after letting a key go', () => {
  it.each([
    ['Tasten', 'Loslassen'],
    ['Voci', 'Rilasci'],
    ['Sustain', 'Note off'],
    ['Low', 'Key-off noise'],
  ])('start on release where others have another name, and it is told: %s and %s', (one, other) => {
    const text = `<set><group name="${one}">${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</group><group name="${other}">${zone('c.wav', 40, 50)}${zone('d.wav', 51, 60)}</group></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual([
      'a.wav -',
      'b.wav -',
      'c.wav release',
      'd.wav release',
    ]);
    const told = readInferred(text).decisions.map(({ message }) => message);
    expect(told).toContain(`"${other}" in "name" starts when a key is released.`);
  });

  it.each([
    ['Long release', 'Short release'],
    ['Release', 'Release noise'],
  ])('start as others do where no name or each one says so: %s and %s', (one, other) => {
    const text = `<set><group name="${one}">${zone('a.wav', 40, 50)}</group><group name="${other}">${zone('c.wav', 40, 50)}${zone('d.wav', 51, 60)}</group></set>`;
    expect(valuesIn(text, 'trigger')).toEqual(['-', '-', '-']);
  });
});
