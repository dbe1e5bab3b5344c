import { describe, expect, it } from 'vitest';
import { withoutMessageHeads } from '../../../../../server/table/cells/markup/messageHeads';
import { regions } from '../../tableRegions';

const keys = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) =>
    [sample, lokey, hikey, pitch_keycenter].join(' '),
  );

describe('a table told in a conversation', () => {
  it.each([
    ['in brackets', (at: number, who: string) => `[19:0${at}] ${who}: `],
    ['with a day', (at: number, who: string) => `[2026-03-1${at} 08:15:00] <${who}> `],
    ['behind a dash', (at: number, who: string) => `21.03.26, 19:0${at} - ${who}: `],
    ['behind the name', (at: number, who: string) => `${who} (7:0${at} pm): `],
  ])('is read without times and names: %s', (_, head) => {
    const text = [
      `${head(1, 'ann')}the harp, middle C = c4 = 60`,
      `${head(2, 'ann')}harp1.wav c4-d4 root c4`,
      `${head(3, 'ann')}harp2.wav d#4-f4 root e4`,
      `${head(4, 'bob')}nice`,
      `${head(5, 'ann')}harp3.wav f#4-a4 root g4`,
    ].join('\n');
    expect(keys(text)).toEqual(['harp1.wav 60 62 60', 'harp2.wav 63 65 64', 'harp3.wav 66 69 67']);
    expect(withoutMessageHeads(text)).toHaveLength(text.length);
  });

  it('leaves times in tables and single lines alone', () => {
    for (const text of ['0:12 a.wav: 60\n', '10:20 x\n10:30 y\n10:40 z\n', 'a.wav 1:20 60\nb.wav 1:30 61\n'])
      expect(withoutMessageHeads(text)).toBe(text);
  });
});
