import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const rows = table(
  'File | Low | High | Root',
  'viol_a.wav | 60 | 64 | 62',
  'viol_b.wav | 65 | 69 | 67',
  'viol_c.wav | 60 | 64 | 62',
  'viol_d.wav | 65 | 69 | 67',
);
const triggers = (said: string, above = false) =>
  regions(above ? `${said}\n\n${rows}` : `${rows}\n\n${said}`).map(({ trigger }) =>
    trigger === 'release' ? 'x' : '-',
  );

describe('what a text says of rows by their place', () => {
  it.each([
    'Rows 3 and 4 play on release, the rest normally.',
    'Rows 3-4 are release samples.',
    'The last two sound when the key is let go.',
    'All but the first two play on key release.',
    'The 3rd and 4th rows are release samples.',
    'Die letzten beiden klingen beim Loslassen.',
    'Zeilen 3 und 4 klingen beim Loslassen der Taste.',
    'Les deux derniers jouent au relâchement.',
    'Las filas 3 y 4 suenan al soltar.',
    'Le righe 3 e 4 suonano al rilascio.',
  ])('lets them sound when the key is let go: "%s"', (said) => {
    expect(triggers(said).join('')).toBe('--xx');
    expect(triggers(said, true).join('')).toBe('--xx');
  });

  it.each([
    'Rows 3 and 4 have a release of 2 s.',
    'Rows 3 and 4 are not release samples.',
    'Rows 8 and 9 play on release.',
  ])('lets none where it says something else, or names rows that are not there: "%s"', (said) => {
    expect(triggers(said).join('')).toBe('----');
  });

  const turns = (said: string) =>
    regions(`${table('File | Key', 'gong.wav | 40', 'bell_1.wav | 45', 'bell_2.wav | 45')}\n\n${said}`).map(
      ({ seq_position, seq_length }) => (seq_length ? `${seq_position ?? 1}/${seq_length}` : '-'),
    );

  it.each([
    'The last two take turns.',
    'Rows 2 and 3 alternate.',
    'Files on the same key take turns.',
    'Die letzten zwei wechseln sich ab.',
    'Las dos últimas se alternan.',
  ])('lets them take turns: "%s"', (said) => {
    expect(turns(said)).toEqual(['-', '1/2', '2/2']);
  });

  it('lets none take turns that have different keys, and says so', () => {
    expect(turns('The first two take turns.')).toEqual(['-', '-', '-']);
    const text = `${table('File | Key', 'gong.wav | 40', 'bell_1.wav | 45', 'bell_2.wav | 45')}\n\nThe first two take turns.`;
    expect(notesOf(text).join()).toMatch(/no two of these rows have the same keys/);
  });
});

describe('keys that are off, as a text says', () => {
  const keys = (said: string) =>
    regions(`${rows}\n\n${said}`)
      .slice(0, 2)
      .map(({ lokey, hikey, pitch_keycenter }) => `${lokey}-${hikey} ${pitch_keycenter}`);

  it.each([
    ['The numbers are all one octave too high.', '48-52 50', '53-57 55'],
    ['All keys are an octave too low.', '72-76 74', '77-81 79'],
    ['Key numbers are 2 semitones too high, sorry.', '58-62 60', '63-67 65'],
    ['Please subtract 12 from all keys.', '48-52 50', '53-57 55'],
    ['Alle Nummern sind eine Oktave zu hoch.', '48-52 50', '53-57 55'],
    ['Les numéros sont une octave trop haut.', '48-52 50', '53-57 55'],
    ['Las notas están una octava demasiado altas.', '48-52 50', '53-57 55'],
    ['The root keys are an octave too high.', '60-64 50', '65-69 55'],
    ['Row 1 is an octave too high.', '48-52 50', '65-69 67'],
  ])('are moved: "%s"', (said, ...moved) => {
    expect(keys(said)).toEqual(moved);
    expect(notesOf(`${rows}\n\n${said}`).join()).toMatch(/(?:taken off|added to) all/);
  });

  it.each([
    'The samples are an octave too high.',
    'The velocity numbers are 12 too high.',
    'Add 12 to the velocities.',
    'The keys are not an octave too high.',
    'The numbers are eight octaves too high.',
  ])('stay: "%s"', (said) => {
    expect(keys(said)).toEqual(['60-64 62', '65-69 67']);
  });

  const drums = table(
    'File | Low | High | Root',
    'horn_lo.wav | 40 | 45 | 43',
    'horn_hi.wav | 46 | 52 | 50',
    'gong_1.wav | 20 | 20 | 20',
    'gong_2.wav | 21 | 21 | 21',
  );
  it.each([
    'All key numbers are an octave too low. Only the two gong rows are right as they stand.',
    'All key numbers are one octave too low, add 12 to every one.\nThe gongs are correct.',
    'All keys are an octave too low, except for the gongs.',
    'All keys are an octave too low except the last two rows.',
    'Add 12 to all keys; rows 3 and 4 are fine.',
    'Alle Tasten sind eine Oktave zu tief, außer den Gongs.',
    'Alle Tasten sind eine Oktave zu tief. Nur die Gongs stimmen.',
    'Toutes les touches sont une octave trop basses, sauf les gongs.',
  ])('are moved but for those that are right: "%s"', (said) => {
    const found = regions(`${said}\n\n${drums}`).map(({ key, lokey }) => lokey ?? key);
    expect(found).toEqual(['52', '58', '20', '21']);
  });

  it('stay where it is open which ones are right', () => {
    const text = `All keys are an octave too low. Only the whistles are right.\n\n${drums}`;
    expect(regions(text).map(({ key, lokey }) => lokey ?? key)).toEqual(['40', '46', '20', '21']);
    expect(notesOf(text).join()).toMatch(/no key is moved/);
  });
});
