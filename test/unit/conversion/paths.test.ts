import { posix, win32 } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sfzNotation } from '../../../server/sfz/notation';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { xmlNotation } from '../../../server/xml/notation';

// Node's own path functions say where a path leads: `posix` for POSIX.1-2017 (section 4.13, pathname resolution),
// `win32` for paths with drive letters and backslashes.

const loom: Vocabulary = {
  name: 'loom',
  levels: [
    { element: 'loom', is: 'instrument', parameters: [] },
    {
      element: 'thread',
      is: 'region',
      parameters: [{ parameter: 'sample', at: '@yarn', form: { kind: 'path' } }],
    },
  ],
};
const targets = { sfz: sfzNotation, xml: xmlNotation, vocabulary: vocabularyNotation(loom) };

/** The sample paths of an instrument written for another folder. */
function written(
  target: keyof typeof targets,
  text: string,
  from: string,
  to: string,
): (string | undefined)[] {
  const instrument = sfzNotation.read(text, { path: `${from}/a.sfz` });
  const notation = targets[target];
  const again = notation.read(notation.write(instrument, { move: { from, to } }).text, { path: `${to}/b` });
  return [...again.regions].map((region) => again.samplePath(region));
}

const part = fc.constantFrom('a', 'b', 'two words', 'c.d', '..', '.', '...', '.e');
const folder = fc
  .array(fc.constantFrom('a', 'b', 'two words'), { maxLength: 4 })
  .map((parts) => `/${parts.join('/')}`);
const sample = fc
  .tuple(
    fc.array(part, { maxLength: 4 }),
    fc.constantFrom('/', '/', '\\', '/./'),
    fc.constantFrom('x.wav', 'é y.flac'),
  )
  .map(([parts, separator, name]) => [...parts, name].join(separator));

describe.each(['sfz', 'xml', 'vocabulary'] as const)(
  'sample paths in %s written to another folder',
  (target) => {
    it('lead to the files that they led to', () => {
      fc.assert(
        fc.property(folder, folder, sample, (from, to, path) => {
          const before = path.replaceAll('\\', '/');
          const [after = ''] = written(target, `<region> sample=${path}`, from, to);
          expect(posix.resolve(to, after)).toBe(posix.resolve(from, before));
          expect(posix.isAbsolute(after)).toBe(false);
        }),
      );
    });

    it('lead there behind a default path, which is led there itself or put before them', () => {
      fc.assert(
        fc.property(
          folder,
          folder,
          sample,
          fc.constantFrom('S/', '../S/', 'S\\', 'S/take-', './', '../../'),
          (from, to, path, start) => {
            const before = (start + path).replaceAll('\\', '/');
            const [after = ''] = written(
              target,
              `<control> default_path=${start}\n<region> sample=${path}`,
              from,
              to,
            );
            expect(posix.resolve(to, after)).toBe(posix.resolve(from, before));
          },
        ),
      );
    });

    it.each([
      ['C:/music/in', 'C:/music/out/deep', 'Samples\\a.wav'],
      ['C:/music/in', 'c:/music', '..\\b.wav'],
      ['C:/music', 'D:/music', 'Samples/a.wav'],
      ['C:/music', 'C:/', 'a.wav'],
    ])('lead there on drives: from %s to %s', (from, to, path) => {
      const [after = ''] = written(target, `<region> sample=${path}`, from, to);
      expect(win32.resolve(to, after).toLowerCase()).toBe(win32.resolve(from, path).toLowerCase());
    });

    it.each(['/abs/a.wav', 'C:\\abs\\a.wav', 'D:/abs/a.wav', '*sine', '*silence'])('stay %s', (path) => {
      const stays = [path, path.replaceAll('\\', '/')];
      expect(stays).toContain(written(target, `<region> sample=${path}`, '/in', '/out/deep')[0]);
    });
  },
);
