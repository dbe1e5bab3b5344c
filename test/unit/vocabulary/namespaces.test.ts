import { XMLParser } from 'fast-xml-parser';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { writeVocabulary } from '../../../server/vocabulary/writeVocabulary';

const text = `<?xml version="1.0"?>
<!-- <w:other xmlns:w="urn:example:no"/> -->
<w:well xmlns:w="urn:example:well" xmlns="urn:example:water" xmlns:unused="urn:example:unused">
  <w:bucket w:file="drop-1.wav" w:lowestKey="40" w:highestKey="45"><rootKey>43</rootKey></w:bucket>
  <w:bucket w:file="drop-2.wav" w:lowestKey="46" w:highestKey="52"><rootKey>49</rootKey></w:bucket>
</w:well>
`;

function inferred(): Vocabulary {
  const found = inferVocabulary(text, { path: 'well.xml' });
  if (!found) throw new Error('The text was taken for no instrument.');
  return found.vocabulary;
}

/** What a namespace-aware reader says against a text (Namespaces in XML 1.0). */
function namespaceFaults(xml: string): string[] {
  const faults: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', ({ message }) => faults.push(message));
  parser.write(xml).close();
  return faults;
}

describe('namespaces of a vocabulary', () => {
  it('are those of its names that the outermost element declares', () => {
    expect(inferred().namespaces).toEqual({ w: 'urn:example:well', '': 'urn:example:water' });
  });

  it('are kept in its file, and prefixes that cannot be are told', () => {
    const vocabulary = inferred();
    expect(parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
    const odd = writeVocabulary({ ...vocabulary, namespaces: { 'a b': 'urn:x', c: '' } });
    const { problems } = parseVocabulary(odd);
    expect(problems.map(({ start, end }) => odd.slice(start, end))).toEqual(['"a b"', '""']);
  });

  it('are declared in a text that is written, so that a reader of namespaces takes it', () => {
    const vocabulary = inferred();
    const notation = vocabularyNotation(vocabulary);
    const { text: written } = notation.write(notation.read(text, { path: 'well.xml' }));
    expect(namespaceFaults(written)).toEqual([]);
    expect(namespaceFaults(written.replace(/ xmlns:w="[^"]*"/, ''))).not.toEqual([]);
    const { 'w:well': root } = new XMLParser({ ignoreAttributes: false }).parse(written);
    expect(root['@_xmlns']).toBe('urn:example:water');
    expect(root['@_xmlns:unused']).toBeUndefined();
  });
});
