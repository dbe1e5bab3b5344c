import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** A reference to an entry may have the sign of a fragment before it (RFC 3986). */
describe('references with the sign of a fragment', () => {
  it('lead to entries in any order, one of them twice', () => {
    const text =
      '<banque><échantillons><échantillon ident="e1" fichier="grave.wav" note_midi="53" niveau="-2 dB"/><échantillon ident="e2" fichier="aigu.wav" note_midi="74" niveau="-1 dB"/></échantillons><clavier><zone de="68" jusque="80" source="#e2"/><zone de="48" jusque="67" source="#e1" vélocité="1-80"/><zone de="81" jusque="89" source="#e2"/></clavier></banque>';
    expect(valuesIn(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter', 'hivel', 'volume')).toEqual([
      'aigu.wav 68 80 74 - -1',
      'grave.wav 48 67 53 80 -2',
      'aigu.wav 81 89 74 - -1',
    ]);
  });

  it('may be to numbers; an entry that nothing refers to is told', () => {
    const text =
      '<bank><samples><sample nr="1" file="a.wav" root="53"/><sample nr="2" file="b.wav" root="65"/><sample nr="3" file="c.wav" root="67"/></samples><zone low="60" high="72" ref="#2"/><zone low="48" high="59" ref="#1"/></bank>';
    expect(valuesIn(text, 'sample', 'pitch_keycenter')).toEqual(['b.wav 65', 'a.wav 53']);
    const { unread } = readInferred(text);
    expect(unread.join('\n')).toContain('c.wav');
    expect(unread.join('\n')).not.toContain('b.wav');
  });

  it('leave out a region whose entry is missing, and tell it', () => {
    const text =
      '<Bank><Klang id="k1" Datei="a.wav" Grundton="53"/><Klang id="k2" Datei="b.wav" Grundton="65"/><Zone von="60" bis="72" Quelle="#k2"/><Zone von="48" bis="59" Quelle="#k1"/><Zone von="73" bis="79" Quelle="#k9"/></Bank>';
    expect(valuesIn(text, 'sample')).toEqual(['b.wav', 'a.wav']);
    expect(
      readInferred(text)
        .decisions.map(({ message }) => message)
        .join('\n'),
    ).toContain('"#k9"');
  });
});
