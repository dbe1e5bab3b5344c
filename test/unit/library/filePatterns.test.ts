import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitsPattern } from '../../../server/library/filePatterns';

describe('patterns of files', () => {
  it.each([
    ['a.sfz', '*.sfz', true],
    ['b/a.sfz', '*.sfz', false],
    ['b/a.sfz', '**/*.sfz', true],
    ['a.sfz', '**/*.sfz', true],
    ['old/x/y/a.sfz', 'old/**/*.sfz', true],
    ['old/a.sfz', 'old/**', true],
    ['old', 'old/**', false],
    ['a.SFZ', '*.sfz', false],
    ['𝄞.sfz', '?.sfz', true],
    ['a(1).sfz', 'a(1).*', true],
    ['b/a.sfz', './b\\?.sfz', true],
  ])('%s and %s: %s', (path, pattern, fits) => {
    expect(fitsPattern(path, pattern)).toBe(fits);
  });

  it('fit what the same pattern fits as a regular expression', () => {
    const name = fc
      .array(fc.constantFrom('a', 'b', '.'), { minLength: 1, maxLength: 4 })
      .map((all) => all.join(''));
    const part = fc.oneof(
      fc.constant('**'),
      fc
        .array(fc.constantFrom('a', 'b', '.', '*', '?'), { minLength: 1, maxLength: 4 })
        .map((all) => all.join('')),
    );
    const list = (one: fc.Arbitrary<string>) => fc.array(one, { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(
        list(name),
        list(part.filter((one) => one === '**' || !one.includes('**'))),
        (names, parts) => {
          const source = parts.map((one, at) => {
            const isLast = at === parts.length - 1;
            if (one === '**') return isLast ? '(?:[^/]+/)*[^/]+' : '(?:[^/]+/)*';
            const signs = one.replaceAll('.', '\\.').replaceAll('*', '[^/]*').replaceAll('?', '[^/]');
            return isLast ? signs : `${signs}/`;
          });
          expect(fitsPattern(names.join('/'), parts.join('/'))).toBe(
            new RegExp(`^${source.join('')}$`).test(names.join('/')),
          );
        },
      ),
    );
  });

  it('that are made to take long end all the same', () => {
    const path = `${'a/'.repeat(60)}${'a'.repeat(200)}.sfz`;
    expect(fitsPattern(path, `${'**/'.repeat(40)}${'*a'.repeat(40)}*b.sfz`)).toBe(false);
    expect(fitsPattern(path, `${'**/'.repeat(40)}${'*a'.repeat(40)}*.sfz`)).toBe(true);
  });
});
