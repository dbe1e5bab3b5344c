import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PackPaths } from '../../../../server/library/pack/packPaths';

const part = fc.oneof(
  fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }),
  fc.string({ minLength: 1, maxLength: 300, unit: 'binary' }),
  fc.constantFrom(
    'CON',
    'con.wav',
    'nul',
    'LPT1.flac',
    'a.',
    ' a',
    'A',
    'a',
    'é',
    'e\u0301',
    'É',
    '..',
    '.hidden',
    'Straße',
    'STRASSE',
  ),
);
const path = fc
  .array(part, { minLength: 1, maxLength: 5 })
  .map((parts) => parts.map((one) => one.replaceAll('/', '-')).join('/'));

it('gives names that every common system takes, each once', () => {
  fc.assert(
    fc.property(fc.array(path, { maxLength: 30 }), (paths) => {
      const root = 'A library of bells';
      const given = new PackPaths(root);
      const seen = new Set<string>();
      const folders = new Set<string>();
      for (const one of paths) {
        const taken = given.take(one);
        expect(`${root}/${taken}`.length).toBeLessThanOrEqual(200);
        // Microsoft, "Naming Files, Paths, and Namespaces"; a name of 255 bytes at the most is common practice.
        for (const name of taken.split('/')) {
          expect(name).not.toMatch(
            /[<>:"/\\|?*\u0000-\u001f]|^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)|^\.{1,2}$|[. ]$|^$/i,
          );
          expect(name.normalize('NFC')).toBe(name);
          expect(Buffer.byteLength(name)).toBeLessThan(256);
        }
        const key = taken.normalize('NFD').toUpperCase();
        expect(seen.has(key)).toBe(false);
        seen.add(key);
        const parts = key.split('/');
        for (let end = 1; end < parts.length; end++) folders.add(parts.slice(0, end).join('/'));
      }
      for (const folder of folders) expect(seen.has(folder)).toBe(false);
    }),
    { numRuns: 300 },
  );
});
