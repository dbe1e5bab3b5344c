import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Source } from '../../../server/model/text/source';
import { offsetOf, positionOf, rangeOf } from '../../../server/protocol/conversion/positions';
import { pathOfUri, uriOfPath } from '../../../server/protocol/conversion/uris';

const text = fc
  .array(fc.constantFrom('a', '<', ' ', 'é', '𝄞', '\n', '\r\n', '\r', '\t'), { maxLength: 40 })
  .map((parts) => parts.join(''));

// The editor's own text document is the reference; lines end as the Language Server Protocol 3.17 says.
describe('positions', () => {
  it('are those of the protocol', () => {
    fc.assert(
      fc.property(text, fc.nat(50), (content, at) => {
        const offset = Math.min(at, content.length);
        const reference = TextDocument.create('', '', 1, content);
        const expected = reference.positionAt(offset);
        // The reference takes a place between CR and LF back to before both.
        fc.pre(!(content[offset - 1] === '\r' && content[offset] === '\n'));
        expect(positionOf(new Source('', content), offset)).toEqual(expected);
      }),
    );
  });

  it('make the range of a span', () => {
    fc.assert(
      fc.property(text, fc.nat(50), fc.nat(50), (content, from, length) => {
        const source = new Source('', content);
        const start = Math.min(from, content.length);
        const end = Math.min(start + length, content.length);
        const range = { start: positionOf(source, start), end: positionOf(source, end) };
        expect(rangeOf(source, { start, end })).toEqual(range);
      }),
    );
  });

  it('lead back to offsets, past the end of a line to its end', () => {
    fc.assert(
      fc.property(text, fc.nat(12), fc.nat(12), (content, line, character) => {
        const reference = TextDocument.create('', '', 1, content);
        expect(offsetOf(new Source('', content), { line, character })).toBe(
          reference.offsetAt({ line, character }),
        );
      }),
    );
  });
});

describe('paths', () => {
  it('come back from their URIs', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[^/:\0\\]{1,8}$/), { minLength: 1, maxLength: 4 }),
        (parts) => {
          fc.pre(parts.every((part) => !/[\ud800-\udfff]/.test(part)));
          const path = `/${parts.join('/')}`;
          expect(pathOfUri(uriOfPath(path))).toBe(path);
        },
      ),
    );
  });

  it('are only given for files', () => {
    expect(pathOfUri('untitled:Untitled-1')).toBeUndefined();
    expect(pathOfUri('https://example.org/a.sfz')).toBeUndefined();
    // RFC 8089: file URIs with an empty authority, percent-encoded.
    expect(pathOfUri('file:///a%20b/c%23.sfz')).toBe('/a b/c#.sfz');
    expect(uriOfPath('/a b/c#.sfz')).toBe('file:///a%20b/c%23.sfz');
  });
});
