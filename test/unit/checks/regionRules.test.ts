import { describe, expect, it } from 'vitest';
import { applyFix, checkText, expectMarks, fixesOf } from './markedText';

// Both ends of a range are part of it, so one from high to low holds nothing; -1 switches keys off: public documentation of
// the open SFZ format (CC0 1.0), lokey and hikey. Velocities from 1 to 127: MIDI 1.0, where 0 ends a note.
describe('range-inverted', () => {
  it('marks the later of the two, for every kind of range', () => {
    expectMarks(`<region> sample=a.wav lokey=64 hikey=60
                                     ^^ range-inverted error
<region> sample=b.wav key=70 lovel=100 hivel=90
                                             ^^ range-inverted error
<region> sample=c.wav key=70 hicc1=10 locc1=20
                                            ^^ range-inverted error
<region> sample=d.wav key=70 lobend=100 hibend=-100
                                               ^^^^ range-inverted error
<region> sample=e.wav key=70 lorand=0.5 hirand=0.2 sw_lokey=c2 sw_hikey=c1
                                               ^^^ range-inverted error
                                                                        ^^ range-inverted error`);
  });

  it('takes inherited ends into account, and only where a region has both', () => {
    expectMarks(`<group> lokey=60
<region> sample=a.wav hikey=50
                            ^^ range-inverted error
<group> lokey=60 hikey=50
<region> sample=b.wav hikey=70
<group> locc1=80 hicc1=20
                       ^^ range-inverted error
<region> sample=c.wav key=71
<region> sample=d.wav key=72`);
  });

  it('leaves keys that are switched off and equal ends alone, and swaps', () => {
    expectMarks('<region> sample=a.wav lokey=60 hikey=-1 on_locc64=64 on_hicc64=127');
    expectMarks('<region> sample=a.wav lokey=60 hikey=60 lovel=5 hivel=5', {
      severities: { 'velocity-gap': 'off' },
    });
    const checked = checkText('<region> sample=a.wav lokey=c5 hikey=60');
    expect(applyFix(checked.text, fixesOf(checked, 'range-inverted')[0])).toBe(
      '<region> sample=a.wav lokey=60 hikey=c5',
    );
  });
});

// Regions of one layer that partly overlap are a slip of the hand (common practice); which regions are one layer is our choice.
describe('range-overlap', () => {
  it('leaves out a region whose key or velocity is none', () => {
    for (const broken of ['lokey=H2 hikey=50', 'lokey=40 hikey=50 hivel=loud']) {
      const { findings } = checkText(
        `<region> sample=a.wav ${broken}\n<region> sample=b.wav lokey=45 hikey=60`,
      );
      expect(findings.map(({ code }) => code)).toEqual(['opcode-value']);
    }
  });

  it('marks the later region, names the other, and offers to end one before the other', () => {
    const checked = expectMarks(`<group>
<region> sample=low.wav lokey=48 hikey=60
<region> sample=high.wav lokey=60 hikey=72
^^^^^^^^ range-overlap warning`);
    const [finding] = checked.findings;
    expect(checked.text.slice(finding?.related?.[0]?.start)).toMatch(/^<region> sample=low\.wav/);
    expect(finding?.message).toContain('key 60 (C4)');
    const fixed = fixesOf(checked, 'range-overlap').map((fix) => applyFix(checked.text, fix));
    expect(fixed[0]).toContain('hikey=59');
    expect(fixed[1]).toContain('lokey=61');
    for (const text of fixed) expect(checkText(text).findings).toEqual([]);
  });

  it('names a sample that both play once', () => {
    const text = '<region> sample=a.wav lokey=40 hikey=50\n<region> sample=a.wav lokey=50 hikey=60';
    expect(checkText(text).findings[0]?.message).toMatch(/^This and line 1, both "a\.wav", sound on key 50/);
  });

  it('marks velocity layers that share a velocity, in one group and in neighbouring groups', () => {
    expectMarks(`<region> sample=a.wav key=60 hivel=64
<region> sample=b.wav key=60 lovel=64
^^^^^^^^ range-overlap warning`);
    expectMarks(`<group> hivel=64
<region> sample=a.wav key=60
<region> sample=b.wav key=61
<group> lovel=64
<region> sample=c.wav key=60
^^^^^^^^ range-overlap warning
<region> sample=d.wav key=61`);
  });

  it('takes two layers under one header for what they are, but not a slip in one', () => {
    const zones = (name: string, width: number) =>
      Array.from({ length: 60 / width }, (_, at) => {
        const low = 30 + at * width;
        return `<region> sample=${name}${at}.wav lokey=${low} hikey=${low + width - 1}`;
      });
    const layers = [...zones('fine', 3), ...zones('broad', 10)].join('\n');
    expect(checkText(layers).findings).toEqual([]);
    const slip = zones('fine', 3).map((line, at) => (at === 7 ? line.replace('hikey=53', 'hikey=54') : line));
    expect(checkText(slip.join('\n')).findings.map(({ code }) => code)).toEqual(['range-overlap']);
  });

  it('leaves sounds laid over one another alone, but not neighbours whose names differ', () => {
    const codesOf = (...lines: string[]) => checkText(lines.join('\n')).findings.map(({ code }) => code);
    const region = (name: string, values: string) => `<region> sample=${name}.wav ${values}`;
    expect(
      codesOf(region('Glass C5', 'hikey=108'), region('Wind', ''), region('Bells', 'hikey=101')),
    ).toEqual([]);
    const slip = ['range-overlap'];
    expect(codesOf(region('Glass C5', 'hikey=108'), region('Glass C6', 'lokey=60'))).toEqual(slip);
    expect(codesOf(region('kick', 'lokey=35 hikey=37'), region('snare', 'lokey=37 hikey=39'))).toEqual(slip);
    expect(codesOf(region('bass', 'lokey=30 hikey=59'), region('strings', 'lokey=48'))).toEqual(slip);
    expect(codesOf(region('soft', 'hivel=70'), region('loud', 'lovel=64'))).toEqual(slip);
    const rows = (name: string, from: number, width: number) =>
      [0, 1, 2].map((at) =>
        region(name, `lokey=${from + at * width} hikey=${from + at * width + width - 1}`),
      );
    expect(codesOf(...rows('Celesta', 48, 12), ...rows('Wave', 54, 9))).toEqual([]);
    expect(codesOf(...rows('Celesta', 48, 12), ...rows('Wave', 81, 9))).toEqual(slip);
    const inTurn = [48, 53, 58, 63, 68, 73].map((key, at) =>
      region(at % 2 === 0 ? 'felt' : 'wood', `lokey=${key} hikey=${key + (at === 3 ? 5 : 4)}`),
    );
    expect(codesOf(...inTurn)).toEqual(slip);
  });

  it('leaves a layer alone that lies wholly over others or in one, or follows the keys by another amount', () => {
    const codesOf = (...lines: string[]) =>
      checkText(lines.map((line, at) => `<region> sample=${at}.wav ${line}`).join('\n')).findings.map(
        ({ code }) => code,
      );
    const [low, high] = ['lokey=40 hikey=54', 'lokey=55 hikey=79 pitch_keycenter=67'];
    expect(codesOf(low, high, 'lokey=40 hikey=79')).toEqual([]);
    expect(codesOf('lokey=40 hikey=79', low, high)).toEqual([]);
    expect(codesOf(low, high, 'lokey=47 hikey=79 pitch_keytrack=0')).toEqual([]);
    expect(codesOf('lokey=40 hikey=79', 'lokey=60 hikey=64')).toEqual([]);
    expect(codesOf('lokey=40 hikey=79', 'lokey=40 hikey=79 lovel=110')).toEqual([]);
    // What reaches over a neighbour that goes on with another reaches too far.
    expect(codesOf('lokey=40 hikey=59', 'lokey=50 hikey=59', 'lokey=60 hikey=70')).toEqual(['range-overlap']);
    expect(codesOf('key=60', 'key=60 lovel=64 hivel=100', 'key=60 lovel=101')).toContain('range-overlap');
  });

  it('tells one finding for a region that lies over many', () => {
    const zones = [60, 62, 64, 66, 68].map(
      (key) => `<region> sample=k${key}.wav lokey=${key} hikey=${key + 1}`,
    );
    expectMarks(`${zones.join('\n')}
<region> sample=forgotten.wav
^^^^^^^^ range-overlap warning`);
  });
});

// Two equal sounds at one time add up to twice the amplitude, 20 · log10 2 = 6 dB (IEC 60027-3, from memory).
describe('region-duplicate', () => {
  it('marks the later of two equal regions and takes it out', () => {
    const checked = expectMarks(`<group> volume=-3
<region> sample=a.wav key=60 group_label=x
<region> sample=a.wav lokey=60 hikey=60 pitch_keycenter=60 group_label=y
^^^^^^^^ region-duplicate warning
`);
    expect(applyFix(checked.text, fixesOf(checked, 'region-duplicate')[0])).toBe(
      '<group> volume=-3\n<region> sample=a.wav key=60 group_label=x\n',
    );
  });

  it('leaves doublings and round robins alone', () => {
    expectMarks(`<region> sample=a.wav key=60 tune=-5
<region> sample=a.wav key=60 tune=5
<region> sample=a.wav key=61 seq_length=2
<region> sample=a.wav key=61 seq_length=2 seq_position=2
<region> sample=a.wav key=62 pitch_random=10
<region> sample=a.wav key=62 pitch_random=10
<region> sample=a.wav key=63 trigger=attack
<region> sample=a.wav key=63 trigger=release`);
  });
});

// That keys between zones are meant to sound, and scattered percussion is meant as it is, is common practice.
describe('key-gap', () => {
  it('marks the end of the region below', () => {
    const checked = expectMarks(`<region> sample=a.wav lokey=48 hikey=59
                                     ^^ key-gap information
<region> sample=b.wav lokey=62 hikey=72`);
    expect(checked.findings[0]?.message).toContain('keys 60 (C4) to 61 (C#4)');
    const fixed = fixesOf(checked, 'key-gap').map((fix) => applyFix(checked.text, fix));
    expect(fixed).toEqual([
      checked.text.replace('hikey=59', 'hikey=61'),
      checked.text.replace('lokey=62', 'lokey=60'),
    ]);
  });

  it('takes keyswitches, releases and scattered percussion for what they are', () => {
    expectMarks(`<global> sw_lokey=60 sw_hikey=61 sw_default=60
<group> sw_last=60
<region> sample=a.wav lokey=48 hikey=59
<region> sample=b.wav lokey=62 hikey=72`);
    expectMarks(`<region> sample=kick.wav key=36
<region> sample=snare.wav key=38
<region> sample=hat.wav key=42
<region> sample=ride.wav key=51`);
    expectMarks(`<region> sample=a.wav lokey=48 hikey=59
                                     ^^ key-gap information
<region> sample=b.wav lokey=61 hikey=72
<region> sample=noise.wav trigger=release`);
    const wide = '<region> sample=a.wav lokey=48 hikey=72';
    for (const far of [
      'sample=b.wav key=90 pitch_keytrack=0',
      'sample=*silence key=20',
      'sample=b.wav key=20 end=-1',
      'sample=b.wav lokey=80 hikey=81 loop_mode=one_shot',
    ])
      expectMarks(`${wide}\n<region> ${far}`);
    const hits = [40, 41, 43, 44, 46].map((key) => `<region> sample=${key}.wav key=${key}`);
    expectMarks(`<global> loop_mode=one_shot\n${hits.join('\n')}`);
  });
});

// That velocity layers of a key leave no velocity out is common practice; velocities go from 1 to 127 (MIDI 1.0).
describe('velocity-gap', () => {
  it('marks the end of the layer below once for a row of keys, and the start where nothing lies below', () => {
    const checked = expectMarks(`<region> sample=a.wav lokey=48 hikey=59 hivel=60
                                              ^^ velocity-gap information
<region> sample=b.wav lokey=48 hikey=52 lovel=65
<region> sample=c.wav lokey=53 hikey=59 lovel=65
<region> sample=d.wav lokey=60 hikey=64 lovel=20
                                              ^^ velocity-gap information`);
    expect(checked.findings[0]?.message).toContain('velocities 61 to 64 on keys 48 (C3) to 59 (B3)');
    const [below, above] = fixesOf(checked, 'velocity-gap').map((fix) => applyFix(checked.text, fix));
    expect(below).toBe(checked.text.replace('hivel=60', 'hivel=64'));
    expect(above).toBe(checked.text.replaceAll('lovel=65', 'lovel=61'));
  });
});

describe('many regions on one place', () => {
  it('are compared with all that play the same sample', () => {
    const names = Array.from({ length: 60 }, (_, at) => `s${at % 30}.wav`);
    const { findings } = checkText(names.map((name) => `<region> sample=${name}`).join('\n'));
    expect(findings.map(({ code }) => code)).toEqual(Array(30).fill('region-duplicate'));
  });
});
