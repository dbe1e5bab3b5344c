import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const rows = table(
  'Keys | Root | soft (1–60) | loud (61–127)',
  '40-44 | 42 | gong_1.wav (-3) | gong_2.wav',
  '45-49 | 47 | gong_3.wav | gong_4.wav (1.5)',
);
const told = (text: string, name: string) =>
  regions(text)
    .sort((a, b) => a.sample.localeCompare(b.sample))
    .map((region) => `${region.sample} ${region[name] ?? '-'}`);

describe('values in brackets behind the names of files', () => {
  it.each([
    'In brackets: level in dB.',
    'In Klammern steht der Pegel in dB.',
    'Entre parenthèses : niveau en dB.',
    'Entre paréntesis, el nivel en dB.',
    'Tra parentesi il livello in dB.',
    'Tussen haakjes: niveau in dB.',
    'W nawiasie poziom w dB.',
    'В скобках уровень, dB.',
  ])('are what the text says: %s', (said) => {
    expect(told(`${rows}\n\n${said}`, 'volume')).toEqual([
      'gong_1.wav -3',
      'gong_2.wav -',
      'gong_3.wav -',
      'gong_4.wav 1.5',
    ]);
    expect(notesOf(`${rows}\n\n${said}`).join('\n')).toMatch(
      /"-3" beside the name .* volume=-3, as ".*" says/,
    );
  });

  it('are what their unit says, and are added to what the row gives', () => {
    const text = table(
      'File | Key | Level dB | Tune ct',
      'a.wav (-2 dB) | 40 | -3 | 5',
      'b.wav (+4 ct) | 41 | -3 | 5',
      'c.wav | 42 | -1 | 0',
    );
    expect(told(text, 'volume')).toEqual(['a.wav -5', 'b.wav -3', 'c.wav -1']);
    expect(told(text, 'tune')).toEqual(['a.wav 5', 'b.wav 9', 'c.wav -']);
    expect(notesOf(text).join('\n')).toMatch(/read as volume=-2, with what its row gives volume=-5/);
  });

  it('are told and not used where nothing says what they are', () => {
    expect(told(rows, 'volume')).toEqual(['gong_1.wav -', 'gong_2.wav -', 'gong_3.wav -', 'gong_4.wav -']);
    expect(notesOf(rows).join('\n')).toMatch(/"1.5" beside the name of the sample is not used/);
  });

  it('leave names with brackets of their own alone', () => {
    const text = table('File | Key', 'bell (close).wav | 40', 'bell (far).wav | 41');
    expect(told(text, 'volume')).toEqual(['bell (close).wav -', 'bell (far).wav -']);
  });
});
