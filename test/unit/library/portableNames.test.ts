import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PortableNames, portableName } from '../../../server/library/portableNames';

it.each([
  // Microsoft, "Naming Files, Paths, and Namespaces": reserved characters, device names, a point or blank at the end.
  ['Bass: "low" <1>', 'Bass- -low- -1-'],
  ['aux', '_aux'],
  ['CON.txt', '_CON.txt'],
  ['console', 'console'],
  ['end. ', 'end'],
  ['..', '_'],
  ['a/b\\c', 'a-b-c'],
  ['Ünïcode 小', 'Ünïcode 小'],
  ['e\u0301', '\u00e9'],
])('makes %j a name that every common system takes', (name, portable) => {
  expect(portableName(name)).toBe(portable);
});

it('gives no two names that differ by letter case only, none too long', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 80 }), { maxLength: 8 }), (given) => {
      const names = new PortableNames();
      const taken = given.map((name) => names.take(name));
      expect(new Set(taken.map((name) => name.toLowerCase())).size).toBe(given.length);
      for (const name of taken) expect(name).toMatch(/^(?![. ])[^<>:"/\\|?*\u0000-\u001f]*[^. ]$/u);
      for (const name of taken) expect(Buffer.byteLength(name)).toBeLessThan(140);
    }),
  );
});
