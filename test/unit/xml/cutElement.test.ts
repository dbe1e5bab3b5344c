import { describe, expect, it } from 'vitest';
import { cutElement } from '../../../server/xml/cutElement';

const zone = (name: string) => `<zone file="${name}.wav" low="36" high="40"/>\n`;
const cutAt = (text: string) => {
  const cut = cutElement(text);
  return cut && text.slice(cut.start);
};

describe('the element that a text of XML ends in the middle of', () => {
  it.each([
    ['in a value', `<set>${zone('a')}${zone('b')}`, '<zone file="c.wav" low="41" high="4'],
    ['in a name', `<set>${zone('a')}`, '<zone file="c.wav" lo'],
    ['without an outermost element', `${zone('a')}${zone('b')}`, '<zone file="c.wav" low="41"'],
    [
      'in the text of a child',
      '<set><zone><file>a.wav</file><low>36</low></zone>',
      '<zone><file>b.wav</file><low>3',
    ],
    [
      'behind a child',
      '<set><zone><file>a.wav</file><low>36</low></zone>',
      '<zone><file>b.wav</file><low>37</low>',
    ],
    [
      'in a later group',
      `<set><group>${zone('a')}${zone('b')}</group><group>${zone('c')}`,
      '<zone file="d.wav" l',
    ],
  ])('is found %s', (_, before, cut) => {
    expect(cutAt(before + cut)).toBe(cut);
  });

  it.each([
    ['a whole text', `<set>${zone('a')}</set>\n`],
    ['a fragment of whole elements', `${zone('a')}${zone('b')}`],
    [
      'elements around that are not closed',
      `<set><group>${zone('a')}${zone('b')}</group><group>${zone('c')}`,
    ],
    ['a tag that is not closed further up', `<set><zone file="a.wav"\n${zone('b')}${zone('c')}</set>`],
  ])('is none in %s', (_, text) => {
    expect(cutAt(text)).toBeUndefined();
  });
});
