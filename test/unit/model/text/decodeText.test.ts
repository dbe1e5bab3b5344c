import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../../server/model/text/decodeText';

const bytes = (...values: number[]) => new Uint8Array(values);
const ascii = (text: string) => [...Buffer.from(text, 'latin1')];

describe('the text in bytes', () => {
  it('is UTF-8, its mark taken off', () => {
    const text = '// Größe 日本 🎵\n<region>';
    const plain = new Uint8Array(Buffer.from(text, 'utf8'));
    expect(decodeText(plain)).toEqual({ kind: 'text', text, encoding: 'utf-8' });
    expect(decodeText(bytes(0xef, 0xbb, 0xbf, ...plain))).toEqual({ kind: 'text', text, encoding: 'utf-8' });
    expect(decodeText(bytes())).toEqual({ kind: 'text', text: '', encoding: 'utf-8' });
  });

  it('is UTF-8 for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        fc.pre(!text.includes('\0') && !text.startsWith('\ufeff'));
        expect(decodeText(new Uint8Array(Buffer.from(text, 'utf8')))).toMatchObject({ kind: 'text', text });
      }),
    );
  });

  it('is Latin-1 where it is no UTF-8', () => {
    expect(decodeText(bytes(...ascii('sample=Fl'), 0xfc, ...ascii('gel.wav')))).toEqual({
      kind: 'text',
      text: 'sample=Flügel.wav',
      encoding: 'latin-1',
    });
  });

  // Unicode Consortium, mapping table CP1252.TXT: 80 is U+20AC, 85 is U+2026, 92 is U+2019, 96 is U+2013, 9F is U+0178.
  it('holds the signs that Windows-1252 adds to Latin-1', () => {
    expect(decodeText(bytes(0x80, 0x85, 0x92, 0x96, 0x9f))).toMatchObject({
      text: '\u20ac\u2026\u2019\u2013\u0178',
    });
  });

  it('is UTF-16 of either byte order by its mark', () => {
    const text = '<region> é 🎵';
    const little = Buffer.from(`\ufeff${text}`, 'utf16le');
    expect(decodeText(new Uint8Array(little))).toEqual({ kind: 'text', text, encoding: 'utf-16le' });
    const big = Buffer.from(little).swap16();
    expect(decodeText(new Uint8Array(big))).toEqual({ kind: 'text', text, encoding: 'utf-16be' });
  });

  it('is none where there is a NUL', () => {
    expect(decodeText(bytes(...ascii('RIFF'), 36, 0, 0, 0))).toEqual({ kind: 'binary' });
  });

  it('never fails on any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (data) => {
        expect(['text', 'binary']).toContain(decodeText(data).kind);
      }),
    );
  });
});
