import { describe, expect, it } from 'vitest';
import { blankIsAboveIn } from '../../../../server/trade/statements/blanks';
import { headsPlaysOut } from '../../../../server/trade/statements/playing/playsOut';
import { notesOf, regions, table } from '../tableRegions';

const pans = (text: string) => regions(text).map(({ pan }) => Number(pan ?? 0));

// The first letters of the words for left and right (general dictionaries).
describe('letters for sides', () => {
  const rows = (heading: string, left: string, right: string) =>
    table(
      `File | Key | ${heading}`,
      `a.wav | 40 | ${left} 30`,
      `b.wav | 41 | ${right} 20`,
      `c.wav | 42 | 0`,
      `d.wav | 43 | ${left} 5`,
    );

  it.each([
    ['Panorama', 'L', 'P', 'prawo'],
    ['Panorointi', 'V', 'O', 'oikea'],
    ['Pan', 'B', 'J', 'jobb'],
    ['Panorama', 'vän.', 'hög.', 'höger'],
    ['Panorama', 'izqu.', 'dere.', 'derecha'],
    ['Balance', 'sini', 'dest', 'destra'],
    ['Panorama', 'lew.', 'praw.', 'prawo'],
    ['Панорама', 'лев.', 'прав.', 'право'],
    ['Панорама', 'Л', 'Д', 'дясно'],
    ['Panorama', 'St.', 'Dr.', 'dreapta'],
    ['팬', '왼', '오', '오른쪽'],
  ])('%s: %s and %s', (heading, left, right, word) => {
    expect(pans(rows(heading, left, right))).toEqual([-30, 20, 0, -5]);
    expect(notesOf(rows(heading, left, right)).join('\n')).toContain(
      `"${right.replace('.', '')}" is read as right, the beginning of "${word}".`,
    );
  });

  it.each([
    ['izq.', 'der.'],
    ['izda.', 'dcha.'],
    ['sx', 'dx'],
    ['links', 'rechts'],
    ['lks.', 're.'],
    ['gauche', 'droite'],
    ['à gauche', 'à droite'],
    ['l.', 'r.'],
    ['L =', 'R ='],
    ['left:', 'right:'],
    ['αρ.', 'δεξ.'],
  ])('are known in words and with dots: %s and %s', (left, right) => {
    const text = rows('Pan', left, right);
    expect(pans(text)).toEqual([-30, 20, 0, -5]);
    expect(notesOf(text).join('\n')).not.toMatch(/beginning of|left out/);
  });

  it.each([
    '%d izq.|%d der.',
    '%d % nach li.|%d % nach re.',
    '%d (left)|%d (right)',
    'L-%d|R-%d',
    '%dl.|%dr.',
  ])('stand on either side of the number: %s', (both) => {
    const [left = '', right = ''] = both.split('|');
    const cells = [left.replace('%d', '30'), right.replace('%d', '20'), left.replace('%d', '5')];
    const text = table(
      'File | Key | Pan',
      ...cells.map((cell, at) => `cor ${at}.wav | ${50 + at} | ${cell}`),
    );
    expect(pans(text)).toEqual([-30, 20, -5]);
  });

  it.each([
    ['S', 'L', 'P', 'środek'],
    ['S', 'L', 'D', 'sredina'],
    ['Κ', 'Α', 'Δ', 'κέντρο'],
    ['or.', 'so.', 'sa.', 'orta'],
  ])('%s is the centre beside %s and %s', (centre, left, right, word) => {
    const cells = [centre, `${left} 12`, `${right} 9`];
    const text = table(
      'File | Key | Pan',
      ...cells.map((cell, at) => `cor ${at}.wav | ${50 + at} | ${cell}`),
    );
    expect(pans(text)).toEqual([0, -12, 9]);
    expect(notesOf(text).join('\n')).toContain(`is read as centre, the beginning of "${word}".`);
  });

  it.each([
    ['S = sol, Ğ = sağ', 'S', 'Ğ'],
    ['A = links, Z = rechts', 'A', 'Z'],
    ['Legend: W = left, E = right', 'W', 'E'],
  ])('that the text explains: %s', (said, left, right) => {
    const text = `${said}\n\n${rows('Pan', left, right)}`;
    expect(pans(text)).toEqual([-30, 20, 0, -5]);
    expect(notesOf(text).join('\n')).toMatch(/is read as (?:left|right), as ".*" explains/);
  });

  it('are left out with a note where nothing tells them', () => {
    const text = rows('Pan', 'X', 'Y');
    expect(pans(text)).toEqual([0, 0, 0, 0]);
    expect(notesOf(text).join('\n')).toMatch(/"Y 20" is not a pan position; it is left out/);
  });

  it('do not turn dynamics into sides', () => {
    const text = table('File | Key | Layer', 'a.wav | 40 | p', 'b.wav | 40 | f');
    expect(pans(text)).toEqual([0, 0]);
  });
});

describe('empty cells that repeat the cell above', () => {
  const rows = table(
    'File | Low | High | Root | Level dB | Pan',
    'a.wav | 40 | 44 | 42 | -2 | -30',
    'b.wav | | | | -5 |',
    'c.wav | 45 | 49 | 47 | | 20',
    'd.wav | | | | -1',
  );

  it.each([
    'Empty cells mean the same as above.',
    'A blank cell: as in the row before.',
    'Leere Felder: wie oben.',
    'Case vide = comme ci-dessus.',
    'Celda vacía: igual que arriba.',
    'Campo vuoto: come sopra.',
    'Célula vazia = igual à de cima, como acima.',
    'Leeg vak = als hierboven.',
    'Tom ruta betyder som ovan.',
    'Tyhjä ruutu: kuten yllä.',
    'Puste pole: jak wyżej.',
    'Prázdné pole: jako výše.',
    'Пустая ячейка: как в строке выше.',
    'Κενό κελί: όπως παραπάνω.',
    '空欄は上と同じ。',
    '空格与上行相同，即同上。',
    '빈 칸은 위와 같음.',
  ])('%s', (said) => {
    expect(blankIsAboveIn([said])).toBeDefined();
    const text = `${rows}\n\n${said}`;
    expect(regions(text).map(({ pan, volume, lokey }) => `${lokey} ${volume} ${pan}`)).toEqual([
      '40 -2 -30',
      '40 -5 -30',
      '45 -5 20',
      '45 -1 20',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/Empty cells have the value above them, as/);
  });

  it.each([
    'Empty cells mean no change.',
    'Leere Felder: keine Angabe.',
    'Played as above, on an empty stage last year.',
    'The same as the one above but for the empty string.',
  ])('is not said by: %s', (said) => {
    const text = `${rows}\n\n${said}`;
    const isSaid = blankIsAboveIn([said]) !== undefined;
    expect(isSaid || regions(text)[1]?.pan === undefined).toBe(true);
    if (said.startsWith('Empty') || said.startsWith('Leere')) expect(isSaid).toBe(false);
  });

  it('are empty where nothing says so', () => {
    expect(pans(rows)).toEqual([-30, 0, 20, 0]);
  });
});

describe('a column that says whether sounds play to their end', () => {
  it.each([
    ['One-shot', 'yes', 'no'],
    ['Plays to the end', 'x', ''],
    ['Spielt bis zum Ende?', 'ja', 'nein'],
    ["Jusqu'à la fin", 'oui', 'non'],
    ['Hasta el final', 'sí', 'no'],
    ['Fino alla fine', 'sì', 'no'],
    ['Do końca', 'tak', 'nie'],
    ['Ως το τέλος', 'ναι', 'όχι'],
    ['Oneshot', '1', '0'],
  ])('%s', (heading, yes, no) => {
    const text = table(
      `File | Key | ${heading}`,
      `a.wav | 40 | ${yes}`,
      `b.wav | 41 | ${no}`,
      `c.wav | 42 | ${yes}`,
    );
    expect(headsPlaysOut(heading)).toBe(true);
    expect(regions(text).map(({ loop_mode }) => loop_mode)).toEqual(['one_shot', undefined, 'one_shot']);
    expect(notesOf(text).join('\n')).toMatch(/are one-shots; no leaves the loop as it is/);
  });

  it('goes with a column of loops where that says no', () => {
    const text = table(
      'File | Key | Loop | One-shot',
      'a.wav | 40 | no | yes',
      'b.wav | 41 | yes | no',
      'c.wav | 42 | no | no',
    );
    expect(regions(text).map(({ loop_mode }) => loop_mode)).toEqual([
      'one_shot',
      'loop_continuous',
      'no_loop',
    ]);
  });

  it.each(['Loop', 'End', 'To', 'Comment', 'Loop to end'])('is not headed %s', (heading) => {
    expect(headsPlaysOut(heading)).toBe(false);
  });
});

// Greek solfège: Ντο Ρε Μι Φα Σολ Λα Σι (general dictionaries).
describe('Greek tables', () => {
  it('name notes in syllables', () => {
    const text = table('Αρχείο | Νότα', 'a.wav | Ντο4', 'b.wav | Φα♯4', 'c.wav | Σολ δίεση 4', 'd.wav | Σι4');
    expect(regions(text).map(({ lokey, key }) => key ?? lokey)).toEqual(['60', '66', '68', '71']);
  });

  it('state the octave', () => {
    const text = `Ντο3 = 60\n\n${table('Αρχείο | Από πλήκτρο | Έως πλήκτρο | Βασική νότα', 'a.wav | Ντο3 | Μι3 | Ρε3', 'b.wav | Φα3 | Λα3 | Σολ3')}`;
    expect(
      regions(text).map(({ lokey, hikey, pitch_keycenter: root }) => `${lokey} ${hikey} ${root}`),
    ).toEqual(['60 64 62', '65 69 67']);
  });
});
