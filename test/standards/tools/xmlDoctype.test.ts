import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { damagedDoctypeXml, doctypeXml } from '../../unit/xml/anyDoctype';
import { problemsOf } from '../../unit/xml/events';

// Document type declarations as XML 1.0 (W3C Recommendation, fifth edition) has them, judged by libxml2's xmllint, which
// is told to fetch nothing either. Where the tool is not installed these tests are skipped; the build that counts
// installs it.

const installed = spawnSync('xmllint', ['--version']).status === 0;

/**
 * What is wrong with each of some texts as xmllint says it; `undefined` where it takes one for well formed. One process reads all of
 * them: what it says of a file ends where it does not find the next one, and has the time taken where the file is well formed.
 * It also tells of undeclared entities where they are no matter of being well formed.
 */
function faultsOf(texts: readonly string[]): (string | undefined)[] {
  const folder = temporaryFolder('xml-doctype');
  for (const [at, text] of texts.entries()) writeFileSync(join(folder, `${at}.xml`), text);
  const names = texts.flatMap((_, at) => [`${at}.xml`, `${at}.end`]);
  const { stderr } = spawnSync('xmllint', ['--noout', '--nonet', '--timing', ...names], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  const said = stderr.split(/^.*"\d+\.end"\n/m);
  expect(said).toHaveLength(texts.length + 1);
  return said.slice(0, -1).map((one) => (/^Parsing took/m.test(one) ? undefined : one));
}

/** Whether what xmllint says of a text counts. */
function isJudged(text: string, fault: string | undefined): boolean {
  // Where declarations may stand elsewhere, an undeclared entity is no matter of being well formed (section 4.1, "Entity
  // Declared"), but makes xmllint give up the entity that refers to it.
  if (fault?.includes("' not defined") && / SYSTEM "x.dtd" \[|%[pq];/.test(text)) return false;
  // It does without the white space that production [28] asks for behind "<!DOCTYPE".
  if (!/<!DOCTYPE[ \t\r\n]/.test(text)) return false;
  // It gives itself up where one parameter entity is referred to twice in a row, and says so.
  return !/^[^\n]*parser error : (.*)/m.exec(fault ?? '')?.[1]?.startsWith('internal error');
}

function expectLikeXmllint(arbitrary: fc.Arbitrary<string>): void {
  const texts = fc.sample(arbitrary, 450);
  const faults = faultsOf(texts);
  const judged = texts
    .map((text, at) => ({ text, fault: faults[at] }))
    .filter(({ text, fault }) => isJudged(text, fault));
  expect(judged.length).toBeGreaterThan(200);
  for (const { text, fault } of judged) {
    const problems = problemsOf(text);
    expect({ text, wrong: problems.length > 0, fault, problems }).toEqual({
      text,
      wrong: fault !== undefined,
      fault,
      problems,
    });
  }
}

describe.skipIf(!installed)('a document type declaration', () => {
  it('is in order exactly where xmllint finds it so', () => expectLikeXmllint(doctypeXml));

  it('that is damaged has a fault exactly where xmllint finds one', () =>
    expectLikeXmllint(damagedDoctypeXml));
});
