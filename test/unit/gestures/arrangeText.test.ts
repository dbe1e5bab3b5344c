import { describe, expect, it } from 'vitest';
import { arrangeText } from '../../../server/features/arrange/arrangeText';
import type { Gesture } from '../../../server/gestures/gesture';
import { arranged } from '../../../server/gestures/gesture';
import { buildMapScene } from '../../../server/map/scene';
import { notations } from '../../../server/workspace/notations/notationOf';
import type { Format } from '../features/anyInstrument';
import { readText } from '../features/anyInstrument';
import { withEdits } from '../features/appliedEdits';

/** The text after a gesture, or why there is none. */
function textAfter(text: string, gesture: Gesture, format: Format = 'sfz'): string {
  const instrument = readText(format, text);
  const { shapes } = buildMapScene(instrument);
  const arrangement = arranged(
    shapes,
    shapes.map((_, index) => index),
    gesture,
  );
  if ('refusal' in arrangement) return arrangement.refusal;
  const written = arrangeText({ notation: notations[format], instrument }, arrangement);
  return 'refusal' in written ? written.refusal : withEdits(text, written.edits);
}

const drag = (
  shapes: number[],
  grip: Extract<Gesture, { kind: 'drag' }>['grip'],
  keys: number,
  velocities = 0,
  more: { isParted?: boolean; takesRoots?: boolean } = {},
): Gesture => ({ kind: 'drag', shapes, grip, keys, velocities, isParted: false, ...more });

const whole = { keys: 'both', velocities: 'both' } as const;

describe('a drag in the text', () => {
  it('moves a border that two shapes share on both sides, or parts them', () => {
    const text = `<region> sample=a.wav lokey=c3 hikey=e3 pitch_keycenter=d3 // low
<region> sample=b.wav lokey=f3 hikey=a3 pitch_keycenter=g3`;
    expect(
      textAfter(text, drag([0], { keys: 'high' }, 2)),
    ).toBe(`<region> sample=a.wav lokey=c3 hikey=f#3 pitch_keycenter=d3 // low
<region> sample=b.wav lokey=g3 hikey=a3 pitch_keycenter=g3`);
    expect(textAfter(text, drag([0], { keys: 'high' }, -1, 0, { isParted: true }))).toBe(
      text.replace('hikey=e3', 'hikey=d#3'),
    );
  });

  it('leaves both shapes a key', () => {
    const text = '<region> sample=a.wav lokey=48 hikey=52\n<region> sample=b.wav lokey=53 hikey=54';
    expect(textAfter(text, drag([0], { keys: 'high' }, 20))).toBe(
      '<region> sample=a.wav lokey=48 hikey=53\n<region> sample=b.wav lokey=54 hikey=54',
    );
  });

  it('keeps `key` where the range stays one key, and lets the root go along', () => {
    const text = '<region> key=36 sample=kick.wav';
    expect(textAfter(text, drag([0], whole, 2))).toBe('<region> key=38 sample=kick.wav');
    expect(textAfter(text, drag([0], whole, 2, 0, { takesRoots: false }))).toBe(
      '<region> key=38 sample=kick.wav pitch_keycenter=36',
    );
    expect(textAfter(text, drag([0], { keys: 'high' }, 1))).toBe(
      '<region> sample=kick.wav lokey=36 hikey=37 pitch_keycenter=36',
    );
  });

  it('writes a value in the group that all its regions have it from, else in the region', () => {
    const text = `<group> lovel=1 hivel=63
<region> sample=a.wav key=60
<region> sample=b.wav key=62
<group> lovel=64
<region> sample=c.wav key=60
<region> sample=d.wav key=62`;
    expect(textAfter(text, drag([0, 1], { velocities: 'high' }, 0, 16))).toBe(
      text.replace('hivel=63', 'hivel=79').replace('lovel=64', 'lovel=80'),
    );
    expect(textAfter(text, drag([0], { velocities: 'high' }, 0, 16))).toBe(
      text
        .replace('sample=a.wav key=60', 'sample=a.wav key=60 hivel=79')
        .replace('sample=c.wav key=60', 'sample=c.wav key=60 lovel=80'),
    );
  });

  it('spells new keys as the document does', () => {
    expect(
      textAfter(
        '<region> sample=a.wav hikey=Eb4 lokey=C4\n<region> sample=b.wav',
        drag([1], { keys: 'low' }, 61, 0, { isParted: true }),
      ),
    ).toBe('<region> sample=a.wav hikey=Eb4 lokey=C4\n<region> sample=b.wav lokey=Db4');
  });

  it('writes keys without what the control header adds', () => {
    const text = '<control> octave_offset=1\n<region> sample=a.wav lokey=48 hikey=50';
    expect(textAfter(text, drag([0], { keys: 'high' }, 1))).toBe(text.replace('hikey=50', 'hikey=51'));
  });

  it('changes the file of an include where one include brings it in', () => {
    const files = { '/music/part.sfz': '<region> sample=a.wav lokey=60 hikey=62' };
    const instrument = readText('sfz', '#include "part.sfz"\n', files);
    const { shapes } = buildMapScene(instrument);
    const arrangement = arranged(shapes, [0], drag([0], { keys: 'high' }, 1));
    if ('refusal' in arrangement) throw new Error(arrangement.refusal);
    expect(arrangeText({ notation: notations.sfz, instrument }, arrangement)).toEqual({
      edits: [{ source: 1, start: 37, end: 39, newText: '63' }],
    });
  });

  it('says why it cannot be written', () => {
    const text = '#include "part.sfz"\n#include "part.sfz"\n';
    const instrument = readText('sfz', text, {
      '/music/part.sfz': '<region> sample=a.wav lokey=60 hikey=62',
    });
    const { shapes } = buildMapScene(instrument);
    const arrangement = arranged(shapes, [0], drag([0], { keys: 'high' }, 1));
    if ('refusal' in arrangement) throw new Error(arrangement.refusal);
    expect(arrangeText({ notation: notations.sfz, instrument }, arrangement)).toEqual({
      refusal: expect.stringContaining('"part.sfz"'),
    });
  });

  it('moves attributes of XML', () => {
    const text = `<instrument>
  <group hivel="63">
    <region sample="a.wav" lokey="c3" hikey="e3"/>
  </group>
</instrument>`;
    expect(textAfter(text, drag([0], { keys: 'high', velocities: 'high' }, 1, 10), 'xml')).toBe(
      text.replace('hikey="e3"', 'hikey="f3"').replace('hivel="63"', 'hivel="73"'),
    );
  });
});

describe('roots in the text', () => {
  it('are written beside `key`, and in its place where they are one again', () => {
    const text = '<region> sample=a.wav key=60';
    expect(textAfter(text, { kind: 'root', shapes: [0], keys: 12 })).toBe(`${text} pitch_keycenter=72`);
    expect(textAfter(`${text} pitch_keycenter=72`, { kind: 'root', shapes: [0], keys: -3 })).toBe(
      `${text} pitch_keycenter=69`,
    );
  });
});

describe('other gestures in the text', () => {
  it('split a range into two regions that stand one behind the other', () => {
    const text =
      '<group> volume=-3\n  <region> sample=a.wav lokey=48 hikey=59 // remark\n<region> sample=b.wav';
    expect(textAfter(text, { kind: 'split', shapes: [0], axis: 'keys', at: 54 })).toBe(
      `<group> volume=-3
  <region> sample=a.wav lokey=48 hikey=53 // remark
  <region> sample=a.wav lokey=54 hikey=59
<region> sample=b.wav`,
    );
  });

  it('split a layer whose range is inherited', () => {
    const text = '<instrument><group hivel="63">\n\t<region sample="a.wav"/>\n</group></instrument>';
    expect(textAfter(text, { kind: 'split', shapes: [0], axis: 'velocities', at: 32 }, 'xml')).toBe(
      '<instrument><group hivel="63">\n\t<region sample="a.wav" hivel="31"/>\n\t<region sample="a.wav" lovel="32"/>\n</group></instrument>',
    );
  });

  it('join shapes into the first of them', () => {
    const text = '<region> sample=a.wav lokey=48 hikey=53\n<region> sample=a.wav lokey=54 hikey=59\n';
    expect(textAfter(text, { kind: 'join', shapes: [0, 1] })).toBe(
      '<region> sample=a.wav lokey=48 hikey=59\n',
    );
    expect(textAfter(text.replace('=54', '=55'), { kind: 'join', shapes: [0, 1] })).toContain('side by side');
  });

  it('spread keys to the nearest roots', () => {
    const text = [48, 53, 60]
      .map((root) => `<region> sample=${root}.wav lokey=${root} hikey=${root} pitch_keycenter=${root}`)
      .join('\n');
    // 50 and 56 lie halfway or nearer to the lower root.
    expect(
      textAfter(text, { kind: 'spread', shapes: [0, 1, 2] }),
    ).toBe(`<region> sample=48.wav lokey=48 hikey=50 pitch_keycenter=48
<region> sample=53.wav lokey=51 hikey=56 pitch_keycenter=53
<region> sample=60.wav lokey=57 hikey=60 pitch_keycenter=60`);
  });

  it('share velocities out evenly', () => {
    const text = `<region> sample=a.wav key=60 lovel=1 hivel=20
<region> sample=b.wav key=60 lovel=21 hivel=90
<region> sample=c.wav key=60 lovel=91 hivel=126`;
    expect(
      textAfter(text, { kind: 'layers', shapes: [0, 1, 2] }),
    ).toBe(`<region> sample=a.wav key=60 lovel=1 hivel=42
<region> sample=b.wav key=60 lovel=43 hivel=84
<region> sample=c.wav key=60 lovel=85 hivel=126`);
  });

  it('share velocities out by loudness', () => {
    const text = `<region> sample=a.wav key=60 hivel=63
<region> sample=b.wav key=60 lovel=64`;
    // Halfway between −12 and 0 dB is −6 dB: 127·10^(−6/40) = 89.9 on the usual curve, level = 40·log10(v/127).
    const levels = new Map([
      [0, -12],
      [1, 0],
    ]);
    expect(textAfter(text, { kind: 'layers', shapes: [0, 1], levels })).toBe(
      text.replace('=63', '=89').replace('=64', '=90'),
    );
    expect(textAfter(text, { kind: 'layers', shapes: [0, 1], levels: new Map([[0, -12]]) })).toContain(
      '1 layer',
    );
    expect(
      textAfter(text, { kind: 'layers', shapes: [0, 1], levels: new Map([...levels, [1, -20]]) }),
    ).toContain('louder');
  });
});
