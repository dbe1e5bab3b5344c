import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { damagedDoctypeXml, doctypeXml } from '../../unit/xml/anyDoctype';
import { problemsOf } from '../../unit/xml/events';

// Document type declarations as XML 1.0 (W3C Recommendation, fifth edition) has them, judged by libxml2's xmllint, which
// is told to fetch nothing either. Where the tool is not installed these tests are skipped; the build that counts
// installs it.

const installed = spawnSync('xmllint', ['--version']).status === 0;

/** What is wrong with a text as xmllint says it; `undefined` where it takes the text for well formed. */
function faultOf(text: string): string | undefined {
  const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '-'], {
    input: text,
    encoding: 'utf8',
  });
  // It tells of undeclared entities even where they are no matter of being well formed, and answers 0 then.
  return status === 0 ? undefined : stderr;
}

function expectLikeXmllint(text: string): void {
  const fault = faultOf(text);
  // Where declarations may stand elsewhere, an undeclared entity is no matter of being well formed (section 4.1, "Entity
  // Declared"), but makes xmllint give up the entity that refers to it.
  fc.pre(!fault?.includes("' not defined") || !/ SYSTEM "x.dtd" \[|%[pq];/.test(text));
  // It does without the white space that production [28] asks for behind "<!DOCTYPE".
  fc.pre(/<!DOCTYPE[ \t\r\n]/.test(text));
  // It gives itself up where one parameter entity is referred to twice in a row, and says so.
  fc.pre(!/^[^\n]*parser error : (.*)/m.exec(fault ?? '')?.[1]?.startsWith('internal error'));
  const problems = problemsOf(text);
  expect({ text, wrong: problems.length > 0, fault, problems }).toEqual({
    text,
    wrong: fault !== undefined,
    fault,
    problems,
  });
}

describe.skipIf(!installed)('a document type declaration', () => {
  it('is in order exactly where xmllint finds it so', () => {
    fc.assert(fc.property(doctypeXml, expectLikeXmllint), { numRuns: 200 });
  });

  it('that is damaged has a fault exactly where xmllint finds one', () => {
    fc.assert(fc.property(damagedDoctypeXml, expectLikeXmllint), { numRuns: 200 });
  });
});
