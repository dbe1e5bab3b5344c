import { expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { regionsOf } from './tableRegions';

/** A text as somebody may copy it; names of values; their values by region, written before the text was read; what a note says. */
type Fresh = [name: string, text: string, names: string, regions: string[], note?: RegExp];

const texts: Fresh[] = [
  [
    '01 mail english two dynamics by letters',
    `Hi Tam,

S is up to 59, M is 60-99 and L is everything above. Middle C is C5 on that machine!

file        from  to    home  layer
oud1_s.wav  C3    F3    D3    S
oud1_m.wav  C3    F3    D3    M
oud1_l.wav  C3    F3    D3    L
oud2_s.wav  F#3   B3    G#3   S
oud2_l.wav  F#3   B3    G#3   L
`,
    'sample lokey hikey pitch_keycenter lovel hivel',
    [
      'oud1_s.wav 36 41 38 - 59',
      'oud1_m.wav 36 41 38 60 99',
      'oud1_l.wav 36 41 38 100 -',
      'oud2_s.wav 42 47 44 - 59',
      'oud2_l.wav 42 47 44 100 -',
    ],
  ],
  [
    '02 swedish velocities up to with sections',
    `Klockspel

Svag (anslag till 70)
ljudfil\ttangenter\tgrundton
k1.wav\t60-65\t62
k2.wav\t66-71\t68

Stark (anslag från 71), utklang 400 ms
ljudfil\ttangenter\tgrundton
k1f.wav\t60-65\t62
k2f.wav\t66-71\t68
`,
    'sample lokey hikey lovel hivel ampeg_release',
    ['k1.wav 60 65 - 70 -', 'k2.wav 66 71 - 70 -', 'k1f.wav 60 65 71 - 0.4', 'k2f.wav 66 71 71 - 0.4'],
  ],
  [
    '03 german octave words csv',
    `Datei;Unterste Taste;Oberste Taste;Grundton;Lautstärke (dB)
fl_01.wav;kleines c;kleines f;kleines d;-2,5
fl_02.wav;kleines fis;kleines h;kleines gis;0
fl_03.wav;eingestrichenes c;eingestrichenes fis;eingestrichenes e;-1
`,
    'sample lokey hikey pitch_keycenter volume',
    ['fl_01.wav 48 53 50 -2.5', 'fl_02.wav 54 59 56 -', 'fl_03.wav 60 66 64 -1'],
  ],
  [
    '04 js map of mics',
    `// export of "Lantern bells"
const GAIN = { near: -3, far: 0 };
const zones = [
  { wav: "lb/n1.wav", keys: "48..53", mic: "near" },
  { wav: "lb/f1.wav", keys: "48..53", mic: "far" },
  // { wav: "lb/bad.wav", keys: "54..59", mic: "far" },
  { wav: "lb/n2.wav", keys: "54..59", mic: "near" },
];
`,
    'sample lokey hikey volume',
    ['lb/n1.wav 48 53 -3', 'lb/n2.wav 54 59 -3', 'lb/f1.wav 48 53 -'],
    /bad\.wav/,
  ],
  [
    '05 loops start+length ms with rate',
    `All at 48 kHz.

| Sample | Note | Loop start (ms) | Loop length (ms) | Loop |
|---|---|---|---|---|
| a.wav | 60 | 500 | 250 | until release |
| b.wav | 62 | 100 | 1000 | forever |
| c.wav | 64 | - | - | no |
`,
    'sample key loop_mode loop_start loop_end',
    ['a.wav 60 loop_sustain 24000 35999', 'b.wav 62 loop_continuous 4800 52799', 'c.wav 64 no_loop - -'],
  ],
  [
    '06 french ini with group blocks',
    `[commun]
gain = -2 dB

[doux]
vélocité = 1-64

[zone 1]
fichier = d1.wav
touches = 40-45

[zone 2]
fichier = d2.wav
touches = 46-50

[fort]
vélocité = 65-127

[zone 3]
fichier = f1.wav
touches = 40-50
gain = -4 dB
`,
    'sample lokey hikey lovel hivel volume',
    ['d1.wav 40 45 1 64 -2', 'd2.wav 46 50 1 64 -2', 'f1.wav 40 50 65 127 -4'],
  ],
  [
    '07 keys 1-88',
    `Piano strings, key numbers as on the piano (1 = A0, 88 = C8)

File	Key
str_01.wav	1
str_40.wav	40
str_88.wav	88
`,
    'sample key',
    ['str_01.wav 21', 'str_40.wav 60', 'str_88.wav 108'],
  ],
  [
    '08 low above high',
    `File	Low	High	Root
a.wav	48	52	50
b.wav	60	53	57
c.wav	61	66	64
`,
    'sample lokey hikey',
    ['a.wav 48 52', 'b.wav 53 60', 'c.wav 61 66'],
    /60|swap|above/,
  ],
  [
    '09 dutch two tables with root in second',
    `Bestand\tVan\tTot
x1.wav\tC2\tE2
x2.wav\tF2\tA2

Bestand\tGrondtoon\tPan
x2.wav\tG2\thelemaal rechts
x1.wav\tD2\tmidden
`,
    'sample lokey hikey pitch_keycenter pan',
    ['x1.wav 36 40 38 -', 'x2.wav 41 45 43 100'],
  ],
  [
    '10 spanish legend of loop',
    `Bucle: S = mientras se pulsa la tecla, N = sin bucle

muestra\tnota\tbucle\tinicio bucle\tfin bucle
a.wav\t60\tS\t1000\t2000
b.wav\t61\tN\t\t
`,
    'sample key loop_mode loop_start loop_end',
    ['a.wav 60 loop_sustain 1000 2000', 'b.wav 61 no_loop - -'],
  ],
  [
    '11 lone root with octave witness column',
    `Sample	Root	MIDI	Gain dB
p1.wav	A1	33	0
p2.wav	E2	40	-1
p3.wav	A2	45	-2
`,
    'sample pitch_keycenter volume',
    ['p1.wav 33 -', 'p2.wav 40 -1', 'p3.wav 45 -2'],
  ],
  [
    '12 yaml lookups',
    `layers:
  soft: {low: 1, high: 63}
  loud: {low: 64, high: 127}
zones:
  - file: a.wav
    keys: 36-47
    layer: soft
  - file: b.wav
    keys: 36-47
    layer: loud
`,
    'sample lokey hikey lovel hivel',
    ['a.wav 36 47 1 63', 'b.wav 36 47 64 127'],
  ],
  [
    '13 wiki links no code',
    `^ Datei ^ Taste ^ Anschlag ^
| [[klang:a.wav]] | 36 | ab 64 |
| {{klang:b.wav}} | 36 | bis 63 |
`,
    'sample key lovel hivel',
    ['klang:a.wav 36 64 -', 'klang:b.wav 36 - 63'],
  ],
  [
    '14 italian pan words',
    `campione\ttasti\tpan
a.wav\t40-44\ttutto a sinistra
b.wav\t45-49\tcentro
c.wav\t50-54\tmetà a destra
`,
    'sample pan',
    ['a.wav -100', 'b.wav -', 'c.wav 50'],
  ],
  [
    '15 all zones sentence wrapped',
    `Notes: all zones are -3 dB and
tuned +5 cents.

File	Key
a.wav	60
b.wav	61
`,
    'sample key volume tune',
    ['a.wav 60 -3 5', 'b.wav 61 -3 5'],
  ],
  [
    '16 portuguese soft/loud',
    `arquivo;tecla;mais fraco;mais forte
a.wav;60;1;80
b.wav;60;81;127
`,
    'sample key lovel hivel',
    ['a.wav 60 1 80', 'b.wav 60 81 127'],
  ],
  [
    '17 sections in csv',
    `name,low,high
"Release noises, -12 dB"
r1.wav,36,47
r2.wav,48,60
`,
    'sample trigger volume',
    ['r1.wav release -12', 'r2.wav release -12'],
  ],
  [
    '18 names without endings in any language',
    `Звук\tНижняя\tВерхняя\tОсновной тон
труба 1\t48\t52\t50
труба 2\t53\t57\t55
`,
    'sample lokey hikey pitch_keycenter',
    ['труба 1 48 52 50', 'труба 2 53 57 55'],
  ],
  [
    '19 ragged',
    `file low high root vel
a.wav 36 40 38 1-64
b.wav 36 40 38 65-127
c.wav 41 45 43
d.wav 46 50 48 1-127 extra
`,
    'sample lokey hikey pitch_keycenter lovel hivel',
    ['a.wav 36 40 38 1 64', 'b.wav 36 40 38 65 127', 'c.wav 41 45 43 - -', 'd.wav 46 50 48 1 127'],
  ],
  [
    '20 release in ms, attack columns',
    `Sample;Keys;Attack (ms);Release (s)
a.wav;36-40;5;0,5
b.wav;41-45;10;1,25
`,
    'sample ampeg_attack ampeg_release',
    ['a.wav 0.005 0.5', 'b.wav 0.01 1.25'],
  ],
  [
    '21 python dict by note',
    `MAP = {
    36: ("kick.wav", -2.0),
    38: ("snare.wav", 0.0),
}
`,
    'sample key',
    ['kick.wav 36', 'snare.wav 38'],
  ],
  [
    '22 c struct',
    `static const Zone zones[] = {
  /* file, low, high, root */
  { "a.wav", 36, 40, 38 },
  { "b.wav", 41, 45, 43 },
};
`,
    'sample lokey hikey pitch_keycenter',
    ['a.wav 36 40 38', 'b.wav 41 45 43'],
  ],
  [
    '23 finnish helmholtz',
    `tiedosto\talin\tylin\tperussävel
a.wav\tC\tF\tD
b.wav\tF#\tH\tG
c.wav\tc\tf\td
d.wav\tc'\tf'\td'
`,
    'sample lokey hikey pitch_keycenter',
    ['a.wav 36 41 38', 'b.wav 42 47 43', 'c.wav 48 53 50', 'd.wav 60 65 62'],
  ],
  [
    '24 dynamics table of settings',
    `pp: velocity 1-40, -6 dB
ff: velocity 41-127, 0 dB

sample\tkey\tdynamic
a.wav\t60\tpp
b.wav\t60\tff
`,
    'sample key lovel hivel',
    ['a.wav 60 1 40', 'b.wav 60 41 -'],
    /-6 dB/,
  ],
  [
    '25 html with code and rowspan',
    `<table><tr><th>Probe</th><th>Tasten</th><th>Grundton</th><th>Dynamik</th></tr>
<tr><td><code>a_p.wav</code></td><td rowspan="2">48–52</td><td rowspan="2">50</td><td>leise</td></tr>
<tr><td><code>a_f.wav</code></td><td>laut</td></tr></table>
<p>leise: 1–70, laut: 71–127</p>`,
    'sample lokey hikey lovel hivel',
    ['a_p.wav 48 52 1 70', 'a_f.wav 48 52 71 -'],
  ],
  [
    '26 helmholtz numbers german',
    `Datei\tvon\tbis\tGrundton
a.wav\tC\tF\tD
b.wav\tFis\tH\tGis
c.wav\tc\tf\td
d.wav\tc1\tf1\td1
e.wav\tfis1\tc2\ta1
`,
    'sample lokey hikey pitch_keycenter',
    ['a.wav 36 41 38', 'b.wav 42 47 44', 'c.wav 48 53 50', 'd.wav 60 65 62', 'e.wav 66 72 69'],
  ],
  [
    '27 velocities percent stated',
    `Velocity in percent.
file,keys,vel low,vel high
a.wav,60,0,50
b.wav,60,50,100
`,
    'sample lokey lovel hivel',
    ['a.wav 60 0 63', 'b.wav 60 64 127'],
  ],
  [
    '28 trailing mail signature with numbers',
    `file	key	gain
a.wav	60	-2 dB
b.wav	61	-1.5 dB
--
regards, and 2 jars of honey 127
`,
    'sample key volume',
    ['a.wav 60 -2', 'b.wav 61 -1.5'],
  ],
  [
    '29 loops inclusive stated french',
    `Les boucles vont jusqu'à la dernière trame incluse.
fichier;touche;début de boucle;fin de boucle
a.wav;60;1000;2999
`,
    'sample key loop_start loop_end',
    ['a.wav 60 1000 2999'],
  ],
  [
    '30 loops exclusive stated dutch',
    `Het einde van de lus is exclusief.
bestand;toets;lus begin;lus einde
a.wav;60;1000;3000
`,
    'sample key loop_start loop_end',
    ['a.wav 60 1000 2999'],
  ],
  [
    '31 bare list with headings',
    `Oska kit
Kicks (tune -100 cents)
36 bd1.wav
35 bd2.wav
Snares, -3 dB
38 sd1.wav
40 sd2.wav
`,
    'sample key tune volume',
    ['bd1.wav 36 -100 -', 'bd2.wav 35 -100 -', 'sd1.wav 38 - -3', 'sd2.wav 40 - -3'],
  ],
  [
    '32 json nested groups with velocity',
    `{"name":"x","groups":[{"name":"soft","velocity":{"from":1,"to":64},"zones":[{"file":"a.wav","from":36,"to":40,"root":38}]},{"name":"loud","velocity":{"from":65,"to":127},"zones":[{"file":"b.wav","from":36,"to":40,"root":38}]}]}`,
    'sample lokey hikey pitch_keycenter lovel hivel',
    ['a.wav 36 40 38 1 64', 'b.wav 36 40 38 65 127'],
  ],
  [
    '33 key from text up',
    `Sample | Key from | Root
-- | -- | --
a.wav | C2 | D2
b.wav | F2 | G2
c.wav | C3 | D3
`,
    'sample lokey hikey pitch_keycenter',
    ['a.wav 36 40 38', 'b.wav 41 47 43', 'c.wav 48 - 50'],
  ],
  [
    '34 tune ratio / transposes',
    `fichier	note	accord (cents)	transposition (demi-tons)
a.wav	60	-7	+12
b.wav	61	3	0
`,
    'sample key tune transpose',
    ['a.wav 60 -7 12', 'b.wav 61 3 -'],
  ],
  [
    '35 keys with remarks',
    `file	low	high	root
a.wav	36?	40	38
b.wav	41	45 <- check	43
c.wav	46	50	48 (was 47)
`,
    'sample lokey hikey pitch_keycenter',
    ['a.wav 36 40 38', 'b.wav 41 45 43', 'c.wav 46 50 48'],
    /remark/,
  ],
  [
    '36 dynamics words with numbers in german sentence',
    `leise geht bis 49, mittel 50 bis 99, laut ab 100

Datei	Taste	Stufe
a.wav	60	leise
b.wav	60	mittel
c.wav	60	laut
`,
    'sample key lovel hivel',
    ['a.wav 60 - 49', 'b.wav 60 50 99', 'c.wav 60 100 -'],
  ],
  [
    '37 section title ending with colon',
    `Soft, velocity 1-63:
file	key
a.wav	60
b.wav	61

Loud, velocity 64-127:
file	key
c.wav	60
d.wav	61
`,
    'sample key lovel hivel',
    ['a.wav 60 1 63', 'b.wav 61 1 63', 'c.wav 60 64 127', 'd.wav 61 64 127'],
  ],
  [
    '38 toml-like',
    `[[zone]]
file = "a.wav"
keys = [36, 40]
root = 38
velocity = [1, 63]

[[zone]]
file = "b.wav"
keys = [36, 40]
root = 38
velocity = [64, 127]
`,
    'sample lokey hikey pitch_keycenter lovel hivel',
    ['a.wav 36 40 38 1 63', 'b.wav 36 40 38 64 127'],
  ],
  [
    '39 release col words',
    `sample	keys	plays
a.wav	36-40	on key down
b.wav	36-40	on key up
`,
    'sample lokey hikey trigger',
    ['a.wav 36 40 -', 'b.wav 36 40 release'],
  ],
  [
    '40 negative pan words chinese/japanese',
    `ファイル	キー	パン	音量(dB)
a.wav	60	左	-3
b.wav	61	右	0
c.wav	62	中央	-1
`,
    'sample key pan volume',
    ['a.wav 60 -100 -3', 'b.wav 61 100 -', 'c.wav 62 - -1'],
  ],
  [
    '41 mute groups',
    `sound;file;key;choke
hat closed;hc.wav;42;1
hat open;ho.wav;46;1
kick;k.wav;36;
`,
    'sample key group off_by',
    ['hc.wav 42 1 1', 'ho.wav 46 1 1', 'k.wav 36 - -'],
  ],
  [
    '42 round robin text in sentences',
    `file	key	take
a1.wav	60	1 of 2
a2.wav	60	2 of 2
`,
    'sample key seq_position seq_length',
    ['a1.wav 60 1 2', 'a2.wav 60 2 2'],
  ],
  [
    '43 swedish pan legend',
    `Pan: 0 = helt vänster, 50 = mitten, 100 = helt höger

ljudfil	tangent	pan
a.wav	60	0
b.wav	61	50
c.wav	62	100
`,
    'sample key pan',
    ['a.wav 60 -100', 'b.wav 61 -', 'c.wav 62 100'],
  ],
  [
    '44 offset ms english',
    `Recorded at 44.1 kHz
file	key	skip at start (ms)
a.wav	60	10
b.wav	61	0
`,
    'sample key offset',
    ['a.wav 60 441', 'b.wav 61 -'],
  ],
  [
    '45 level by layer sentence',
    `All samples of the loud layer are 6 dB quieter than recorded.
file	key	vel
a.wav	60	1-63
b.wav	60	64-127
`,
    'sample key volume',
    ['a.wav 60 -', 'b.wav 60 -6'],
    /6 dB is taken off the level of 1 zone, the upper of two layers/,
  ],
  [
    '46 group titles that are dynamics w/o numbers',
    `== piano ==
file	keys
a.wav	60-64
== forte ==
file	keys
b.wav	60-64
`,
    'sample lokey lovel hivel',
    ['a.wav 60 - 63', 'b.wav 60 64 -'],
    /shared out/,
  ],
];

it.each(texts)('%s', (_, text, names, expected, note) => {
  const reading = readZoneTable(text);
  expect(reading.problem).toBeUndefined();
  const read = regionsOf(reading).map((region) =>
    names
      .split(' ')
      .map((name) => region[name] ?? '-')
      .join(' '),
  );
  expect(read).toEqual(expected);
  if (note) expect(reading.notes.map(({ message }) => message).join('\n')).toMatch(note);
});
