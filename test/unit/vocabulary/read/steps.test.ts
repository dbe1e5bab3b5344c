import { describe, expect, it } from 'vitest';
import { readSfz } from '../../../../server/sfz/read';
import { stepsIn } from '../../../../server/vocabulary/read/steps';
import type { StepEnd } from '../../../../server/vocabulary/vocabulary';

/** What follows for each header, as `number of the header: parameter=value`. */
function steps(text: string, ...ends: StepEnd[]): string[] {
  const instrument = readSfz(text, { path: 'a.sfz' });
  return [...stepsIn(instrument, ends)].flatMap(([header, values]) =>
    values.map(({ parameter, value }) => `${header}: ${parameter}=${value}`),
  );
}

/** A zone starts above the one below it, and ends below the one above (our choice for texts that give one end alone). */
describe('ends that follow from the zones beside', () => {
  it.each<[string, StepEnd, string[]]>([
    ['<region> hikey=50 <region> hikey=60 <region> hikey=70', 'lokey', ['1: lokey=51', '2: lokey=61']],
    ['<region> hikey=70 <region> hikey=50 <region> hikey=60', 'lokey', ['0: lokey=61', '2: lokey=51']],
    ['<region> lokey=50 <region> lokey=60 <region> lokey=70', 'hikey', ['0: hikey=59', '1: hikey=69']],
    ['<region> hikey=9 <region> hikey=100', 'lokey', ['1: lokey=10']],
    ['<region> hikey=50 <region> hikey=50 <region> hikey=60', 'lokey', ['2: lokey=51']],
    ['<region> hikey=50', 'lokey', []],
    ['<region> <region>', 'lokey', []],
    ['<region> hikey=x <region> hikey=60', 'lokey', []],
    // What has both ends is no step.
    ['<region> hikey=50 <region> lokey=20 hikey=55 <region> hikey=60', 'lokey', ['2: lokey=51']],
    // Headers of one kind in one header around follow each other.
    ['<group> <region> hikey=50 <group> <region> hikey=60', 'lokey', []],
    ['<group> hikey=50 <region> hikey=40 <group> hikey=60', 'lokey', ['2: lokey=51']],
    ['<region> key=60 hivel=50 <region> key=60 hivel=100', 'lovel', ['1: lovel=51']],
    ['<region> key=60 lovel=50 <region> key=60 lovel=100', 'hivel', ['0: hivel=99']],
    ['<region> key=60 hivel=50 <region> key=61 hivel=100', 'lovel', []],
    ['<region> lokey=60 hivel=50 <region> lokey=61 hivel=100', 'lovel', []],
    ['<region> hikey=60 hivel=50 <region> hikey=61 hivel=100', 'lovel', []],
    ['<region> hivel=50 <region> hivel=100', 'lovel', ['1: lovel=51']],
    ['<region> lokey=1 hikey=50 <region> hikey=60', 'lovel', []],
    // A single one without either end is the outermost.
    ['<region> hikey=50 <region> hikey=60 <region>', 'lokey', ['1: lokey=51', '2: lokey=61']],
    ['<region> <region> lokey=50 <region> lokey=60', 'hikey', ['0: hikey=49', '1: hikey=59']],
    ['<region> hikey=50 <region> hikey=60 <region> <region>', 'lokey', ['1: lokey=51']],
    ['<region> hikey=50 <region> <region> hikey=60', 'lokey', ['2: lokey=51']],
    ['<region> hikey=50 <region> hikey=127 <region>', 'lokey', ['1: lokey=51']],
    ['<region> hikey=50 <region> key=90', 'lokey', []],
    ['<region> pitch_keycenter=70 <region> hikey=50 pitch_keycenter=45', 'lokey', ['0: lokey=51']],
    ['<region> hikey=50 pitch_keycenter=45 <region> pitch_keycenter=48', 'lokey', []],
    ['<region> hikey=50 pitch_keycenter=45 <region>', 'lokey', []],
    ['<group> hikey=50 <group> <region> hikey=40', 'lokey', []],
    ['<region> key=60 hivel=50 <region> key=60', 'lovel', ['1: lovel=51']],
    // Each layer begins anew and ends with the same key.
    [
      '<region> hikey=50 <region> hikey=99 <region> hikey=70 <region> hikey=99',
      'lokey',
      ['1: lokey=51', '3: lokey=71'],
    ],
    ['<region> hikey=50 <region> <region> hikey=70 <region>', 'lokey', ['1: lokey=51', '3: lokey=71']],
    [
      '<region> lokey=50 <region> lokey=20 <region> lokey=40 <region> lokey=20',
      'hikey',
      ['1: hikey=49', '3: hikey=39'],
    ],
  ])('%s', (text, end, expected) => {
    expect(steps(text, end)).toEqual(expected);
  });

  it('are found for several ends at once', () => {
    expect(
      steps(
        '<region> key=60 hivel=50 <region> key=60 hivel=90 <region> hikey=50 <region> hikey=60',
        'lokey',
        'lovel',
      ).sort(),
    ).toEqual(['1: lovel=51', '3: lokey=51']);
    expect(steps('<region> hikey=50 <region> hikey=60')).toEqual([]);
  });

  it('are kept together where a zone lacks two', () => {
    expect(
      steps(
        '<region> hikey=50 hivel=9 <region> hikey=60 hivel=9 <region> hikey=60 hivel=20',
        'lokey',
        'lovel',
      ).sort(),
    ).toEqual(['1: lokey=51', '2: lokey=51', '2: lovel=10']);
  });
});
