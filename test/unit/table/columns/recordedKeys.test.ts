import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const list = ['kazoo_1.wav = 50', 'kazoo_2.wav = 57', 'kazoo_3.wav = 62', 'kazoo_4.wav = 69'].join('\n');
const spans = (text: string) =>
  regions(text).map(({ key, lokey, hikey, pitch_keycenter: root }) => [lokey ?? key, hikey ?? key, root]);

describe('keys beside samples', () => {
  it.each([
    'I wrote down which note each file was played at.',
    'The number is the note it was recorded on.',
    'Die Zahl ist die Taste, auf der aufgenommen wurde.',
    'Le chiffre est la note jouée.',
    'The numbers are root keys.',
  ])('are roots that share the keys out: %s', (said) => {
    const text = `${said}\n\n${list}`;
    expect(spans(text).map(([, high, root]) => `${high} ${root}`)).toEqual([
      '53 50',
      '59 57',
      '65 62',
      '127 69',
    ]);
    expect(notesOf(text).join()).toMatch(/The table gives only root keys/);
  });

  it.each(['Pads of my drum machine, note numbers.', 'Recorded in a barn.', 'Each file is on one key.'])(
    'stay the only ones they play on: %s',
    (said) => {
      expect(spans(`${said}\n\n${list}`).map(([low, high]) => `${low} ${high}`)).toEqual([
        '50 50',
        '57 57',
        '62 62',
        '69 69',
      ]);
    },
  );
});
