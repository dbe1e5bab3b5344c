import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainLayout } from '../../../server/table/cells/markup/plainLayout';
import { scaleIn } from '../../../server/trade/headings/statedScale';
import { keysInList, readKeyRange } from '../../../server/trade/readings/keyReading';
import { limitIn, meansAll } from '../../../server/trade/readings/limits';
import { arePortions, readVelocities } from '../../../server/trade/readings/velocityReading';
import { notesOf, regions } from './tableRegions';

// How ranges, lists and scales are written is common practice.

describe('a range that is open at one end', () => {
  it.each([
    ['<64', '64', 'most', true],
    ['≤ 63', '63', 'most', false],
    ['>= C4', 'C4', 'least', false],
    ['64+', '64', 'least', false],
    ['up to 47', '47', 'most', false],
    ['60 and up', '60', 'least', false],
    ['ab 64', '64', 'least', false],
    ['jusqu’à 63', '63', 'most', false],
    ['hasta 63', '63', 'most', false],
    ['fino a 63', '63', 'most', false],
    ['até 63', '63', 'most', false],
    ['64以上', '64', 'least', false],
  ] as const)('%s', (text, value, end, excluded) => {
    expect(limitIn(text)).toEqual({ value, end, excluded });
  });

  it.each(['soft', 'all', 'Take two', '', 'upper 3a'])('is not seen in "%s"', (text) => {
    expect(limitIn(text)).toBeUndefined();
  });

  it('leaves out the value itself where the sign says so', () => {
    expect(readKeyRange('<C4')).toMatchObject({ high: { named: 59 }, open: 'low' });
    expect(readKeyRange('>60')).toMatchObject({ low: { number: 61 }, open: 'high' });
    expect(readVelocities('<64')).toEqual({ low: undefined, high: 63, unit: undefined });
  });

  it('may take all there is', () => {
    expect(['all', 'alle', 'toutes', '全部'].map(meansAll)).toEqual([true, true, true, true]);
    expect(meansAll('some')).toBe(false);
  });
});

describe('lists of keys', () => {
  it('are ranges where each key is the next one', () => {
    expect(readKeyRange('60, 61, 62')).toMatchObject({ low: { number: 60 }, high: { number: 62 } });
    expect(readKeyRange('B3 C4')).toMatchObject({ low: { named: 59 }, high: { named: 60 } });
    expect(readKeyRange('60, 62')).toBeUndefined();
    expect(keysInList('60, 62')).toHaveLength(2);
  });

  it('of any stretch of keys read as that stretch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 1, max: 20 }), (first, more) => {
        const list = Array.from({ length: more + 1 }, (_, at) => first + at).join(', ');
        expect(readKeyRange(list)).toMatchObject({ low: { number: first }, high: { number: first + more } });
      }),
    );
  });
});

describe('scales', () => {
  it('stand in the brackets of a heading', () => {
    expect(scaleIn('Pan (0..1)')).toEqual({ low: 0, high: 1 });
    expect(scaleIn('Pan [−64–63]')).toEqual({ low: -64, high: 63 });
    expect(scaleIn('Vel (0 to 100 %)')).toEqual({ low: 0, high: 100 });
    expect(scaleIn('Volume (dB)')).toBeUndefined();
    expect(scaleIn('Range (5..1)')).toBeUndefined();
  });

  it('of velocities are portions where units or fractions say so', () => {
    expect(['50 %', '0.25', '0–49.6 %', '0..0.5'].map(arePortions)).toEqual([true, true, true, true]);
    expect(['64', '1', '1-63', '1.5', 'soft'].map(arePortions)).toEqual([false, false, false, false, false]);
  });

  it('leave a number behind an arrow a pan position under such a heading', () => {
    const text = 'Sample\tKey\tPan\na.wav\t60\t<30\nb.wav\t61\t<20\n';
    expect(regions(text).map(({ pan }) => pan)).toEqual(['-30', '-20']);
  });

  it('of 0..1 are written as the nearest of 0..127, and said so', () => {
    const text = 'Sample\tRoot\tVel low\tVel high\na.wav\t60\t0\t0.5\nb.wav\t60\t0.508\t1\n';
    // 0.5 · 127 = 63.5 and 0.508 · 127 = 64.5, rounded half up.
    expect(regions(text).map(({ lovel, hivel }) => [lovel, hivel])).toEqual([
      ['0', '64'],
      ['65', '127'],
    ]);
    expect(notesOf(text).join('\n')).toMatch(/approximated: The velocities .* count from 0 to 1\. Each is/);
  });
});

describe('the layout around a table', () => {
  it('becomes blanks of the same length', () => {
    expect(plainLayout('Hi\n> a\tb\n>> c\td\n')).toBe('Hi\n  a\tb\n   c\td\n');
    expect(plainLayout('[code]\na\tb\n[/code]')).toBe('      \na\tb\n       ');
    expect(plainLayout('│a│b│\n├─┼─┤')).toBe('|a|b|\n+-+-+');
  });

  it('is left alone where it is part of the text', () => {
    for (const text of ['> a\nb\n> c', '[soft]\na\n[loud]\nb', '> one', 'a > b\nc'])
      expect(plainLayout(text)).toBe(text);
  });

  it('never moves an offset', () => {
    const piece = fc.constantFrom(
      '>',
      '> ',
      '[code]',
      '[/code]',
      '│',
      '─',
      '┼',
      '\n',
      'a.wav',
      '\t',
      '60',
      ' ',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = pieces.join('');
        const plain = plainLayout(text);
        expect(plain).toHaveLength(text.length);
        expect(plain.split('\n').map((line) => line.length)).toEqual(
          text.split('\n').map((line) => line.length),
        );
      }),
    );
  });
});

describe('rows that a page hides', () => {
  it('are left out, with a note', () => {
    const row = (name: string, attribute = '') => `<tr${attribute}><td>${name}</td><td>60</td></tr>`;
    const text = `<table><tr><th>Sample</th><th>Key</th></tr>${row('a.wav')}${row('b.wav', ' hidden')}${row('c.wav', ' style="display: none"')}${row('d.wav', ' class="a hidden b"')}</table>`;
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'd.wav']);
    expect(notesOf(text).filter((note) => note.includes('is hidden on the page'))).toHaveLength(2);
  });

  it('are looked for in tags that nothing closes, however many', () => {
    const text = `<table><tr><td>${'<input type=checkbox '.repeat(20_000)}`;
    const hidden = `<table>${`<tr ${'style="display '.repeat(100)}><td>x</td></tr>`.repeat(500)}`;
    for (const one of [text, hidden, 'type=checkbox '.repeat(50_000)])
      expect(() => regions(one)).not.toThrow();
  });
});
