import { describe, expect, it } from 'vitest';
import { readValue, writeValue } from '../../../../server/vocabulary/forms/valueForms';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { readInferred, valuesIn } from './inferred';

/** Root keys with how many keys below and above them each region reaches; the ranges follow one another. */
const reaches = [
  [38, 4, 3],
  [45, 3, 2],
  [50, 2, 4],
  [57, 2, 6],
] as const;
const ranges = ['34 38 41', '42 45 47', '48 50 54', '55 57 63'];
const asked = ['lokey', 'pitch_keycenter', 'hikey'];

function read(regionOf: (root: number, below: number, above: number) => string): string[] {
  return valuesIn(
    `<bank>${reaches.map(([root, below, above]) => regionOf(root, below, above)).join('')}</bank>`,
    ...asked,
  );
}

describe('ranges as distances from the root key', () => {
  it.each([
    ['below', 'above'],
    ['down', 'up'],
    ['unter', 'ueber'],
    ['giu', 'su'],
    ['abajo', 'arriba'],
    ['dessous', 'dessus'],
    ['qq', 'zz'],
  ])('%s and %s', (low, high) => {
    expect(
      read(
        (root, below, above) =>
          `<take file="t${root}.wav" root="${root}" ${low}="${below}" ${high}="${above}"/>`,
      ),
    ).toEqual(ranges);
    expect(
      read(
        (root, below, above) =>
          `<take><file>t${root}.wav</file><root>${root}</root><${low}>${below}</${low}><${high}>${above}</${high}></take>`,
      ),
    ).toEqual(ranges);
  });

  it('with minus signs below, and a unit behind', () => {
    expect(
      read(
        (root, below, above) => `<take file="t${root}.wav" root="${root}" down="-${below}" up="+${above}"/>`,
      ),
    ).toEqual(ranges);
    expect(
      read(
        (root, below, above) =>
          `<take file="t${root}.wav" root="${root}"><reach low="${below} st" high="${above} st"/></take>`,
      ),
    ).toEqual(ranges);
  });

  it('in one number for both sides', () => {
    const take = (root: number, by: number) => `<take file="t${root}.wav" key="${root}" around="${by}"/>`;
    expect(
      valuesIn(`<bank>${take(40, 2)}${take(45, 2)}${take(51, 3)}${take(56, 1)}</bank>`, ...asked),
    ).toEqual(['38 40 42', '43 45 47', '48 51 54', '55 56 57']);
  });

  it('in one number that is named after a range, of few regions', () => {
    const text = '<bank><t file="a.wav" root="40" reach="3"/><t file="b.wav" root="60" reach="5"/></bank>';
    expect(valuesIn(text, ...asked)).toEqual(['37 40 43', '55 60 65']);
    expect(readInferred(text).decisions.find(({ id }) => id === 'keyDistances')?.isGuess).toBe(true);
  });

  it('are told as assumed', () => {
    const { decisions } = readInferred(
      `<bank>${reaches.map(([root, a, b]) => `<take file="t${root}.wav" root="${root}" below="${a}" above="${b}"/>`).join('')}</bank>`,
    );
    expect(decisions.find(({ id }) => id === 'keyDistances')?.isGuess).toBe(true);
  });

  it('are no distances where the ends lie around the root keys', () => {
    expect(
      read(
        (root, below, above) =>
          `<take file="t${root}.wav" root="${root}" below="${root - below}" above="${root + above}"/>`,
      ),
    ).toEqual(ranges);
  });
});

describe('a distance from the root key', () => {
  const around = (parameter: string) => ({
    parameter,
    sampleRate: undefined,
    frames: undefined,
    frameOf: (name: string) => (name === 'pitch_keycenter' ? 50 : 0),
  });
  const plain = { kind: 'count', from: 'pitch_keycenter' } as const;

  it.each([
    ['lokey', plain, 47, '3'],
    ['lokey', { ...plain, signed: true }, 47, '-3'],
    ['hikey', plain, 54, '4'],
    ['hikey', { ...plain, unitText: ' st' }, 54, '4 st'],
    ['hikey', { ...plain, signed: true }, 50, '0'],
  ] as const)('%s in %j', (parameter, form, key, text) => {
    expect(writeValue(form, String(key), around(parameter))).toEqual({ text });
    expect(readValue(form, text, around(parameter))?.number).toBe(key);
  });

  it('has no place for an end on the other side', () => {
    expect(writeValue(plain, '51', around('lokey'))).toBeUndefined();
    expect(writeValue({ ...plain, signed: true }, '51', around('lokey'))).toBeUndefined();
    expect(writeValue(plain, '49', around('hikey'))).toBeUndefined();
  });
});

describe('a vocabulary of distances', () => {
  const { vocabulary } = parseVocabulary(
    JSON.stringify({
      name: 'far',
      levels: [
        {
          is: 'region',
          element: 'z',
          parameters: [
            { at: '@w', parameter: 'sample', form: { kind: 'path' } },
            { at: '@d', parameter: 'lokey', form: { kind: 'count', from: 'pitch_keycenter', signed: true } },
            { at: '@u', parameter: 'hikey', form: { kind: 'count', from: 'pitch_keycenter' } },
            { at: '@r', parameter: 'pitch_keycenter', form: { kind: 'key', written: 'number' } },
          ],
        },
      ],
    }),
  );

  it('counts from the root key wherever that stands, and from 60 where there is none', () => {
    if (!vocabulary) throw new Error('the vocabulary is broken');
    const instrument = readVocabularyXml(vocabulary)(
      '<b><z w="a.wav" d="-3" u="2" r="50"/><z w="b.wav" d="-1" u="4"/></b>',
      { path: 'b.xml' },
    );
    const values = [...instrument.regions].map((region) =>
      ['lokey', 'hikey'].map((name) => {
        const { names } = instrument;
        return instrument.number(instrument.effective(region, names.canonical(names.idOf(name))));
      }),
    );
    expect(values).toEqual([
      [47, 52],
      [59, 64],
    ]);
  });
});
