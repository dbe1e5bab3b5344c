import { describe, expect, it } from 'vitest';
import { loopModeInWords } from '../../../server/trade/readings/loopPhrases';
import { readPan } from '../../../server/trade/readings/panReading';
import { middleCIn } from '../../../server/trade/statements/keys/statedOctave';
import { statedSettings } from '../../../server/trade/statements/settings';
import { notesOf, regions, table } from './tableRegions';

/** Some values of all regions, one string a region; `-` for a value that is not given. */
function values(text: string, ...names: string[]): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
}

// MIDI 1.0 names no octaves (common practice).
describe('the octave', () => {
  it.each([
    ["chez moi le do du milieu s'écrit do3 (= MIDI 60)", 'C3'],
    ['do3 = 60', 'C3'],
    ['key 60 is called C5', 'C5'],
    ['C3 heißt hier 60', 'C3'],
    ['do central = C3', 'C3'],
    ['octavas: do central = C3', 'C3'],
    ['la3 = 440 Hz', 'C3'],
    ['C4 = 261.63 Hz', 'C4'],
    ['Keys go from C-2 to G8', 'C3'],
    ['names in scientific pitch notation', 'C4'],
    ['środkowe C to C3', 'C3'],
    ['до первой октавы = C4', 'C4'],
    ['C3 (130 bpm)', undefined],
  ])('is stated by "%s"', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });

  it('is stated in a sentence that goes over two lines', () => {
    const rows = table('Fichier | De | À', 'a.wav | do3 | mi3');
    expect(values(`Attention, le do du milieu\ns'écrit do3 ici.\n\n${rows}`, 'lokey', 'hikey')).toEqual([
      '60 64',
    ]);
  });

  it.each(['base_no', 'MIDI', 'Nr.', 'numéro', 'key #'])(
    'is told by numbers under "%s" beside the names',
    (heading) => {
      const text = table(
        `File | Low | High | Root | ${heading}`,
        'a.wav | C3 | E3 | D3 | 38',
        'b.wav | F3 | A3 | G3 | 43',
        'c.wav | A#3 | C4 | B3 | 47',
      );
      expect(values(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['36 40 38', '41 45 43', '46 48 47']);
      expect(notesOf(text).join()).toMatch(/read as C5, because the key numbers beside the note names agree/);
    },
  );
});

describe('words that the text explains', () => {
  it.each([
    [
      '*endless* = keeps looping through the release too, *held* = loops only while the key is down, *none* = no loop',
      'endless',
      'held',
      'none',
    ],
    [
      'D: läuft auch nach dem Loslassen weiter; G: Schleife, solange die Taste gehalten wird; K: keine Schleife',
      'D',
      'G',
      'K',
    ],
    ['"t" = boucle sans fin, "k" = boucle tant que la touche est enfoncée, "r" = sans boucle', 't', 'k', 'r'],
    ['A means loops forever. B means loops until release. C means not looped.', 'A', 'B', 'C'],
    ['1: bucle siempre, 2: bucle mientras se mantiene la tecla, x: sin bucle', '1', '2', 'x'],
  ])('give the mode of loops: %s', (legend, ...words) => {
    const rows = words.map((word, at) => `a${at}.wav | ${60 + at} | ${word}`);
    const text = `${legend}\n\n${table('File | Key | Loop', ...rows)}`;
    expect(values(text, 'loop_mode')).toEqual(['loop_continuous', 'loop_sustain', 'no_loop']);
    expect(notesOf(text).join()).toMatch(/is read as loop sustain, as ".*" explains/);
  });

  it.each([
    ['keeps looping while held', 'loop_sustain'],
    ['plays once to its end', 'one_shot'],
    ['loopt zolang de toets vastgehouden wordt', 'loop_sustain'],
    ['the loud ones', undefined],
  ])('or say "%s"', (text, mode) => {
    expect(loopModeInWords(text)?.mode).toBe(mode);
  });

  it.each([
    'Layer A: velocities 1-60, layer B: 61-127',
    'A = 1 to 60, B = 61 to 127',
    'A: 1–60\nB: 61–127',
    '"A" ist 1 bis 60 und "B" ist 61 bis 127',
  ])('give velocities of layers: %s', (legend) => {
    const text = `${legend}\n\n${table('File | Key | Layer', 'a.wav | 60 | A', 'b.wav | 60 | B')}`;
    expect(values(text, 'lovel', 'hivel')).toEqual(['1 60', '61 127']);
  });

  it('give velocities of dynamics, the lowest one too', () => {
    const rows = table(
      'sample | keys | layer',
      'a.wav | 53-57 | pp',
      'b.wav | 53-57 | mf',
      'c.wav | 53-57 | ff',
    );
    const said = '3 layers: pp is 1-45, mf is 46-96 and ff is 97-127.';
    expect(values(`${said}\n\n${rows}`, 'lovel', 'hivel')).toEqual(['1 45', '46 96', '97 -']);
  });
});

describe('scripts', () => {
  const rows = ['("a.wav", 57, 61, 59, "p"),', '("b.wav", 57, 61, 59, "f"),'].join('\n');

  it.each([
    `VEL = {"p": (1, 50), "f": (51, 127)}\n# (file, lowest key, highest key, root, layer)\nZONES = [\n${rows}\n]`,
    `local vel = { soft = {1, 50}, loud = {51, 127} }\nreturn {\n{ file = "a.wav", lo = 57, hi = 61, root = 59, layer = "soft" },\n{ file = "b.wav", lo = 57, hi = 61, root = 59, layer = vel.loud },\n}`,
    JSON.stringify({
      layers: [
        { name: 'x', lo: 1, hi: 50 },
        { name: 'y', lo: 51, hi: 127 },
      ],
      zones: [
        { file: 'a.wav', lo: 57, hi: 61, root: 59, layer: 'x' },
        { file: 'b.wav', lo: 57, hi: 61, root: 59, layer: 'y' },
      ],
    }),
    `import os\nconst layers = { p: [1, 50], f: [51, 127] };\nconst zones = [\n{ file: "a.wav", keys: [57, 61], root: 59, layer: "p" },\n{ file: "b.wav", keys: [57, 61], root: 59, layer: "f" }\n];`,
  ])('look velocities of layers up: %s', (text) => {
    expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel')).toEqual([
      'a.wav 57 61 59 1 50',
      'b.wav 57 61 59 51 127',
    ]);
  });

  it('may start with names that hold nothing, and leave out rows', () => {
    const text = `-- span = keys (low, high), home = root key
local dir = nil
local zones = {
  { clip = "a.wav", span = {36, 41}, home = 38 },
--{ clip = "old.wav", span = {42, 50}, home = 46 },
  { clip = "b.wav", span = {42, 50}, home = 45 },
}`;
    expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      'a.wav 36 41 38',
      'b.wav 42 50 45',
    ]);
    expect(notesOf(text).join()).toMatch(/comment names a sample/);
  });

  it('may give a unit beside a number', () => {
    const text =
      '{"file": "a.wav", "key": 60, "gain": {"value": -3, "unit": "dB"}}\n{"file": "b.wav", "key": 62, "gain": {"value": 0, "unit": "dB"}}';
    expect(values(text, 'key', 'volume', 'pan')).toEqual(['60 -3 -', '62 - -']);
  });
});

describe('blocks and lines that go for several zones', () => {
  it.each([
    [
      '[tutte le zone]\nrilascio = 0,8 s\naccordatura = -4 cent\n\n[zona 1]\ncampione = a.wav\ntasti = 29-40\n\n[zona 2]\ncampione = b.wav\ntasti = 41-55\nrilascio = 0,35 s',
    ],
    [
      '[defaults]\nrelease = 800 ms\ntune = -4\n\n[zone 1]\nfile = a.wav\nkeys = 29-40\n\n[zone 2]\nfile = b.wav\nkeys = 41-55\nrelease = 350 ms',
    ],
    [
      '[alle Zonen]\nAusklingzeit: 0,8 s\nStimmung: -4 Cent\n\n[Zone 1]\nDatei: a.wav\nTasten: 29-40\n\n[Zone 2]\nDatei: b.wav\nTasten: 41-55\nAusklingzeit: 0,35 s',
    ],
    [
      'defaults:\n  release: 0.8 s\n  tune: -4\nzones:\n  - file: a.wav\n    keys: 29-40\n  - file: b.wav\n    keys: 41-55\n    release: 0.35 s',
    ],
  ])('stand before the zones: %s', (text) => {
    expect(values(text, 'sample', 'lokey', 'hikey', 'tune', 'ampeg_release')).toEqual([
      'a.wav 29 40 -4 0.8',
      'b.wav 41 55 -4 0.35',
    ]);
  });

  it.each([
    [
      'Soft (velocity 1 to 50), release 1.2 s, everything tuned -5 cents',
      'hivel=50 lovel=1 ampeg_release=1.2 tune=-5',
      'Soft',
    ],
    [
      'Octave doubling (velocity 110 to 127), transpose +12, level -9 dB',
      'hivel=127 lovel=110 transpose=12 volume=-9',
      'Octave doubling',
    ],
    ['Key-off noises: play on release, level -12 dB', 'trigger=release volume=-12', 'Key-off noises'],
    ['Leise – Anschlag bis 63, -3 dB', 'hivel=63 volume=-3', 'Leise'],
    ['Fort (vélocité 64 à 127), relâchement 300 ms', 'hivel=127 lovel=64 ampeg_release=0.3', 'Fort'],
    ['Suave [1-60]', 'hivel=60 lovel=1', 'Suave'],
    ['Soft layer', undefined, undefined],
    ['Recorded in 1998', undefined, undefined],
  ])('may be titles: %s', (text, expected, name) => {
    const found = statedSettings(text);
    const said =
      found && [...found.values].map(([one, value]) => `${one}=${value}`).sort((a, b) => a.localeCompare(b));
    expect(said?.join(' ')).toBe(
      expected
        ?.split(' ')
        .sort((a, b) => a.localeCompare(b))
        .join(' '),
    );
    expect(found?.name).toBe(name);
  });

  it.each([
    '=== Soft (velocity 1 to 50), release 1.2 s ===\na.wav    keys 24-31   root 28\n\n=== Loud (velocity 51 to 127) ===\nb.wav    keys 24-31   root 28   -1 dB\n\n=== not mapped yet ===\nc.wav',
    table(
      'File | Keys | Root | Gain',
      'Soft (velocity 1 to 50), release 1.2 s',
      'a.wav | 24-31 | 28 | 0',
      'Loud (velocity 51 to 127)',
      'b.wav | 24-31 | 28 | -1',
      'not mapped yet',
      'c.wav',
    ),
  ])('give their values to the rows below: %s', (text) => {
    expect(values(text, 'sample', 'lokey', 'lovel', 'hivel', 'ampeg_release', 'volume')).toEqual([
      'a.wav 24 1 50 1.2 -',
      'b.wav 24 51 127 - -1',
    ]);
    expect(notesOf(text).join()).toMatch(/goes for the zones below it: .*c\.wav/s);
  });
});

describe('two tables of the same samples', () => {
  it.each([
    'Klank | Laag | Hoog | Grondtoon\nklos_a | 43 | 46 | 45\nklos_b | 47 | 50 | 48\n\nNiveaus\n\nKlank | Niveau (dB) | Stemming (cent)\nklos_b | -1,0 | -7\nklos_g | -2,0 | +9\nklos_a | 0 | 0',
    'File | Low | High | Root\nklos_a.wav | 43 | 46 | 45\nklos_b.wav | 47 | 50 | 48\n\nFile | Gain (dB) | Tune (cents)\nklos_a.wav | 0 | 0\nklos_b.wav | -1 | -7\nklos_g.wav | -2 | 9',
  ])('are joined: %s', (lines) => {
    const text = lines
      .split('\n')
      .map((line) => line.replace(/ *\| */g, '\t'))
      .join('\n');
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter', 'volume', 'tune')).toEqual([
      '43 46 45 - -',
      '47 50 48 -1 -7',
    ]);
    expect(notesOf(text).join()).toMatch(/joined.*klos_g.*left out/s);
  });
});

describe('headings in other words', () => {
  it.each([
    'Skip frames at start',
    'Frames to skip',
    'Pominąć na początku (ramki)',
    'Am Anfang überspringen (Frames)',
    'Sauter au début (frames)',
    'Omitir al inicio (frames)',
    'Saltare all’inizio (frame)',
    'Overslaan aan begin (frames)',
    'Hoppa över i början (frames)',
    'Пропустить в начале (frames)',
  ])('"%s" is where the sample starts', (heading) => {
    const text = table(
      `File | Low key | High key | ${heading}`,
      'a.wav | 36 | 41 | 120',
      'b.wav | 42 | 47 | 0',
      'c.wav | 48 | 53 | 85',
    );
    expect(values(text, 'offset')).toEqual(['120', '-', '85']);
  });

  it.each([
    'Velocity up to',
    'up to velocity',
    'Vel max',
    'Anschlag bis',
    'bis Anschlag',
    'Vélocité jusqu’à',
    'Velocidad hasta',
    'Velocità fino a',
    'Aanslag tot',
  ])('"%s" is the highest velocity of each layer', (heading) => {
    const text = table(
      `File | Keys | ${heading}`,
      'a.wav | 60-64 | 40',
      'b.wav | 60-64 | 90',
      'c.wav | 60-64 | 127',
      'd.wav | 65 | 127',
    );
    expect(values(text, 'lovel', 'hivel')).toEqual(['- 40', '41 90', '91 127', '- 127']);
  });

  it.each([
    ['soft', 'loud'],
    ['Soft limit', 'Loud limit'],
    ['softest', 'loudest'],
    ['leiseste', 'lauteste'],
    ['doux', 'fort'],
    ['más suave', 'más fuerte'],
    ['zachtste', 'luidste'],
  ])('"%s" and "%s" are the ends of velocities', (low, high) => {
    const text = table(
      `File | Keys | ${low} | ${high}`,
      'a.wav | 60-64 | 1 | 64',
      'b.wav | 60-64 | 65 | 127',
    );
    expect(values(text, 'lovel', 'hivel')).toEqual(['1 64', '65 127']);
  });

  it('"Fade-in (ms)" is the attack', () => {
    const text = table(
      'File | Key | Fade-in (ms) | Fade-out (s)',
      'a.wav | 60 | 20 | 0.5',
      'b.wav | 62 | 5 | 1',
    );
    expect(values(text, 'ampeg_attack', 'ampeg_release')).toEqual(['0.02 0.5', '0.005 1']);
  });

  it('names one end alone', () => {
    const text = table('muestra | grave | aguda | raíz', 'a.wav | C1 | F1 | D1', 'b.wav | F#1 | A#1 | G#1');
    expect(values(text, 'lokey', 'hikey')).toEqual(['24 29', '30 34']);
  });

  it('gives a level for its column of samples', () => {
    const text = table(
      'Keys | Close mics | Room mics, mixed at -6 dB',
      '36-42 | a.wav | b.wav',
      '43-48 | c.wav | (lost)',
    );
    expect(values(text, 'sample', 'group', 'volume')).toEqual([
      'a.wav Close -',
      'c.wav Close -',
      'b.wav Room -6',
    ]);
    expect(notesOf(text).join()).toMatch(/volume=-6.*"\(lost\)"|"\(lost\)".*volume=-6/s);
  });
});

describe('pan in words', () => {
  it.each([
    ['ganz rechts', 100],
    ['hard left', -100],
    ['fully right', 100],
    ['tout à gauche', -100],
    ['a la derecha', 100],
    ['helemaal links', -100],
    ['halb links', -50],
    ['half right', 50],
    ['rechts außen', 100],
    ['slightly left', undefined],
    ['left hand', undefined],
  ])('%s', (text, pan) => {
    expect(readPan(text)).toBe(pan);
  });
});

describe('marks of wikis inside cells', () => {
  it.each([
    ['<code>kits/bd.wav</code>', 'kits/bd.wav'],
    ['[[Media:bd.wav|listen]]', 'bd.wav'],
    ['[[bd.wav]]', 'bd.wav'],
    ['<nowiki>bd.wav</nowiki><ref>felt</ref>', 'bd.wav'],
    ["''bd.wav''", 'bd.wav'],
  ])('%s', (cell, sample) => {
    const text = `{| class="wikitable"\n! Sound !! File !! MIDI key !! Pan<br />(−100 left, +100 right)\n|-\n| Kick || ${cell} || 35 || −35\n|-\n| Snare || [[sd.wav]] || 38 || +5\n|}`;
    expect(values(text, 'sample', 'key', 'pan')).toEqual([`${sample} 35 -35`, 'sd.wav 38 5']);
  });
});

// A region without a root key plays its sample as if it was recorded at key 60 (SFZ 1, "pitch_keycenter", default).
describe('roots that no column gives', () => {
  const ranges = (...names: string[]) =>
    table('File | Lowest | Highest', ...names.map((name, at) => `${name} | ${55 + 5 * at} | ${59 + 5 * at}`));

  it.each([
    ['C4', ['Zith2_A3_take3.wav', 'Zith2_D4_take3.wav', 'Zith2_G4_take1.wav']],
    ['C3', ['saw A2.wav', 'saw D3.wav', 'saw G3.wav']],
  ])('are the notes in the names of the files, with %s as key 60', (name, files) => {
    expect(values(ranges(...files), 'pitch_keycenter')).toEqual(['57', '62', '67']);
    expect(notesOf(ranges(...files)).join('\n')).toContain(`(${name} is key 60)`);
  });

  it('are not taken from names that speak of other keys', () => {
    const files = ['a C7.wav', 'b C7.wav', 'c C7.wav'];
    expect(values(ranges(...files), 'pitch_keycenter')).toEqual(['-', '-', '-']);
    expect(notesOf(ranges(...files)).join('\n')).toContain('no root keys');
  });

  it('are those that the sample files carry, before the names', () => {
    const text = ranges('one A3.wav', 'two D4.wav');
    const rootKeyOf = (name: string) => (name.startsWith('one') ? 56 : 61);
    expect(regions(text, { rootKeyOf }).map((region) => region.pitch_keycenter)).toEqual(['56', '61']);
    expect(regions(text, { rootKeyOf: () => 60 }).map((region) => region.pitch_keycenter)).toEqual([
      '57',
      '62',
    ]);
  });

  it('are the key itself where a zone has one key', () => {
    const text = table('File | Low | High', 'kick.wav | 36 | 36', 'snare.wav | 38 | 38');
    expect(values(text, 'pitch_keycenter')).toEqual(['36', '38']);
  });
});

// A piano of 88 keys counts from A0, MIDI key 21, to C8, so that middle C is the 40th (common practice).
describe('keys counted on a keyboard of 88', () => {
  it.each([
    'Keys are counted from the left on an 88-key keyboard.',
    '1 is the lowest key, 40 = middle C',
    'Tasten auf der 88er-Tastatur von links gezählt',
    'Les touches sont comptées sur un clavier de 88 touches.',
    'Teclas contadas en un teclado de 88 teclas',
    'Do central = 40',
    'Клавиши считаются слева на клавиатуре из 88 клавиш.',
    '88鍵の左から数えた番号',
    '按88个键从左数',
    '건반 번호는 88건반의 왼쪽부터 센 것입니다',
  ])('are understood by "%s"', (said) => {
    const rows = table('File | Low | High | Root', 'a.wav | 28 | 32 | 30', 'b.wav | 33 | 37 | 35');
    expect(values(`${said}\n\n${rows}`, 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '48 52 50',
      '53 57 55',
    ]);
    expect(notesOf(`${said}\n\n${rows}`).join()).toContain('as those of a piano');
  });

  it.each([
    'Made for an 88-key keyboard',
    '88 keys, MIDI key numbers',
    '88 keys are numbered; middle C is 60',
  ])('are not by "%s"', (said) => {
    const rows = table('File | Low | High | Root', 'a.wav | 28 | 32 | 30', 'b.wav | 33 | 37 | 35');
    expect(values(`${said}\n\n${rows}`, 'lokey')).toEqual(['28', '33']);
  });
});

describe('how far letters and words for the sides go', () => {
  it.each([
    'Pan: L50 = hard left, C = middle, R50 = hard right',
    'Pan von L50 bis R50',
    'Pan goes from L 50 (left) to R 50.',
    '-50 is left, 50 is right',
    'left = -50, right = 50',
    'links: -50, rechts: 50',
    '-50 = 왼쪽 끝, 50 = 오른쪽 끝',
    '左＝-50、右＝50',
  ])('is told by "%s"', (said) => {
    const rows = table('File | Root | Pan', 'a.wav | 60 | L20', 'b.wav | 62 | R10', 'c.wav | 64 | C');
    expect(values(`${said}\n\n${rows}`, 'pan')).toEqual(['-40', '20', '-']);
  });

  it('stays a hundred where the text gives two numbers', () => {
    const rows = table('File | Root | Pan', 'a.wav | 60 | L20', 'b.wav | 62 | R10');
    expect(values(`Two rows, L20 and R10.\n\n${rows}`, 'pan')).toEqual(['-20', '10']);
  });
});

describe('velocities of dynamics', () => {
  it.each([
    '弱=1～40 中=41～90 強=91～127',
    '弱：１〜４０、中：４１〜９０、強：９１〜１２７',
    '弱 1~40, 中 41~90, 強 91~127',
  ])('are told by "%s"', (said) => {
    const rows = table('ファイル | 鍵盤 | 強さ', 'a.wav | 60 | 弱', 'b.wav | 60 | 中', 'c.wav | 60 | 強');
    expect(values(`${said}\n\n${rows}`, 'lovel', 'hivel')).toEqual(['1 40', '41 90', '91 -']);
  });
});

describe('layers that the text names by letters', () => {
  it('stand apart by blanks alone too', () => {
    const rows = table('File | Root | Layer', 'a.wav | 60 | A', 'b.wav | 60 | B', 'c.wav | 60 | C');
    expect(values(`A=1-40 B=41-90 C=91-127\n\n${rows}`, 'lovel', 'hivel')).toEqual([
      '1 40',
      '41 90',
      '91 127',
    ]);
  });
});

describe('lists of ranges with roots in brackets', () => {
  const keysOf = (text: string) =>
    regions(text).map(({ lokey, hikey, pitch_keycenter }) => `${lokey} ${hikey} ${pitch_keycenter}`);
  const said = ['28 31 29', '32 35 33', '36 40 38'];

  it.each([
    '28-31 (29)  b_one.wav\n32-35 (33)  b_two.wav   // noisy\n36-40 (38)  b_three.wav  // 41-45 before\n',
    '- 28..31 @29 b_one.wav\n- 32..35 @33 b_two.wav // take 3\n- 36..40 @38 b_three.wav\n',
    'E1–G1 [Grundton F1]: b_one.wav\nGis1–H1 [Grundton A1]: b_two.wav\nC2–E2 [Grundton D2]: b_three.wav\n',
    '28-31 (29): b_one.wav, -3 dB\n32-35 (33): b_two.wav\n36-40 (38): b_three.wav, L20\n',
  ])('%s', (text) => {
    expect(keysOf(text)).toEqual(said);
  });
});

// Common practice, from memory: words of the languages for letting a key go.
describe('a sample that a sentence says sounds on release', () => {
  it.each([
    'joué au relâchement',
    'jouée au relâchement de la touche',
    'played on key release',
    'sounds when the key is released',
    'wird beim Loslassen der Taste gespielt',
    'suena al soltar la tecla',
    'suona al rilascio del tasto',
    'toca ao soltar a tecla',
    'klinkt bij het loslaten van de toets',
  ])('%s', (clause) => {
    const text = `pin_a.wav: keys 36 to 50, root 40.\npin_b.wav: ${clause}, keys 36 to 50, root 40, -12 dB.\n`;
    expect(regions(text).map(({ trigger }) => trigger ?? 'attack')).toEqual(['attack', 'release']);
  });
});

it('takes small words of Norwegian and Danish sentences for no loops, and reads both ends of a range', () => {
  const text = [
    'Fila dulc_1.wav går fra tangent 40 til 44 med grunntone 42, dempet 4 dB.',
    'Fila dulc_2.wav går fra tangent 45 til 49 med grunntone 47, panorert helt til høyre.',
    'Fila dulc_3.wav går fra tangent 50 til 54 med grunntone 52, panorert 40 prosent til venstre og hevet 1 dB.',
  ].join('\n');
  expect(regions(text)).toMatchObject([
    { lokey: '40', hikey: '44', pitch_keycenter: '42', volume: '-4' },
    { lokey: '45', hikey: '49', pitch_keycenter: '47', pan: '100' },
    { lokey: '50', hikey: '54', pitch_keycenter: '52', pan: '-40', volume: '1' },
  ]);
  expect(regions(text).every(({ loop_mode }) => loop_mode === undefined)).toBe(true);
});
