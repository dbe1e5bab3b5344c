import { describe, expect, it } from 'vitest';
import { lackOfInstrument } from '../../../../server/vocabulary/infer/lackOfInstrument';
import { tableInXml, xmlTable } from '../../../../server/xml/tableInXml';
import { readInferred, valuesIn } from './inferred';

function told(text: string): string {
  const { decisions, unread } = readInferred(text);
  return [...decisions.filter(({ isGuess }) => isGuess).map(({ message }) => message), ...unread].join('\n');
}

describe('units beside the values', () => {
  it.each([
    ['unit="s"', 'unit="s"', '0.4', '2.5'],
    ['unit="ms"', 'unit="ms"', '400', '2500'],
    ['einheit="ms"', 'einheit="s"', '400', '2,5'],
    ['unidad="ms"', 'unidad="s"', '400', '2.5'],
    ['eenheid="sec"', 'eenheid="ms"', '0.4', '2500'],
  ])('of release times: %s and %s', (one, other, first, second) => {
    const text = `<box><toy><dieAway ${one}>${first}</dieAway><tone snd="a.wav" lo="60" hi="63"/></toy><toy><dieAway ${other}>${second}</dieAway><tone snd="b.wav" lo="64" hi="66"/></toy></box>`;
    expect(valuesIn(text, 'sample', 'ampeg_release')).toEqual(['a.wav 0.4', 'b.wav 2.5']);
    expect(told(text)).not.toContain('is not read');
  });

  it('of ranges and amounts that an attribute tells apart', () => {
    const bow = (at: number, pedal: number) =>
      `<bow src="${at}.wav" tone="${at}"><range kind="key" low="${at - 2}" high="${at + 2}"/><range kind="velocity" low="1" high="90"/><range kind="controller" number="${pedal}" low="0" high="63"/><range kind="frames" low="10" high="88199"/><range kind="loop" low="300" high="7199"/><amount kind="level" unit="dB" value="-2.5"/><amount kind="pitch" unit="ct" value="-3"/></bow>`;
    const names =
      'lokey hikey pitch_keycenter lovel hivel locc1 hicc64 offset end loop_start loop_end volume tune';
    expect(valuesIn(`<room>${bow(38, 1)}${bow(43, 64)}</room>`, ...names.split(' '))).toEqual([
      '36 40 38 1 90 0 - 10 88199 300 7199 -2.5 -3',
      '41 45 43 1 90 - 63 10 88199 300 7199 -2.5 -3',
    ]);
  });
});

describe('note names', () => {
  it('go by the case of their letters where some have no number (Helmholtz)', () => {
    const row = (file: string, low: string, high: string, root: string) =>
      `<Teil datei="${file}.wav"><Tasten><von>${low}</von><bis>${high}</bis></Tasten><Grundton>${root}</Grundton></Teil>`;
    const text = `<Schrank>${row('g', 'f', 'gis', 'g')}${row('b', 'a', 'h', 'b')}${row('fis', 'f1', 'gis1', 'fis1')}${row('C', 'A1', 'H', 'C')}</Schrank>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '53 56 55',
      '57 59 58',
      '65 68 66',
      '33 47 36',
    ]);
  });

  it.each([
    ['C1 (36)', 'E1 (40)', [36, 40]],
    ['36 (C2)', '40 (E2)', [36, 40]],
    ['Do3', 'Mi3', [48, 52]],
    ['C2', 'E2', [36, 40]],
  ])('may have their number beside them: %s', (one, other, [first, second]) => {
    const text = `<kit><pad src="a.wav" note="${one}"/><pad src="b.wav" note="${other}"/></kit>`;
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual([`${first} ${first}`, `${second} ${second}`]);
  });
});

describe('what is switched off', () => {
  it.each([
    ['<piece active="no"', '<piece active="yes"'],
    ['<piece an="nein"', '<piece an="ja"'],
    ['<piece aus="ja"', '<piece aus="nein"'],
    ['<piece actif="non"', '<piece actif="oui"'],
    ['<piece uitgeschakeld="ja"', '<piece uitgeschakeld="nee"'],
    ['<piece spento="sì"', '<piece spento="no"'],
  ])('is left out and said: %s', (off, on) => {
    const text = `<set>${off} file="a.wav" lo="40" hi="45"/>${on} file="b.wav" lo="46" hi="50"/></set>`;
    expect(valuesIn(text, 'sample')).toEqual(['b.wav']);
    expect(told(text)).toContain('"a.wav" is switched off');
  });

  it('is a loop alone where an element of its own has its points', () => {
    const tube = (file: string, low: number, state: string) =>
      `<tube file="${file}" from="${low}" to="${low + 4}"><kringel state="${state}" begin="100" end="900"/></tube>`;
    const text = `<works>${tube('a.wav', 40, 'on')}${tube('b.wav', 45, 'until-release')}${tube('c.wav', 50, 'off')}</works>`;
    expect(valuesIn(text, 'sample', 'loop_mode', 'loop_start', 'offset')).toEqual([
      'a.wav loop_continuous 100 -',
      'b.wav loop_sustain 100 -',
      'c.wav no_loop - -',
    ]);
  });

  it('is an effect of the same name as the regions, by its kind', () => {
    const text =
      '<g><piece kind="tone" file="a.wav" lo="40" hi="45"/><piece kind="tone" file="b.wav" lo="46" hi="50"/><piece kind="echo" file="hall.wav"/></g>';
    expect(valuesIn(text, 'sample')).toEqual(['a.wav', 'b.wav']);
    expect(told(text)).toContain('hall.wav');
  });
});

describe('lists that regions refer to', () => {
  it.each([
    ['id', 'id="k1"', 'id="k2"', 'k1', 'k2'],
    ['position from 0', '', '', '0', '1'],
    ['position from 1', '', '', '1', '2'],
  ])('by %s, with roots, pictures and a folder in the list', (_, one, other, first, second) => {
    const picture = one === '' ? '' : '<jar id="p" href="look.png"/>';
    const text = `<kitchen><pantry folder="Raw"><jar ${one} href="a.wav" root="40"/><jar ${other} href="b.wav" root="50"/>${picture}</pantry><serve jar="${second}" low="46" high="55"/><serve jar="${first}" low="36" high="45"/><serve jar="${second}" low="56" high="60" centre="48"/></kitchen>`;
    expect(valuesIn(text, 'sample', 'lokey', 'pitch_keycenter')).toEqual([
      'Raw/b.wav 46 50',
      'Raw/a.wav 36 40',
      'Raw/b.wav 56 48',
    ]);
  });

  it('of microphones, whose trims count', () => {
    const text =
      '<room><mic tag="near" trim="-2 dB"/><mic tag="far" trim="-9 dB"/><hit key="60"><ear mic="near" wave="n.wav"/><ear mic="far" wave="f.wav"/></hit></room>';
    expect(valuesIn(text, 'sample', 'volume')).toEqual(['n.wav -2', 'f.wav -9']);
  });
});

describe('folders', () => {
  it('of three depths are put before the file one after the other', () => {
    const text =
      '<lib base="Media"><kit folder="Reed"><layer sub="soft"><n key="60" file="c.wav"/></layer><layer sub="hard"><n key="60" file="c.wav"/></layer></kit><kit folder="Zinc"><layer sub="all"><n key="67" file="g.wav"/></layer></kit></lib>';
    expect(valuesIn(text, 'sample')).toEqual([
      'Media/Reed/soft/c.wav',
      'Media/Reed/hard/c.wav',
      'Media/Zinc/all/g.wav',
    ]);
  });

  it('are known by the slash at their end', () => {
    const text =
      '<box><toy><where>Tin/</where><t snd="1.wav" lo="60" hi="61"/></toy><toy><where>Music/</where><t snd="1.wav" lo="60" hi="61"/></toy></box>';
    expect(valuesIn(text, 'sample')).toEqual(['Tin/1.wav', 'Music/1.wav']);
  });
});

describe('ends of ranges', () => {
  it('follow from the step before where only upper ones stand', () => {
    const text =
      '<stair><step upto="47"><hit upto="63" wav="a.wav"/><hit upto="127" wav="b.wav"/></step><step upto="59"><hit upto="80" wav="c.wav"/><hit upto="127" wav="d.wav"/></step></stair>';
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel', 'hivel')).toEqual([
      '- 47 - 63',
      '- 47 64 127',
      '48 59 - 80',
      '48 59 81 127',
    ]);
    expect(told(text)).toContain('No place gives the low key');
  });

  it.each(['de a', 'da a', 'von bis', 'van tot', 'desde hasta', 'od do'])('named %s', (pair) => {
    const [low, high] = pair.split(' ');
    const text = `<m><v son="a.wav"><touches ${low}="36" ${high}="41"/></v><v son="b.wav"><touches ${low}="42" ${high}="47"/></v></m>`;
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['36 41', '42 47']);
  });

  it.each(['soft loud', 'leise laut', 'doux fort', 'zacht hard', 'suave fuerte'])(
    'of velocities: %s',
    (pair) => {
      const [low, high] = pair.split(' ');
      const text = `<m><v file="a.wav" key="60" ${low}="1" ${high}="63"/><v file="b.wav" key="60" ${low}="64" ${high}="127"/></m>`;
      expect(valuesIn(text, 'lovel', 'hivel', 'volume')).toEqual(['1 63 -', '64 127 -']);
    },
  );
});

describe('turns, groups that silence and sounds to their end', () => {
  it.each(['1 of 3|2 of 3|3 of 3', '1 von 3|2 von 3|3 von 3', '1/3|2/3|3/3', '1 de 3|2 de 3|3 de 3'])(
    'take turns: %s',
    (turns) => {
      const rows = turns.split('|').map((turn, at) => `<t file="${at}.wav" key="60" turn="${turn}"/>`);
      expect(valuesIn(`<s>${rows.join('')}</s>`, 'seq_position', 'seq_length')).toEqual([
        '1 3',
        '2 3',
        '3 3',
      ]);
    },
  );

  it.each(['reihum', 'cycle', 'tourniquet', 'rotazione'])('take turns in their order in <%s>', (element) => {
    const text = `<s><p key="60"><${element}><h file="a.wav" pan="0"/><h file="b.wav" pan="1"/></${element}></p><p key="62"><${element}><h file="c.wav" pan="0"/></${element}></p></s>`;
    expect(valuesIn(text, 'seq_position', 'seq_length')).toEqual(['1 2', '2 2', '- -']);
  });

  it('are silenced by name', () => {
    const text =
      '<b><c suono="a.wav" tasto="42" gruppo="ch" zittito_da="ch"/><c suono="b.wav" tasto="46" gruppo="ch" zittito_da="ch"/><c suono="d.wav" tasto="36"/></b>';
    expect(valuesIn(text, 'group', 'off_by')).toEqual(['1 1', '1 1', '- -']);
  });

  it.each([
    'suona_fino_in_fondo="sì"',
    'bisZumEnde="ja"',
    'one-shot="yes"',
    'jusquau-bout="oui"',
    'play_to_end="true"',
    'hastaElFinal="si"',
  ])('sound to their end: %s', (flag) => {
    const text = `<b ${flag}><c file="a.wav" key="42"/><c file="b.wav" key="46"/></b>`;
    expect(valuesIn(text, 'loop_mode')).toEqual(['one_shot', 'one_shot']);
  });
});

describe('levels of elements around', () => {
  it('are added where most regions have one of their own, and a note says so', () => {
    const text =
      '<c><d gain="-6 dB"><s tape="a.wav" keys="43-50" gain="-2 dB"/><s tape="b.wav" keys="51-58"/><s tape="e.wav" keys="59-67" gain="1 dB"/></d></c>';
    expect(valuesIn(text, 'volume', 'group_volume')).toEqual(['-2 -6', '- -6', '1 -6']);
    const { decisions } = readInferred(text);
    expect(decisions.find(({ id }) => id.endsWith('.adds'))?.confidence).toBeLessThan(0.75);
  });
});

describe('XML that is no instrument', () => {
  it.each([
    [
      'it speaks of a shop',
      '<shop><article><range low="A0" high="C8"/><demo file="a.mp3"/><price currency="EUR">9</price></article><article><range low="F4" high="G6"/><demo file="b.mp3"/><price currency="EUR">8</price></article></shop>',
    ],
    [
      'lie below those of instruments',
      '<menu><option key="1" file="a.wav" volume="70"/><option key="2" file="b.wav" volume="75"/></menu>',
    ],
    ['names no audio files', '<menu><dish name="soup" price="4"/></menu>'],
    ['of another kind', '<rss><channel><item/></channel></rss>'],
  ])('is refused, since it %s', (reason, text) => {
    expect(readInferred(text).regions).toEqual(['none']);
    expect(lackOfInstrument(text)).toContain(reason);
  });
});

describe('a table as text in XML', () => {
  it('stays where it stands, with its heads and nothing else', () => {
    const text =
      '<l a="b"><heads split="|">wav | low | high</heads><body><![CDATA[\na | F2 | G2\nb | G#2 | Bb2\n]]></body><x>other</x></l>';
    const table = tableInXml(text) as string;
    expect(table).toHaveLength(text.length);
    expect(table.split('\n').map((line) => line.trim())).toEqual([
      'wav | low | high',
      'a | F2 | G2',
      'b | G#2 | Bb2',
      '',
    ]);
    expect(table.indexOf('G#2')).toBe(text.indexOf('G#2'));
  });

  it('may have its parts set apart by other signs', () => {
    const text = '<n><e>C4-E4 = oca d.wav @ D4</e>\n<e>F4-A4 = oca g.wav @ G4</e><about>found</about></n>';
    const cells = (tableInXml(text) as string)
      .split('\n')
      .map((line) => line.split('\t').map((one) => one.trim()));
    expect(cells).toEqual([
      ['C4-E4', 'oca d.wav', 'D4'],
      ['F4-A4', 'oca g.wav', 'G4'],
    ]);
    expect(tableInXml('<a><b>one</b><b>two</b></a>')).toBeUndefined();
  });
});

describe('what the values and those around them tell', () => {
  it.each([
    ['a="10 ms" d="400 ms" s="-6 dB" r="300 ms"', '0.01 0.4 50.118723 0.3'],
    ['attack="10 ms" decay="400 ms" sustain="50%" release="300 ms"', '0.01 0.4 50 0.3'],
    ['anstieg="0.01" abfall="0.4" haltepegel="50%" ausklang="0.3"', '0.01 0.4 50 0.3'],
  ])('envelopes: %s', (shape, values) => {
    const text = `<m><v file="a.wav" keyLow="40" keyHigh="50"><adsr ${shape}/></v><v file="b.wav" keyLow="51" keyHigh="60"><adsr ${shape}/></v></m>`;
    const names = 'ampeg_attack ampeg_decay ampeg_sustain ampeg_release'.split(' ');
    expect(valuesIn(text, ...names)).toEqual([values, values]);
  });

  it.each(['over', 'above', 'oltre', 'uber'])('bounds that are left behind: %s', (word) => {
    const text = `<l><r ${word}="35" upto="47" root="41" disc="a.wav"/><r ${word}="47" upto="59" root="53" disc="b.wav"/></l>`;
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['36 47', '48 59']);
  });

  it.each(['speed', 'vitesse', 'Geschwindigkeit', 'snelheid'])('tunings as a ratio: %s', (word) => {
    const text = `<p><v file="a.wav" key="57" ${word}="1.0"/><v file="b.wav" key="58" ${word}="2.0"/></p>`;
    expect(valuesIn(text, 'tune')).toEqual(['0', '1200']);
  });

  it.each([
    ['1/2', '2/2'],
    ['1 of 2', '2 of 2'],
    ['1 sur 2', '2 sur 2'],
  ])('turns under any name: %s', (one, other) => {
    const text = `<s><k key="64"><strike file="a.wav" number="${one}"/><strike file="b.wav" number="${other}"/></k></s>`;
    expect(valuesIn(text, 'seq_position', 'seq_length', 'lovel')).toEqual(['1 2 -', '2 2 -']);
  });

  it('bare ends inside an element with keys are velocities', () => {
    const text =
      '<d><a key="38"><l from="1" to="79"><w file="a.wav"/></l><l from="80" to="127"><w file="b.wav"/></l></a></d>';
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel', 'hivel')).toEqual(['38 38 1 79', '38 38 80 127']);
  });

  it.each([
    ['dyn', 'p', 'f'],
    ['dynamics', 'soft', 'loud'],
    ['nuance', 'pp', 'ff'],
  ])('dynamics share the velocities out, and a note says so: %s', (name, soft, loud) => {
    const text = `<q><n pitch="C4" ${name}="${soft}" file="a.wav"/><n pitch="C4" ${name}="${loud}" file="b.wav"/></q>`;
    expect(valuesIn(text, 'lokey', 'lovel', 'hivel')).toEqual(['60 1 63', '60 64 127']);
    expect(told(text)).toContain('shared out');
  });

  it('says where nothing gives keys', () => {
    const text = '<q><n root="60" gain="-3 dB" file="a.wav"/><n root="60" gain="-2 dB" file="b.wav"/></q>';
    const lost = readInferred(text).decisions.filter(({ isLost }) => isLost);
    expect(lost.map(({ id }) => id)).toEqual(['keys.missing']);
  });

  it('names are files where the ending of all is stated', () => {
    const text = '<t ext="wav" dir="Wood"><l name="p_40" span="36..43"/><l name="f_40" span="44..50"/></t>';
    expect(valuesIn(text, 'sample', 'lokey')).toEqual(['Wood/p_40.wav 36', 'Wood/f_40.wav 44']);
  });

  it('names of notes by letter case where root keys by number prove them', () => {
    const text =
      '<K><Z wav="a.wav" unten="c1" oben="e1" midi="62"/><Z wav="b.wav" unten="b1" oben="cis2" midi="71"/></K>';
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['60 64 62', '70 73 71']);
  });

  it.each(['relacher', 'loslassen', 'rilascio', 'loslaten', 'soltar'])(
    'regions in <%s> sound on release',
    (name) => {
      const text = `<c><on><s file="a.wav" notes="36-40"/></on><${name}><s file="b.wav" notes="36-40"/><s file="d.wav" notes="41-45"/></${name}></c>`;
      expect(valuesIn(text, 'sample', 'trigger')).toContain('b.wav release');
    },
  );

  it('rows that are commented out are blank in a table as text, and told', () => {
    const text = '<l><h>wav | low | high</h><b>\na | F2 | G2\n# c | A2 | B2\nb | G#2 | Bb2\n</b></l>';
    const { table = '', commented = [] } = xmlTable(text) ?? {};
    expect(table).not.toContain('A2 | B2');
    expect(commented.map(({ start, end }) => text.slice(start, end))).toEqual(['# c | A2 | B2']);
  });

  it('ranges around lines of text are told as lost', () => {
    const lines = (at: number) => `\n36-40 = a${at}.wav @ 38\n41-45 = b${at}.wav @ 43\n`;
    const text = `<t low="C2"><u vel="1-45">${lines(1)}</u><u vel="46-127" n="3">${lines(2)}</u></t>`;
    const { around = [] } = xmlTable(text) ?? {};
    expect(around.map(({ start, end }) => text.slice(start, end))).toEqual(['vel="1-45', 'vel="46-127']);
  });

  it('a list of samples in a folder, its entries counted from 0', () => {
    const knot = (at: number, low: number) =>
      `<knot thread="${at}" notes="${low}-${low + 3}" again="${at === 1 ? 'never' : 'while held'}"/>`;
    const text = `<l><box in="low"><thread>a.wav</thread><thread>b.wav</thread></box><w>${knot(1, 40)}${knot(0, 44)}</w></l>`;
    expect(valuesIn(text, 'sample', 'loop_mode')).toEqual(['low/b.wav no_loop', 'low/a.wav loop_sustain']);
  });
});

describe('regions with a picture each', () => {
  const gong = (at: number, key: number) =>
    `<gong shown="gong${at}.png" weight="4${at}"><wave>gong${at}.wav</wave><root>${key}</root><keys from="${key - 1}" to="${key + 1}"/></gong>`;

  it('are regions all the same', () => {
    expect(
      valuesIn(`<gongs>${gong(1, 50)}${gong(2, 53)}</gongs>`, 'sample', 'lokey', 'hikey', 'pitch_keycenter'),
    ).toEqual(['gong1.wav 49 51 50', 'gong2.wav 52 54 53']);
  });

  it('may have note names in the German octaves, and the strike notes of bells as roots', () => {
    const bell = (at: number, root: string, from: string, to: string) =>
      `<Glocke Bild="b${at}.jpg"><Datei>b${at}.wav</Datei><Schlagton>${root}</Schlagton><Bereich von="${from}" bis="${to}"/></Glocke>`;
    // H. von Helmholtz: c is an octave below c1, which is middle C, and C one below c; in German use H is the note above B.
    const text = `<Glocken>${bell(1, 'A', 'Gis', 'H')}${bell(2, 'd', 'c', 'es')}${bell(3, 'h', 'e', 'h')}${bell(4, 'es1', 'c1', 'fis1')}</Glocken>`;
    expect(valuesIn(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      'b1.wav 44 47 45',
      'b2.wav 48 51 50',
      'b3.wav 52 59 59',
      'b4.wav 60 66 63',
    ]);
  });

  it('are none where the picture is that of a panel', () => {
    const text = `<set><knob shown="k.png" gain="-20"/>${gong(1, 50)}${gong(2, 53)}</set>`;
    expect(valuesIn(text, 'sample', 'volume')).toEqual(['gong1.wav -', 'gong2.wav -']);
  });
});
