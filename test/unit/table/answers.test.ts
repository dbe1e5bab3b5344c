import { describe, expect, it } from 'vitest';
import { notesOf, regions } from './tableRegions';

const values = (text: string) =>
  regions(text).map((one) => [one.lokey, one.hikey, one.pitch_keycenter].join(' '));
const mail = (first: string, last: string, head = 'low high root') =>
  `Hi, my answers below.\n\n> zyth zones (MIDI numbers: ${head}):\n>\n> zy_a.wav   40 44 42\n> zy_b.wav   45 49 47\n\n${first}\n\n> zy_c.wav   50 54 52\n> zy_d.wav   55 60 57\n\n${last}\n\n> Is b too loud?\n\nNo, leave it.\nBye`;
const plain = ['40 44 42', '45 49 47', '50 54 52', '55 60 57'];

describe('answers between the quoted lines of a mail', () => {
  it.each([
    ['That one must be root 48, I checked. The range is fine.', 'Right, but let it go up to 67, please.'],
    ['The root is 48.', 'Up to 67 is fine.'],
    ['Der Grundton ist hier 48.', 'Bitte bis 67.'],
    ['La fondamentale est 48.', "Oui, jusqu'à 67."],
    ['Please change the root to 48.', 'It can reach up to 67.'],
    ['Root should be 48!', 'hasta 67, por favor'],
  ])('put right the zone quoted right above: %s %s', (first, last) => {
    const text = mail(first, last);
    expect(values(text)).toEqual(['40 44 42', '45 49 48', '50 54 52', '55 67 57']);
    expect(notesOf(text).join('\n')).toMatch(/answer on "zy_b.wav".*answer on "zy_d.wav"/s);
  });

  it.each([
    ['Is the root really 48?', 'ok'],
    ['All roots should be 48.', 'ok'],
    ['Maybe root 48.', 'ok'],
    ['The root is 61.', 'ok'],
    ['Not root 48.', 'ok'],
    ['Set it to 48.', 'ok'],
  ])('are told where they are not certain: %s', (first, last) => {
    const text = mail(first, last);
    expect(values(text)).toEqual(plain);
    expect(notesOf(text).join('\n')).toMatch(/is not done/);
  });

  it('change nothing in texts without quoted lines', () => {
    const text = mail('The root is 48.', 'Up to 67.').replace(/^> ?/gm, '');
    expect(values(text)).toEqual(plain);
  });
});
