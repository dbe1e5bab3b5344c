import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { notesOf, regions } from '../tableRegions';

const names = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'volume'];

function values(text: string): string[] {
  return regions(text).map((region) =>
    names.map((name) => Number(region[name]) || region[name] || '0').join(' '),
  );
}

const expected = ["x/oak's.wav 36 41 38 0", 'x/elm.wav 42 47 44 -2.5'];

// ISO/IEC 9075-2: CREATE TABLE and INSERT.
describe('a dump of a database', () => {
  it.each([
    [
      'two tables, several rows in a statement',
      `-- trees
CREATE TABLE sounds (id INTEGER PRIMARY KEY, path TEXT, root INTEGER);
INSERT INTO sounds VALUES (7,'x/elm.wav',44),(9,'x/oak''s.wav',38);
CREATE TABLE span (sound_id INTEGER, lo INTEGER, hi INTEGER, gain_db REAL, FOREIGN KEY (sound_id) REFERENCES sounds(id));
INSERT INTO span (sound_id, lo, hi, gain_db) VALUES (9,36,41,0);
INSERT INTO span (sound_id, lo, hi, gain_db) VALUES (7,42,47,-2.5);
COMMIT;`,
    ],
    [
      'one table, with columns as it declares them',
      `BEGIN;
CREATE TABLE \`zone\` (
  \`path\` varchar(200) NOT NULL, -- the file
  \`lo\` int(3), \`hi\` int(3),
  \`root\` int(3), \`gain_db\` decimal(4,1)
);
INSERT INTO \`zone\` VALUES
  ('x/oak''s.wav', 36, 41, 38, NULL),
  ('x/elm.wav', 42, 47, 44, -2.5);`,
    ],
  ])('gives its rows as zones: %s', (_, text) => {
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(values(text)).toEqual(expected);
  });

  it('tells how tables were joined, and which files no zone uses', () => {
    const text = `INSERT INTO wave (id, file, root) VALUES (1,'oak.wav',38),(2,'elm.wav',44),(3,'fir.wav',50);
INSERT INTO zone (wave, lo, hi) VALUES (1,36,41),(2,42,47);`;
    expect(notesOf(text).join('\n')).toMatch(/row of "wave" that its "wave" names[\s\S]*"fir.wav"/u);
  });
});
