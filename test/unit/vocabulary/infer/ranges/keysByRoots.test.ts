import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const tones = (...roots: (number | string)[]) =>
  roots.map((root, at) => `<tone wav="t${root}_${at}.wav" root="${root}"/>`).join('');
const keysIn = (text: string) => valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter');

describe('root keys alone', () => {
  it('share the keys out up to the middles, which is told', () => {
    const text = `<lute>${tones(40, 45, 52)}</lute>`;
    expect(keysIn(text)).toEqual(['0 42 40', '43 48 45', '49 127 52']);
    const { decisions } = readInferred(text);
    expect(decisions.find(({ id }) => id === 'keysByRoots')).toMatchObject({ isGuess: true });
    expect(decisions.some(({ id }) => id === 'keys.missing')).toBe(false);
  });

  it('reach to the ends that the outermost element gives', () => {
    expect(keysIn(`<lute lowKey="30" highKey="70">${tones(40, 45)}</lute>`)).toEqual([
      '30 42 40',
      '43 70 45',
    ]);
  });

  it('go by layers of velocities, takes and starts', () => {
    const layer = (velocities: string, ...roots: number[]) =>
      `<layer ${velocities}>${tones(...roots)}</layer>`;
    const [soft, loud] = ['minVel="1" maxVel="63"', 'minVel="64" maxVel="127"'];
    expect(keysIn(`<lute>${layer(soft, 40, 52)}${layer(loud, 40, 46, 52)}</lute>`)).toEqual([
      '0 46 40',
      '47 127 52',
      '0 43 40',
      '44 49 46',
      '50 127 52',
    ]);
    const takes = '<tone wav="a.wav" root="40"/><tone wav="b.wav" root="40"/><tone wav="c.wav" root="50"/>';
    expect(keysIn(`<lute>${takes}</lute>`)).toEqual(['0 45 40', '0 45 40', '46 127 50']);
    const released = (root: number) => `<tone wav="r${root}.wav" root="${root}" trigger="release"/>`;
    expect(keysIn(`<lute>${tones(40, 50, 60)}${released(42)}${released(58)}</lute>`).slice(3)).toEqual([
      '0 50 42',
      '51 127 58',
    ]);
  });

  it('go through elements whose roots do not lie among one another', () => {
    const low = `<part>${tones(30, 36)}</part>`;
    const high = `<part>${tones(42, 48)}</part>`;
    const layer = `<part>${tones(31, 47)}</part>`;
    expect(keysIn(`<lute>${low}${high}</lute>`)).toEqual(['0 33 30', '34 39 36', '40 45 42', '46 127 48']);
    expect(keysIn(`<lute>${low}${layer}</lute>`)).toEqual(['0 33 30', '34 127 36', '0 39 31', '40 127 47']);
  });

  it('may stand around the takes of each', () => {
    const note = (root: number) =>
      `<note root="${root}"><take wav="${root}a.wav" vol="-1"/><take wav="${root}b.wav" vol="-2"/></note>`;
    expect(keysIn(`<lute>${note(40)}${note(45)}${note(50)}</lute>`)).toEqual([
      '0 42 40',
      '0 42 40',
      '43 47 45',
      '43 47 45',
      '48 127 50',
      '48 127 50',
    ]);
  });

  it('leave all keys to a single root', () => {
    expect(keysIn(`<lute>${tones(40, 40)}</lute>`)).toEqual(['- - 40', '- - 40']);
  });
});
