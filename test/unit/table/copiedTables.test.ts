import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const values = (text: string, names: readonly string[], frames?: Readonly<Record<string, number>>) =>
  regions(text, { framesOf: (name) => frames?.[name] }).map((region) =>
    names.map((name) => region[name] ?? '-').join(' '),
  );
const keys = ['lokey', 'hikey', 'pitch_keycenter'];

describe('misspelt headings', () => {
  it.each([
    'Sampel | Lowkye | Hihgkey | Rootnoet',
    'Fiel | Low kye | High kee | Bse note',
    'Ficheir | Note bsse | Note huate | Fondamntale',
    'Datie | Tiefste Tsate | Höchste Tatse | Grundotn',
    'Filk | Lägsta tagnent | Högsta tangnet | Grundotn',
    'samplefiel | keyloww | keyhihg | baesnote',
  ])('%s', (heading) => {
    const text = table(heading, 'reed_a.wav | 24 | 38 | 36', 'reed_b.wav | 39 | 43 | 41');
    expect(values(text, keys)).toEqual(['24 38 36', '39 43 41']);
    expect(notesOf(text).join()).toMatch(/spelt almost like/);
  });
});

describe('a comment that lists what the values of a script are', () => {
  it.each([
    '# (file, lo, hi, root, cents)     cents are added',
    '// [file, lo, hi, root, cents]   tuned by ear',
    '-- file, lo, hi, root, cents; by ear',
    '# Felder: (Datei, tief, hoch, Grundton, Cent) - nach Gehör',
    '# fichier, bas, haut, racine, cents   (au jugé)',
  ])('%s', (comment) => {
    const text = `${comment}\nzones = [\n ("kal_1.wav", 40, 45, 43, -5),\n ("kal_2.wav", 46, 50, 48, 14),\n]\n`;
    expect(values(text, [...keys, 'tune'])).toEqual(['40 45 43 -5', '46 50 48 14']);
  });

  it('above an array of records in C', () => {
    const text =
      '/* { name, lokey, hikey, rootkey, cents }  -- all by ear */\nstatic const struct zone zones[] = {\n { "kal_1.wav", 40, 45, 43, -5 },\n { "kal_2.wav", 46, 50, 48, 14 },\n};\n';
    expect(values(text, [...keys, 'tune'])).toEqual(['40 45 43 -5', '46 50 48 14']);
  });
});

describe('a second table of what sounds when keys are let go', () => {
  const frames = { 'h_48.wav': 3000, 'h_52.wav': 2800 };
  const text = (between: string, whole: string) => `Zones

Bestand       Grondtoon  Van  Tot  Lus
h_48.wav      48         45   49   ${whole}
h_52.wav      52         50   53   geen

${between}

Bestand       Grondtoon  Van  Tot
h_48_los.wav  48         45   53
`;
  // sfzformat.com: loop_end is the last frame that is played, so a loop over 3000 frames ends with 2999.
  it.each([
    ['Loslaatsamples (klinken bij het loslaten van de toets):', 'hele bestand'],
    ['The following are played when the key goes up. They are short.', 'whole file'],
    ['Échantillons de relâchement (jouent quand on lâche la touche) :', 'fichier entier'],
  ])('%s', (between, whole) => {
    const names = [...keys, 'loop_start', 'loop_end', 'trigger'];
    expect(values(text(between, whole), names, frames)).toEqual([
      '45 49 48 0 2999 -',
      '50 53 52 - - -',
      '45 53 48 - - release',
    ]);
  });

  it('tells of a loop over a sample whose length is not known', () => {
    expect(notesOf(text('Release', 'whole file')).join()).toMatch(/where its last frame is/);
  });
});

it('tells of an amount whose direction no word says', () => {
  const text =
    'lier_C3.wav plays from A2 to D3, root C3, 9 cents dolorp.\nlier_F3.wav plays from E3 to G3, root F3, 4 cents up.\n';
  expect(values(text, ['tune'])).toEqual(['-', '4']);
  expect(notesOf(text).join()).toMatch(/no known word says which way it goes/);
});

it.each(['loop_fim', 'loop_end', 'fin loop'])('takes -1 in %s for the last frame of the file', (end) => {
  const table = `file,low,high,root,loop start,${end}\n${['sav_62.wav,60,64,62,1800,2999', 'sav_67.wav,65,69,67,2050,-1', 'sav_71.wav,70,72,71,1638,-1', 'sav_74.wav,73,86,74,0,-1'].join('\n')}\n`;
  const names = ['sav_62.wav', 'sav_67.wav', 'sav_71.wav', 'sav_74.wav'];
  const frames = Object.fromEntries(names.map((name) => [name, 3000]));
  expect(values(table, ['loop_start', 'loop_end'], frames)).toEqual([
    '1800 2999',
    '2050 2999',
    '1638 2999',
    '- -',
  ]);
});

it.each([
  'From the forum: "mind that velocities in this box run from 1 to 100, not 127"',
  'Attention : les vélocités vont de 1 à 100 et non 127',
])('counts velocities as the text says: %s', (said) => {
  const table = `${said}\n\nfile,low,high,root,lo vel,hi vel\nup_40s.wav,28,43,40,1,40\nup_40h.wav,28,43,40,41,100\n`;
  // 40 of 100 is 50.8 of 127.
  expect(values(table, ['lovel', 'hivel'])).toEqual(['1 51', '52 127']);
});
