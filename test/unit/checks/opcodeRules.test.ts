import { describe, expect, it } from 'vitest';
import { applyFix, checkText, expectMarks, fixesOf } from './markedText';

describe('opcode-unknown', () => {
  it('marks the name, offers the nearest known one and puts it in', () => {
    const checked = expectMarks(`<region> sample=a.wav cutof=500
                      ^^^^^ opcode-unknown warning`);
    expect(checked.findings[0]?.message).toContain('cutoff');
    expect(applyFix(checked.text, fixesOf(checked, 'opcode-unknown')[0])).toBe(
      '<region> sample=a.wav cutoff=500',
    );
  });

  it('says nothing more under a header that is unknown itself, nor of variables that are not defined', () => {
    expectMarks(`<regoin> colour=red lokey=1
 ^^^^^^ header-unknown warning`);
    expectMarks(`<region> sample=a.wav amp_$PART=3
                          ^^^^^ define-unknown warning`);
  });
});

describe('opcode-value', () => {
  it('marks wrong types, unknown options and empty values as errors', () => {
    expectMarks(`<region> sample=a.wav volume=-6dB
                             ^^^^ opcode-value error
tune=abc
     ^^^ opcode-value error
lokey=h4
      ^^ opcode-value error
key=60.5
    ^^^^ opcode-value error
lovel=1.5
      ^^^ opcode-value error
loop_mode=loop_continous
          ^^^^^^^^^^^^^^ opcode-value error
pan=
^^^ opcode-value error`);
  });

  it('informs of values past the documented bounds', () => {
    // Bounds of the public documentation of the open SFZ format: pan −100..100, key 0..127.
    expectMarks(`<region> sample=a.wav pan=120
                          ^^^ opcode-value information
pitch_keycenter=128
                ^^^ opcode-value information`);
  });

  it('tells of all values of an opcode past a bound once, at the furthest', () => {
    const found = checkText(
      '<region> sample=a.wav pan=120\n<region> sample=b.wav pan=180\n<region> sample=c.wav pan=150 volume=-200',
    ).findings.filter(({ code }) => code === 'opcode-value');
    expect(found.map(({ message }) => message)).toEqual([
      'pan=180 is above 100, the highest documented value. 2 more values in this file are past it. Players differ in what they do with it. Use 100 to be safe.',
      'volume=-200 is below -144, the lowest documented value. Players differ in what they do with it. Use -144 to be safe.',
    ]);
  });

  // Up to +20 dB is common practice; more is our choice for what can hurt. 20 · log10 of amplitudes: IEC 60027-3, from memory.
  it.each([
    ['volume=12', 'information', 'Most players take it'],
    ['volume=20', 'information', 'Most players take it'],
    ['volume=60', 'warning', 'volume=60 is 54 dB above 6, '],
    ['amplitude=1000', 'information', 'Most players take it'],
    ['amplitude=100000', 'warning', 'amplitude=100000 is 60 dB above 100, '],
    ['resonance=90', 'warning', 'resonance=90 is 50 dB above 40, '],
    ['gain_cc7=90', 'warning', 'gain_cc7=90 is 42 dB above 48, '],
  ])('says whether a level can hurt: %s', (text, severity, says) => {
    const found = checkText(`<region> sample=a.wav ${text}`).findings.filter(
      ({ code }) => code === 'opcode-value',
    );
    expect(found.map((one) => one.severity)).toEqual([severity]);
    expect(found[0]?.message).toContain(says);
    expect(found[0]?.message.includes('painfully loud')).toBe(severity === 'warning');
  });

  it('adds the volume to a gain before it says that a level can hurt', () => {
    const of = (text: string) =>
      checkText(text)
        .findings.filter(({ code }) => code === 'opcode-value')
        .map(({ severity }) => severity);
    expect(of('<group> volume=-70\n<region> sample=a.wav gain_cc9=70')).toEqual(['information']);
    expect(of('<group> gain_cc9=70\n<region> sample=a.wav volume=-70')).toEqual(['information']);
    expect(of('<region> sample=a.wav volume=-30 gain_cc9=70')).toEqual(['warning']);
    expect(of('<region> volume=-70 gain_cc9=70\n<region> gain_cc9=60')).toEqual(['warning']);
  });

  it('says of a tuning past the bounds what moves by semitones', () => {
    const [finding] = checkText('<region> sample=a.wav tune=-250').findings;
    expect(finding).toMatchObject({ severity: 'information', message: expect.stringContaining('transpose') });
  });

  it('accepts what instruments write', () => {
    expectMarks(`<region> sample=a.wav pitch_keycenter=sample lokey=-1 hikey=-1 lovel=0 end=-1
loop_mode=ONE_SHOT tune=3.5 locc1=63.5 amp_veltrack=+50 trigger=attack
<region> sample=b.wav lokey=C4 hikey=db5 pitch_keycenter=c#4 offset_mode=percent offset=12.5`);
  });

  it('puts in the nearest option, the bound, and the number before a unit', () => {
    const fixed = (text: string) => {
      const checked = checkText(text);
      return applyFix(text, fixesOf(checked, 'opcode-value')[0]);
    };
    expect(fixed('<region> loop_mode=loop_continous')).toBe('<region> loop_mode=loop_continuous');
    expect(fixesOf(checkText('<region> loop_mode=on'), 'opcode-value').map(({ title }) => title)).toEqual([
      'Change to no_loop',
      'Change to one_shot',
      'Change to loop_continuous',
      'Change to loop_sustain',
    ]);
    expect(fixed('<region> pan=-250')).toBe('<region> pan=-100');
    expect(fixed('<region> volume=-6dB')).toBe('<region> volume=-6');
    expect(fixed('<region> pan=0,5')).toBe('<region> pan=0.5');
  });
});

describe('opcode-misplaced', () => {
  it('marks opcodes under headers that do not take them, and before any header', () => {
    expectMarks(`volume=3
^^^^^^ opcode-misplaced warning
<control> cutoff=300
          ^^^^^^ opcode-misplaced warning
<region> sample=a.wav default_path=b/
                      ^^^^^^^^^^^^ opcode-misplaced warning`);
  });
});

describe('opcode-alias', () => {
  it('hints at the usual spelling and writes it', () => {
    const checked = expectMarks(`<region> sample=a.wav loopmode=one_shot
                      ^^^^^^^^ opcode-alias hint
LOKEY=60
^^^^^ opcode-alias hint`);
    const [fix] = fixesOf(checked, 'opcode-alias');
    expect(fix?.safe).toBe(true);
    expect(applyFix(checked.text, fix)).toContain('loop_mode=one_shot');
  });

  it('takes all common spellings of controllers', () => {
    expectMarks('<region> sample=a.wav cutoff_oncc74=100 cutoff_cc75=100 volume_oncc7=3');
  });
});

describe('findings of the reader', () => {
  it('are passed on once, although the file is included twice', () => {
    const { findings } = checkText('#include "part.sfz"\n#include "part.sfz"', {
      includes: { 'part.sfz': '<region> sample=a.wav key=60 seq_length=2\nstray words\nvolum=3' },
    });
    expect(findings.filter(({ code }) => code === 'syntax-error')).toHaveLength(1);
    expect(findings.filter(({ code }) => code === 'opcode-unknown')).toHaveLength(1);
  });
});

describe('severities', () => {
  it('override those of rules and readers, off included', () => {
    const text = '<regoin>\n<region> sample=a.wav volum=3 pan=900';
    const { findings } = checkText(text, {
      severities: { 'header-unknown': 'off', 'opcode-unknown': 'error', 'opcode-value': 'hint' },
    });
    expect(findings.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
      'opcode-unknown error',
      'opcode-value hint',
    ]);
  });

  it('lists no end of one code', () => {
    const { findings } = checkText(`<region> sample=a.wav\n${'zzzzzz=1\n'.repeat(1500)}`);
    expect(findings).toHaveLength(1000);
    expect(findings.at(-1)?.message).toContain('500 more');
  });
});
