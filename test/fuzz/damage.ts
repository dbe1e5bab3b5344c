import fc from 'fast-check';

/** One way of damaging a text. */
interface Damage {
  kind: 'put' | 'drop' | 'repeat' | 'move' | 'dropLine' | 'repeatLine';
  from: number;
  to: number;
  length: number;
  scrap: string;
}

const scraps = [
  ...'<>/"\'=&;$#,|\t\n\r\\*-+. 0129azé🎵\0\u00a0\ufeff\ud800'.split(''),
  '\r\n',
  '//',
  '/*',
  '*/',
  '<!--',
  '-->',
  '<![CDATA[',
  ']]>',
  '<region>',
  '<group>',
  '<global>',
  '<control>',
  '</group>',
  '<region/>',
  '<region key="1"/>',
  ' key=60',
  ' key="60"',
  ' sample=a.wav',
  ' default_path=x/',
  ' note_offset=1',
  '$KEY',
  '&#36;KEY',
  '&amp;',
  '&#x41;',
  '\n#define $KEY 5\n',
  '\n#include "part.sfz"\n',
  '<define name="KEY" value="7"/>',
  '<include path="part.sfz"/>',
  '99999999999999999999',
  '-1',
  '1e9',
  'c#4',
];

const damage: fc.Arbitrary<Damage> = fc.record({
  kind: fc.constantFrom('put', 'put', 'put', 'drop', 'drop', 'repeat', 'move', 'dropLine', 'repeatLine'),
  from: fc.nat(20_000),
  to: fc.nat(20_000),
  length: fc.oneof(fc.nat(3), fc.nat(60)),
  scrap: fc.constantFrom(...scraps),
});

/** Ways of damaging a text, some of them none at all. */
export const damages: fc.Arbitrary<Damage[]> = fc.array(damage, { maxLength: 4 });

/** A text with damage: pieces put in, taken out, repeated or moved. */
export function damaged(text: string, list: readonly Damage[]): string {
  let now = text;
  for (const { kind, from, to, length, scrap } of list) {
    const at = from % (now.length + 1);
    const other = to % (now.length + 1);
    const piece = now.slice(at, at + length);
    const lineStart = now.lastIndexOf('\n', at - 1) + 1;
    const lineEnd = now.indexOf('\n', at) < 0 ? now.length : now.indexOf('\n', at) + 1;
    const line = now.slice(lineStart, lineEnd);
    if (kind === 'put') now = now.slice(0, at) + scrap + now.slice(at);
    else if (kind === 'drop') now = now.slice(0, at) + now.slice(at + length);
    else if (kind === 'repeat') now = now.slice(0, other) + piece + now.slice(other);
    else if (kind === 'move') {
      const without = now.slice(0, at) + now.slice(at + length);
      now = without.slice(0, other) + piece + without.slice(other);
    } else if (kind === 'dropLine') now = now.slice(0, lineStart) + now.slice(lineEnd);
    else now = now.slice(0, lineEnd) + line + now.slice(lineEnd);
  }
  return now;
}
