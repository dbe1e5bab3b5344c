import { describe, expect, it } from 'vitest';
import { mainSpan, spanIn } from '../../../server/model/text/span';
import { breakBehindValue } from '../../../server/sfz/lineRest';
import { readSfz } from '../../../server/sfz/read';

/** What has to stand where `|` is in the text. */
function breakAt(marked: string): string {
  const at = marked.indexOf('|');
  const text = marked.replace('|', '');
  return breakBehindValue(readSfz(text, { path: 'a.sfz' }), mainSpan(at, at));
}

/** sfzformat.com: a value goes on to the next opcode, header, remark or line end, blanks in it included. */
describe('what parts a value from what follows it on its line', () => {
  it.each([
    ['nothing', '<region> a=1|'],
    ['blanks', '<region> a=1|  '],
    ['a line end', '<region> a=1|\nb=2'],
    ['blanks and a line end', '<region> a=1| \t\nstray'],
    ['a header', '<group> a=1| <region>'],
    ['an opcode', '<region> a=1| b=2'],
    ['an opcode of several letters, the first of the text', '<region>| volume=2'],
    ['the first header', '| <region>'],
    ['a directive', '<region> a=1| #define $x 2'],
    ['a directive behind another one', '#define $y 1\n<region> a=1| #define $x 2'],
    ['a remark', '<region> a=1| // b'],
    ['a remark of several lines', '<region> a=1| /* b */'],
    ['an included file', '<region> a=1|\n#include "b"'],
  ])('is nothing before %s', (_, text) => {
    expect(breakAt(text)).toBe('');
  });

  it.each([
    ['stray text', '<region>| stray'],
    ['a bracket that opens no header', '<region>| < stray'],
    ['an opcode that is one at the start of a line alone', '<region>| lo-key=2'],
    ['what looks like an opcode', '<region>| b =2'],
    ['a single stroke', '<region>| / stray'],
    ['a sign that starts no directive', '<region>| # stray'],
    ['a sign that starts no directive in a text with one', '#define $y 1\n<region>| # stray'],
  ])('is a line end before %s', (_, text) => {
    expect(breakAt(text)).toBe('\n');
  });

  it('is a line end as the text has them', () => {
    expect(breakAt('<region>| stray\r\na=1\r\n')).toBe('\r\n');
  });

  it('is nothing in a file that is not there', () => {
    expect(breakBehindValue(readSfz('<region> x', { path: 'a.sfz' }), spanIn(7, 8, 8))).toBe('');
  });
});
