import { describe, expect, it } from 'vitest';
import { saysOnRelease, startInTitle } from '../../../../server/trade/readings/startInTitle';

// What such titles mean is plain speech of the trade, from memory.
describe('what starts the zones below a title', () => {
  it.each([
    'Release samples',
    'SLIP (lyder når tangenten slippes)',
    'Puszczenie (brzmi po puszczeniu klawisza)',
    'Klappern (klingt, sobald die Taste losgelassen wird)',
    'Ruídos: tocam no momento em que a tecla é solta',
    'Bruits de relâche',
    'Loslaatgeluiden',
    'Loslassgeräusche',
    'キーを離したとき',
  ])('"%s": a key let go', (title) => {
    expect(startInTitle(title)).toBe('release');
  });

  it.each([
    'Strings with a very long release tail',
    'Sustained until the key is released',
    'Cymbals (choked, stops when the key is released)',
    'Hits (damped when the key is released)',
    'Töne, die nach dem Loslassen weiterklingen',
    'Lacher',
    'Attack, release',
  ])('"%s": no key let go', (title) => {
    expect(startInTitle(title)).not.toBe('release');
  });

  it.each([
    ['They are played when the key goes up.', true],
    ['Dies sind die Klänge beim Loslassen der Tasten.', true],
    ['Release 300 ms', false],
    ['The notes sustain until note-off', false],
  ])('"%s" says so: %s', (text, says) => {
    expect(saysOnRelease(text)).toBe(says);
  });
});
