import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Included } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';

function regionsOf(text: string, included: Record<string, string> = {}) {
  const instrument = read(text, included);
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

function read(text: string, included: Record<string, string> = {}) {
  const include = (path: string): Included => {
    const found = included[path];
    return found === undefined ? { kind: 'missing' } : { kind: 'text', text: found };
  };
  return readSfz(text, { path: 'main.sfz', include });
}

/** The findings as `code: the text at the span`. */
function findingsOf(text: string, included: Record<string, string> = {}) {
  const instrument = read(text, included);
  return instrument.findings.map(
    ({ code, source, start, end }) => `${code}: ${instrument.sources[source]?.text.slice(start, end)}`,
  );
}

// What the texts below should mean follows the public documentation of the open SFZ format (CC0 1.0).
describe('values', () => {
  it('end before white space that an opcode follows, and may hold spaces', () => {
    expect(regionsOf('<region> sample=Soft A#3 (take 2).wav key=58')).toEqual([
      { sample: 'Soft A#3 (take 2).wav', lokey: 58, hikey: 58, pitch_keycenter: 58 },
    ]);
  });

  it('end at a header, with or without white space before it', () => {
    expect(regionsOf('<region>sample=a b.wav <region>sample=c.wav<region>sample=d.wav')).toEqual([
      { sample: 'a b.wav' },
      { sample: 'c.wav' },
      { sample: 'd.wav' },
    ]);
  });

  it('end at comments and directives', () => {
    expect(
      regionsOf('<region> sample=a.wav // why\nlovel=1 /* soft\nonly */ hivel=63 #define $X 5\ntune=$X'),
    ).toEqual([{ sample: 'a.wav', lovel: 1, hivel: 63, tune: 5 }]);
  });

  it('are numbers with a sign and a fraction', () => {
    expect(regionsOf('<region> volume=-3.25 pan=+10 tune=.5 amp_veltrack=100.')).toEqual([
      { volume: -3.25, pan: 10, tune: 0.5, amp_veltrack: 100 },
    ]);
  });

  it('may be empty', () => {
    expect(regionsOf('<region> sample= key=60\nregion_label=')).toEqual([
      { sample: '', lokey: 60, hikey: 60, pitch_keycenter: 60, region_label: '' },
    ]);
  });
});

describe('line ends and encodings', () => {
  it.each([
    ['LF', '\n'],
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('%s ends a line, a value and a comment', (_, end) => {
    const text = ['// first', '<group> hivel=63', '', '<region> sample=a b.wav', 'key=c4'].join(end);
    expect(regionsOf(text)).toEqual([
      { hivel: 63, sample: 'a b.wav', lokey: 60, hikey: 60, pitch_keycenter: 60 },
    ]);
  });

  it('a byte order mark is passed over', () => {
    expect(findingsOf('\ufeff<region> sample=a.wav')).toEqual([]);
  });
});

describe('inheritance', () => {
  it('goes from region to group to master to global', () => {
    const text = `<global> volume=-1 pan=1 tune=1 lovel=10
      <master> pan=2 tune=2
      <group> tune=3
      <region> sample=a.wav
      <region> sample=b.wav tune=4`;
    expect(regionsOf(text)).toEqual([
      { volume: -1, pan: 2, tune: 3, lovel: 10, sample: 'a.wav' },
      { volume: -1, pan: 2, tune: 4, lovel: 10, sample: 'b.wav' },
    ]);
  });

  it('starts anew at a group, a master and a global', () => {
    const text = `<global> volume=-1 <master> pan=1 <group> tune=1 <region> key=1
      <group> <region> key=2
      <master> <region> key=3
      <global> <region> key=4`;
    expect(regionsOf(text).map(({ volume, pan, tune }) => [volume, pan, tune])).toEqual([
      [-1, 1, 1],
      [-1, 1, undefined],
      [-1, undefined, undefined],
      [undefined, undefined, undefined],
    ]);
  });

  it('counts the later of two equal opcodes in a header', () => {
    expect(regionsOf('<region> tune=1 tune=2')).toEqual([{ tune: 2 }]);
  });

  it('takes key apart where it stands', () => {
    const keys = (text: string) => regionsOf(text).map((one) => [one.lokey, one.hikey, one.pitch_keycenter]);
    expect(keys('<region> key=60 lokey=58')).toEqual([[58, 60, 60]]);
    expect(keys('<region> lokey=58 key=60')).toEqual([[60, 60, 60]]);
    expect(keys('<group> key=60 <region> hikey=61 <region> pitch_keycenter=50')).toEqual([
      [60, 61, 60],
      [60, 60, 50],
    ]);
  });

  it('puts aliases under their canonical names', () => {
    expect(regionsOf('<region> loopstart=10 loopend=20 loopmode=loop_sustain offby=2')).toEqual([
      { loop_start: 10, loop_end: 20, loop_mode: 'loop_sustain', off_by: 2 },
    ]);
  });
});

describe('control', () => {
  it('puts default_path before samples as plain text, with slashes made one kind', () => {
    expect(
      regionsOf('<control> default_path=Samples\\Soft_\n<region> sample=C4.wav').map((one) => one.sample),
    ).toEqual(['Samples/Soft_C4.wav']);
  });

  it('sets default_path anew with each control and leaves generators alone', () => {
    const text = `<control> default_path=A/ <region> sample=1.wav
      <control> default_path=B/ <region> sample=2.wav <region> sample=*sine
      <control> set_cc1=10 <region> sample=3.wav`;
    expect(regionsOf(text).map((one) => one.sample)).toEqual(['A/1.wav', 'B/2.wav', '*sine', '3.wav']);
  });

  it('shifts keys by note_offset and octave_offset, but not a key that is off', () => {
    const text =
      '<control> note_offset=2 octave_offset=-1 <region> lokey=-1 hikey=60 pitch_keycenter=c4 sw_last=24';
    expect(regionsOf(text)).toEqual([{ lokey: -1, hikey: 50, pitch_keycenter: 50, sw_last: 14 }]);
  });
});

describe('define', () => {
  it('puts values into names, values and paths, the longest name first', () => {
    const text = `#define $KEY 60
      #define $KEYS 62
      #define $CC 74
      #define $DIR soft
      <region> sample=$DIR/a.wav key=$KEYS lovel=$KEY locc$CC=10`;
    expect(regionsOf(text)).toEqual([
      { sample: 'soft/a.wav', lokey: 62, hikey: 62, pitch_keycenter: 62, lovel: 60, locc74: 10 },
    ]);
  });

  it('takes several on a line', () => {
    expect(regionsOf('#define $A 1 #define $B 2\n<region> tune=$A$B')).toEqual([{ tune: 12 }]);
  });

  it('can stand for a whole opcode', () => {
    expect(regionsOf('#define $SOFT hivel=63\n<region> sample=a.wav\n$SOFT\nlovel=2')).toEqual([
      { sample: 'a.wav', hivel: 63, lovel: 2 },
    ]);
  });

  it('reports a variable that nothing defines and keeps its text', () => {
    expect(findingsOf('<region> key=$NO')).toEqual(['define-unknown: $NO']);
  });
});

describe('include', () => {
  it('takes the place of the file, with paths from the main file however deep', () => {
    const included = {
      'maps/one.sfz': '<region> sample=a.wav\n#include "maps/two.sfz"\nlovel=9',
      'maps/two.sfz': 'hivel=99',
    };
    expect(regionsOf('<group> key=40\n#include "maps/one.sfz"\n<region> sample=z.wav', included)).toEqual([
      { lokey: 40, hikey: 40, pitch_keycenter: 40, sample: 'a.wav', hivel: 99, lovel: 9 },
      { lokey: 40, hikey: 40, pitch_keycenter: 40, sample: 'z.wav' },
    ]);
  });

  it('reads variables in the path', () => {
    expect(regionsOf('#define $S soft\n#include "$S.sfz"', { 'soft.sfz': '<region> key=1' })).toHaveLength(1);
  });

  it('refuses a circle and reads on', () => {
    const included = { 'main.sfz': '', 'b.sfz': '#include "main.sfz"\n<region> key=2' };
    expect(findingsOf('#include "b.sfz"\n<region> key=1', included)).toEqual(['include-cycle: main.sfz']);
    expect(regionsOf('#include "b.sfz"\n<region> key=1', included)).toHaveLength(2);
  });

  it('reports a missing file at its path', () => {
    expect(findingsOf('#include "gone.sfz"\n<region> key=1')).toEqual(['include-missing: gone.sfz']);
  });

  it('ends a chain of files that double one another', () => {
    const included: Record<string, string> = {};
    for (let i = 0; i < 40; i++) included[`${i}.sfz`] = `#include "${i + 1}.sfz"\n#include "${i + 1}.sfz"\n`;
    included['40.sfz'] = '<region> key=1';
    const instrument = read('#include "0.sfz"', included);
    expect(instrument.findings.length).toBeGreaterThan(0);
    expect(instrument.regions.length).toBeLessThan(20_000);
  });
});

describe('broken text', () => {
  it.each([
    ['<region> sample=a.wav\nhello there\nkey=60', ['syntax-error: hello there']],
    ['<region key=60', ['syntax-error: <region']],
    ['<regoin> key=60', ['header-unknown: regoin']],
    ['<region> key =60', ['syntax-error: key =60']],
    ['<region> =60', ['syntax-error: =']],
    ['<region> label_cc1=a=b', ['syntax-error: a=b']],
    ['/* no end', ['syntax-error: /*']],
    ['#include gone.sfz', ['syntax-error: #include gone.sfz', 'include-missing: gone.sfz']],
    ['#define KEY 60', ['syntax-error: #define KEY']],
    ['#define $KEY', ['syntax-error: #define $KEY']],
    ['<', ['syntax-error: <']],
    ['a\0b', ['syntax-error: \0', 'syntax-error: a\0b']],
  ])('%j', (text, findings) => {
    expect(findingsOf(text)).toEqual(findings);
  });

  it('keeps what stands behind a header that is not closed', () => {
    expect(regionsOf('<region key=60\n<region> key=61').map((one) => one.lokey)).toEqual([60, 61]);
  });

  it('reports at most a thousand findings of a text that is no instrument', () => {
    const instrument = read('so it goes\n'.repeat(5000));
    expect(instrument.findings).toHaveLength(1000);
    expect(instrument.findings.at(-1)?.message).toContain('4,000 more');
  });
});

describe('a dollar sign in a label', () => {
  const codesOf = (text: string) => readSfz(text, { path: 'a.sfz' }).findings.map(({ code }) => code);

  it('is text where there are no variables, and one of them where there are', () => {
    expect(codesOf('<control> label_cc7=Rent in $CAN\n<region> sw_label=$5 key=60')).toEqual([]);
    expect(codesOf('<region> key=$CAN')).toEqual(['define-unknown']);
    expect(codesOf('#define $FEE 5\n<region> sw_label=$CAN key=60')).toEqual(['define-unknown']);
    const named = readSfz('#define $CAN far\n<region> region_label=$CAN', { path: 'a.sfz' });
    expect(named.valueText(0)).toBe('far');
  });
});
