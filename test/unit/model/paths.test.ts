import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  folderOf,
  isAbsolutePath,
  isWithin,
  joinPath,
  leadsToOtherHost,
  nameOf,
  relativePath,
} from '../../../server/model/paths';

describe('joining', () => {
  it.each([
    ['/a/b', 'c.wav', '/a/b/c.wav'],
    ['/a/b', './c.wav', '/a/b/c.wav'],
    ['/a/b', '../c.wav', '/a/c.wav'],
    ['/a/b', '../../../c.wav', '/c.wav'],
    ['/a/b', 'x/../y//z.wav', '/a/b/y/z.wav'],
    ['/a/b', 'x\\..\\y\\z.wav', '/a/b/y/z.wav'],
    ['/a/b', '/c.wav', '/c.wav'],
    ['/a/b', 'D:\\x\\c.wav', 'D:/x/c.wav'],
    ['/a/b', 'D:/x/c.wav', 'D:/x/c.wav'],
    ['/a/b', 'x//c.wav', '/a/b/x/c.wav'],
    ['/a/b', 'x/./c.wav', '/a/b/x/c.wav'],
    ['/a/b', 'x/', '/a/b/x'],
    ['/a/../b', 'c.wav', '/b/c.wav'],
    ['/a/b/', 'c.wav', '/a/b/c.wav'],
    ['/a/b', '.c.wav', '/a/b/.c.wav'],
    ['', 'c.wav', 'c.wav'],
    ['', '../c.wav', '../c.wav'],
    ['a', '../../c.wav', '../c.wav'],
    ['/', 'c.wav', '/c.wav'],
    ['/a', '', '/a'],
    ['', '', ''],
    ['/a', '...', '/a/...'],
    // Drives and shares of Windows (Microsoft, File path formats on Windows systems): nothing is above them.
    ['C:/a', '../../../b.wav', 'C:/b.wav'],
    ['C:/', '..', 'C:/'],
    ['C:/a', '/b.wav', '/b.wav'],
    ['', 'C:\\a\\..', 'C:/'],
    ['//host/share/a', 'b.wav', '//host/share/a/b.wav'],
    ['//host/share/a', '../../../b.wav', '//host/share/b.wav'],
    ['/a', '\\\\host\\share\\b.wav', '/host/share/b.wav'],
    ['//host/share', '\\\\Host\\other\\b.wav', '//Host/other/b.wav'],
    ['', '\\\\host\\share\\', '//host/share'],
    ['', '//host', '/host'],
  ])('%s and %s is %s', (folder, path, joined) => {
    expect(joinPath(folder, path)).toBe(joined);
  });
});

describe('the parts of a path', () => {
  it.each([
    ['/a/b.sfz', '/a', 'b.sfz'],
    ['/b.sfz', '/', 'b.sfz'],
    ['b.sfz', '', 'b.sfz'],
    ['a/b/', 'a/b', ''],
    ['C:/b.sfz', 'C:/', 'b.sfz'],
    ['C:/a/b.sfz', 'C:/a', 'b.sfz'],
    ['//host/share/b.sfz', '//host/share', 'b.sfz'],
  ])('of %s are "%s" and "%s"', (path, folder, name) => {
    expect(folderOf(path)).toBe(folder);
    expect(nameOf(path)).toBe(name);
  });

  it.each(['/', 'C:/', '//host/share'])('have nothing above %s', (path) => {
    expect(folderOf(path)).toBe(path);
  });

  it('tell of another machine', () => {
    expect(leadsToOtherHost('C:/a', '\\\\host\\share\\b.wav')).toBe(true);
    expect(leadsToOtherHost('//host/share', '//Host/other/b.wav')).toBe(false);
    expect(leadsToOtherHost('//host/share', '//elsewhere/share/b.wav')).toBe(true);
    expect(leadsToOtherHost('//host/share', 'b.wav')).toBe(false);
    expect(leadsToOtherHost('/a', '/b.wav')).toBe(false);
  });

  it('tell where it starts', () => {
    expect(['/a', '\\a', 'C:/a', 'c:\\a'].map(isAbsolutePath)).toEqual([true, true, true, true]);
    expect(['a', './a', '../a', 'C:a', ''].map(isAbsolutePath)).toEqual([false, false, false, false, false]);
  });
});

const part = fc.oneof(
  fc.constantFrom('a', 'b', 'Samples', 'C#4 ff.wav', '..x', '...', 'é'),
  fc.string({ minLength: 1, maxLength: 4 }).filter((text) => !/[\\/]|^\.\.?$|^[a-z]:$/i.test(text)),
);
const parts = fc.array(part, { maxLength: 5 });

describe('the way from a folder to a path', () => {
  it.each([
    ['/a/b', '/a/b/c.wav', 'c.wav'],
    ['/a/b', '/a/c.wav', '../c.wav'],
    ['/a/b', '/c.wav', '../../c.wav'],
    ['/a/b', '/a/bc/d.wav', '../bc/d.wav'],
    ['a', 'b/c.wav', '../b/c.wav'],
    ['', 'b/c.wav', 'b/c.wav'],
    ['C:/a', 'C:/b/c.wav', '../b/c.wav'],
    ['c:/Music/a', 'C:/music/b/c.wav', '../b/c.wav'],
    ['//host/share/a', '//host/share/b/c.wav', '../b/c.wav'],
    ['//host/share/a', '//host/other/c.wav', '//host/other/c.wav'],
    ['C:/a', '//host/share/c.wav', '//host/share/c.wav'],
  ])('from %s to %s is %s', (folder, path, way) => {
    expect(relativePath(folder, path)).toBe(way);
  });

  it('does not exist from one drive to another, so that the path stays whole', () => {
    expect(relativePath('C:/a', 'D:/b/c.wav')).toBe('D:/b/c.wav');
  });

  it.each(['/', '', 'C:/', '//host/share/'])('leads back to the path from any folder below "%s"', (root) => {
    fc.assert(
      fc.property(parts, parts, (from, to) => {
        const folder = joinPath('', root + from.join('/'));
        const path = joinPath('', root + to.join('/'));
        expect(joinPath(folder, relativePath(folder, path))).toBe(path);
      }),
    );
  });
});

describe('lying within a folder', () => {
  it.each([
    ['/a', '/a', true],
    ['/a', '/a/b', true],
    ['/a', '/ab', false],
    ['/a', '/', false],
    ['/', '/a', true],
    ['', 'a/b', true],
    ['', '../a', false],
    ['', '/a', false],
    // On Windows letter case does not count (common practice there), elsewhere it does.
    ['C:/Music', 'c:/music/a.wav', true],
    ['C:/Music', 'D:/Music/a.wav', false],
    ['//Host/Share', '//host/share/a.wav', true],
    ['//host/share', '//other/share/a.wav', false],
    ['/Music', '/music/a.wav', false],
  ])('of %s: %s is %s', (folder, path, expected) => {
    expect(isWithin(folder, path)).toBe(expected);
  });
});
