import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const triggers = (text: string) => regions(text).map(({ trigger }) => trigger ?? '-');
const rows = table(
  'File | Low | High | Root',
  'spinet_a.wav | 40 | 44 | 42',
  'spinet_a_ko.wav | 40 | 44 | 42',
  'spinet_b.wav | 45 | 49 | 47',
  'spinet_b_ko.wav | 45 | 49 | 47',
);

describe('samples of letting the key go, by their names', () => {
  it.each([
    'Files with _ko sound when the key is let go.',
    '_ko = release',
    'Dateien mit "ko" klingen beim Loslassen.',
  ])('are found by "%s"', (said) => {
    expect(triggers(`${said}\n\n${rows}`)).toEqual(['-', 'release', '-', 'release']);
    expect(notesOf(`${said}\n\n${rows}`).join()).toMatch(
      /2 zones sound when the key is let go, by their names/,
    );
    expect(notesOf(`${said}\n\n${rows}`).join()).not.toMatch(/sound together/);
  });

  it('are not found where all names have the part, or a column says what starts the zones', () => {
    expect(triggers(`Files with spinet_ are release samples.\n\n${rows}`)).toEqual(['-', '-', '-', '-']);
    const given = table(
      'File | Root | Trigger',
      'a.wav | 60 | press',
      'a_ko.wav | 60 | press',
      'b.wav | 62 | release',
    );
    expect(triggers(`Files with _ko are release samples.\n\n${given}`)).toEqual(['-', '-', 'release']);
  });
});
