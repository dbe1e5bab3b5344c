import { describe, expect, it } from 'vitest';
import { harmlessKinds, harmlessName, isReadBack, parting } from '../../../server/sfz/holdable';

/** What SFZ can hold: a value goes to the next opcode, header, remark or line end (sfzformat.com, basics). */
describe('a name and a value that read back as they are', () => {
  it.each([
    ['volume', '-6'],
    ['sample', 'a b.wav'],
    ['sample', 'folder/a.wav'],
    ['sample', 'folder\\a.wav'],
    ['sample', 'a#4.wav'],
    ['sample', 'a+b (2).wav'],
    ['sample', 'größer.wav'],
    ['sample', "it's.wav"],
    ['sample', '*sine'],
    ['region_label', 'loud & clear'],
  ])('%s=%s', (name, value) => {
    expect(isReadBack(name, value)).toBe(true);
  });

  it.each([
    ['sample', 'a//b.wav'],
    ['sample', ' a.wav'],
    ['sample', 'a.wav '],
    ['sample', 'a\nb'],
    ['sample', 'a\rb'],
    ['sample', 'a <b>'],
    ['sample', 'a x=1'],
    ['sample', '/* a'],
    ['sample', 'a\n<region>'],
    ['a b', '1'],
    ['', '1'],
    ['a=b', '1'],
    ['<a>', '1'],
    ['sample', 'a\n#define $x 1'],
    ['sample', 'a\n#include "b"'],
    ['sample', 'a next=1 next'],
    ['sample', 'a #define x 1'],
  ])('%j=%j does not', (name, value) => {
    expect(isReadBack(name, value)).toBe(false);
  });
});

describe('names and signs that need no closer look', () => {
  it('are those of letters, digits and low lines', () => {
    for (const name of ['volume', 'lfo01_freq', 'A1']) expect(harmlessName.test(name)).toBe(true);
    for (const name of ['', 'a b', 'a-b', 'a.b', 'ä', ' a', 'a '])
      expect(harmlessName.test(name)).toBe(false);
  });

  it('are told by character, and what can stand between them', () => {
    for (const sign of 'aZ09._#()+-\\') expect([sign, harmlessKinds[sign.charCodeAt(0)]]).toEqual([sign, 1]);
    for (const sign of ' /') expect([sign, harmlessKinds[sign.charCodeAt(0)]]).toEqual([sign, parting]);
    for (const sign of '<>=$&"\'*\t\n\rä')
      expect([sign, harmlessKinds[sign.charCodeAt(0)]]).toEqual([sign, 0]);
    expect(parting).not.toBe(1);
    expect(harmlessKinds).toHaveLength(256);
  });
});
