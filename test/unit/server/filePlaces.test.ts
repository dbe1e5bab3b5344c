import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { pathOfUri, serveFilesOf, uriOfPath } from '../../../server/protocol/conversion/uris';

const rightPath = fc
  .array(fc.string({ unit: 'grapheme', minLength: 1 }), { minLength: 1, maxLength: 4 })
  .map((names) => `/${names.map((name) => name.replaceAll('/', '_')).join('/')}`);

describe('paths of files that are not on a disk', () => {
  afterEach(() => serveFilesOf('file:///'));

  it('keep scheme and authority, with characters escaped as RFC 3986 has it', () => {
    serveFilesOf('memory-files://band/instruments');
    expect(pathOfUri('memory-files://band/a%20b/c%23.sfz')).toBe('/a b/c#.sfz');
    expect(uriOfPath('/a b/c#.sfz')).toBe('memory-files://band/a%20b/c%23.sfz');
    serveFilesOf('memory-files:/instruments');
    expect(uriOfPath('/a.sfz')).toBe('memory-files:/a.sfz');
    expect(pathOfUri('memory-files:/a.sfz')).toBe('/a.sfz');
  });

  it('are not those of other places', () => {
    serveFilesOf('memory-files://band/instruments');
    for (const uri of [
      'file:///a.sfz',
      'untitled:Untitled-1',
      'memory-files://choir/a.sfz',
      'memory-files:/a.sfz',
      'memory-files://band/a.sfz?version=1',
      'other-files://band/a.sfz',
    ]) {
      expect(pathOfUri(uri), uri).toBeUndefined();
    }
    // The letter case of an authority says nothing (RFC 3986, 3.2.2).
    expect(pathOfUri('memory-files://Band/a.sfz')).toBe('/a.sfz');
  });

  it('come back from the URI that is made of them', () => {
    fc.assert(
      fc.property(fc.constantFrom('memory-files://band/x', 'memory-files:/x'), rightPath, (place, path) => {
        serveFilesOf(place);
        expect(pathOfUri(uriOfPath(path))).toBe(path);
      }),
    );
  });

  it('make a URI whatever an instrument has written for a path', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('memory-files://band/x', 'memory-files:/x'),
        fc.string({ unit: 'binary' }),
        (place, path) => {
          serveFilesOf(place);
          expect(uriOfPath(path)).toMatch(/^memory-files:/);
        },
      ),
    );
  });
});
