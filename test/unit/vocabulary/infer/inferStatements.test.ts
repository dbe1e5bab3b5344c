import { describe, expect, it } from 'vitest';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { unreadValues } from '../../../../server/vocabulary/read/unreadValues';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';
import { readInferred } from './inferred';

const rows = (first: string, second: string, around = '', comment = '') =>
  `<barn ${around}>${comment}<beam wave="a.wav" ${first}/><beam wave="b.wav" ${second}/></barn>`;

describe('what a document says of its values', () => {
  it.each([
    ['a comment', '', '<!-- middle C is C3 -->'],
    ['an attribute', 'noteNames="C3 = 60"', ''],
    ['an attribute named after it', 'middleC="C3"', ''],
    ['an attribute named after a note', 'c3="60"', ''],
    ['an attribute named after its number', 'key60="C3"', ''],
    ['a text beside the regions', '', '<about>Key names: middle C is C3.</about>'],
  ])('settles the octave by %s', (_, around, comment) => {
    const { regions, decisions } = readInferred(
      rows('low="C3" high="E3"', 'low="F3" high="A3"', around, comment),
    );
    expect(regions).toEqual(['sample=a.wav lokey=60 hikey=64', 'sample=b.wav lokey=65 hikey=69']);
    expect(decisions.find(({ id }) => id === 'middleC')?.confidence).toBeGreaterThan(0.9);
  });

  it('settles the octave by numbers that stand beside the names', () => {
    const { regions, decisions } = readInferred(
      rows(
        'bottom="D3" top="F3" base="E3" baseNumber="40"',
        'bottom="F#3" top="A3" base="G3" baseNumber="43"',
      ),
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=38 hikey=41 pitch_keycenter=40',
      'sample=b.wav lokey=42 hikey=45 pitch_keycenter=43',
    ]);
    expect(decisions.find(({ id }) => id === 'middleC')?.evidence.join()).toMatch(/numbers of 2 keys/);
  });

  it('settles units and ranges', () => {
    const { regions } = readInferred(
      rows(
        'note="40" volume="100" tuning="0.5" pan="32" softest="0" hardest="40"',
        'note="41" volume="50" tuning="1" pan="64" softest="41" hardest="100"',
        'velocityRange="0..100" panScale="0 to 127"',
        '<!-- volume in percent, tuning in cents -->',
      ),
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=40 hikey=40 pitch_keycenter=40 volume=0 tune=0.5 pan=-50 lovel=0 hivel=51',
      'sample=b.wav lokey=41 hikey=41 pitch_keycenter=41 volume=-6.0206 tune=1 pan=0 lovel=52 hivel=127',
    ]);
  });

  it('settles where loops end and from what number frames are counted', () => {
    const { regions } = readInferred(
      rows(
        'note="40" loopStart="1001" loopEnd="9000"',
        'note="41" loopStart="2001" loopEnd="8000"',
        'loopEnds="exclusive"',
        '<!-- frames are counted from 1 -->',
      ),
    );
    expect(regions[0]).toContain('loop_start=1000 loop_end=8998');
  });

  it.each([
    ['<!-- gains add up -->', 'volume=-2 group_volume=-3', 'group_volume=-3'],
    ['<!-- the inner gain replaces the outer one -->', 'volume=-2', 'volume=-3'],
  ])('settles what becomes of levels in one another: %s', (comment, both, outer) => {
    const { regions, decisions } = readInferred(
      `<barn>${comment}<bay gain="-3"><beam wave="a.wav" note="40" gain="-2"/><beam wave="b.wav" note="41"/></bay></barn>`,
    );
    for (const [at, values] of [both, outer].entries())
      for (const value of values.split(' ')) expect(regions[at].split(' ')).toContain(value);
    expect(decisions.filter(({ isGuess }) => isGuess)).toEqual([]);
  });

  it('is missed where levels stand in one another and nothing says what becomes of them', () => {
    const { decisions } = readInferred(
      '<barn><bay gain="-3"><beam wave="a.wav" note="40" gain="-2"/><beam wave="b.wav" note="41"/></bay></barn>',
    );
    const guess = decisions.find(({ isGuess }) => isGuess);
    expect(guess?.message).toBe('"gain" of <bay> is the level of each region inside that gives none itself.');
    expect(guess?.choices.map(({ label }) => label)).toEqual(['it is added to theirs']);
  });
});

describe('what starts regions', () => {
  it.each([
    ['type="down"', 'type="up"'],
    ['phase="key press"', 'phase="key release"'],
    ['when="attack"', 'when="release"'],
    ['startsOn="noteOn"', 'startsOn="noteOff"'],
  ])('is read from %s and %s', (press, release) => {
    const { regions } = readInferred(rows(`note="40" ${press}`, `note="40" ${release}`));
    expect(regions.map((region) => /trigger=\S+/.exec(region)?.[0])).toEqual([
      'trigger=attack',
      'trigger=release',
    ]);
  });

  it('is read from the name of an element around them', () => {
    const { regions, decisions } = readInferred(
      `<barn><onPress><beam wave="a.wav" note="40"/></onPress><onRelease><beam wave="b.wav" note="40"/></onRelease></barn>`,
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=40 hikey=40 pitch_keycenter=40',
      'trigger=release sample=b.wav lokey=40 hikey=40 pitch_keycenter=40',
    ]);
    expect(decisions.find(({ id }) => id === 'onRelease.release')?.isGuess).toBe(true);
  });
});

describe('positions in a round robin', () => {
  const takes = (first: number) =>
    [0, 1, 2].map((take) => `<take wave="${take}.wav" keys="40-44" turn="${first + take}"/>`).join('');

  it.each([0, 1])('are as many as occur, counted from %i', (first) => {
    const { regions } = readInferred(
      `<barn><row>${takes(first)}</row><row><take wave="x.wav" keys="50-52"/></row></barn>`,
    );
    expect(regions.map((region) => /seq.*$/.exec(region)?.[0])).toEqual([
      'seq_position=1 seq_length=3',
      'seq_position=2 seq_length=3',
      'seq_position=3 seq_length=3',
      undefined,
    ]);
  });
});

describe('sample rates beside samples', () => {
  it('count seconds where no file tells', () => {
    const { regions, unread } = readInferred(
      `<barn><beam tape="7" note="40" loopFrom="0.5" loopTo="1.5"/><beam tape="9" note="41" loopFrom="0.25" loopTo="1"/>
      <tapes><tape no="7" file="a.wav" rate="48000"/><tape no="9" file="b.wav" rate="96000"/></tapes></barn>`,
    );
    expect(regions.map((region) => /loop_start.*$/.exec(region)?.[0])).toEqual([
      'loop_start=24000 loop_end=72000 loop_mode=loop_continuous',
      'loop_start=24000 loop_end=96000 loop_mode=loop_continuous',
    ]);
    expect(unread).toEqual([]);
  });

  it('may stand in the region, or be said of all', () => {
    const loop = 'loopFrom="0.5" loopTo="1.5"';
    expect(readInferred(rows(`note="40" ${loop} sampleRate="32000"`, 'note="41"')).regions[0]).toContain(
      'loop_start=16000 loop_end=48000',
    );
    expect(
      readInferred(rows(`note="40" ${loop}`, 'note="41"', '', '<!-- all at 96 kHz -->')).regions[0],
    ).toContain('loop_start=48000 loop_end=144000');
  });
});

describe('regions of several names', () => {
  it('are read alike, and start on release where their name says so', () => {
    const { regions, vocabulary } = readInferred(
      '<barn><beam wave="a.wav" low="30" high="40"/><releaseBeam wave="r.wav" low="30" high="40"/><plank wave="p.wav" low="41" high="50"/><effect wave="hall.wav"/></barn>',
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=30 hikey=40',
      'trigger=release sample=r.wav lokey=30 hikey=40',
      'sample=p.wav lokey=41 hikey=50',
    ]);
    expect(vocabulary && parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
  });
});

describe('places whose names say little', () => {
  it('are velocity layers where they hold pairs of numbers, and root keys where they lie in the key range', () => {
    const { regions, decisions } = readInferred(
      rows('low="30" high="40" at="35" layer="1 64"', 'low="41" high="50" at="45" layer="65 127"'),
    );
    expect(regions).toEqual([
      'sample=a.wav lokey=30 hikey=40 pitch_keycenter=35 lovel=1 hivel=64',
      'sample=b.wav lokey=41 hikey=50 pitch_keycenter=45 lovel=65 hivel=127',
    ]);
    expect(decisions.filter(({ confidence }) => confidence < 0.75).map(({ id }) => id)).toEqual(
      expect.arrayContaining(['pitch_keycenter', 'lovel']),
    );
  });

  it('are no names of what stands around them', () => {
    const { regions } = readInferred(
      '<barn><exclusive name="hat"/><beam wave="a.wav" low="30" high="40"/></barn>',
    );
    expect(regions).toEqual(['sample=a.wav lokey=30 hikey=40']);
  });

  it('may count loops in seconds here and in frames there', () => {
    const { regions } = readInferred(
      rows(
        'note="40" loopFromSeconds="0.5" loopToSeconds="1"',
        'note="41" loopFromFrame="500" loopToFrameExclusive="9000"',
      ),
    );
    expect(regions[0]).toContain('loop_start=22050 loop_end=44100');
    expect(regions[1]).toContain('loop_start=500 loop_end=8999');
  });
});

describe('elements around regions that say something by their names', () => {
  it('are round robins of what is in them, and start on release', () => {
    const { regions, decisions, vocabulary } = readInferred(
      `<barn><down><cycle low="60" high="64"><f>a.wav</f><f>b.wav</f></cycle></down>
      <up><stall low="60" high="64" dB="-5"><f>r.wav</f></stall></up></barn>`,
    );
    expect(regions).toEqual([
      'lokey=60 hikey=64 seq_position=1 seq_length=2 sample=a.wav',
      'lokey=60 hikey=64 seq_position=2 seq_length=2 sample=b.wav',
      'trigger=release lokey=60 hikey=64 volume=-5 sample=r.wav',
    ]);
    expect(decisions.filter(({ isGuess }) => isGuess).map(({ id }) => id)).toEqual(
      expect.arrayContaining(['up.release', 'cycle.turns']),
    );
    expect(vocabulary && parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
  });
});

describe('a place that only explains others', () => {
  // MIDI 1.0: middle C is key 60; that C3 is another name for it is common practice.
  const shelf = (place: string) =>
    `<shelf ${place}><jar audio="a.wav" low="C2" high="B2" root="F2"/><jar audio="b.wav" low="C3" high="B3" root="F3"/></shelf>`;

  it.each([['middle-c="C3"'], ['octaves="C3 = 60"']])(
    'is understood where values are read so: %s',
    (place) => {
      const { regions, unread } = readInferred(shelf(place));
      expect(regions[1]).toContain('lokey=60');
      expect(unread).toEqual([]);
    },
  );

  it('is told of where values are not read so', () => {
    const { vocabulary } = readInferred(shelf('middle-c="C3"'));
    const other = shelf('middle-c="C5"');
    expect(vocabulary).toBeDefined();
    if (!vocabulary) return;
    const unread = unreadValues(readVocabularyXml(vocabulary)(other, { path: 'a.xml' }), vocabulary);
    expect(unread.map(({ message }) => message).join()).toContain('middle-c="C5"');
  });
});
