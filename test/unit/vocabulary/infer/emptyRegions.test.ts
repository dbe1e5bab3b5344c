import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const pad = (key: number, file: string) =>
  `<pad key="${key}" title="P${key}"><file src="${file}"/><gain db="-3"/></pad>`;

describe('elements called as regions are that name no audio file', () => {
  it.each([
    [
      'an empty attribute of an element in it',
      `<kit>${pad(40, 'a.wav')}${pad(41, '')}${pad(43, 'b.wav')}</kit>`,
    ],
    ['white space', `<kit>${pad(40, 'a.wav')}${pad(41, '  ')}${pad(43, 'b.wav')}</kit>`],
    ['a word for none', `<kit>${pad(40, 'a.wav')}${pad(41, 'none')}${pad(43, 'b.wav')}</kit>`],
    ['a word of another language', `<kit>${pad(40, 'a.wav')}${pad(41, 'keine')}${pad(43, 'b.wav')}</kit>`],
    [
      'an empty attribute of its own',
      '<kit><touche note="40" fichier="a.wav"/><touche note="41" fichier=""/><touche note="43" fichier="b.wav"/></kit>',
    ],
    [
      'no attribute at all',
      '<kit><taste note="40" datei="a.wav"/><taste note="41"/><taste note="43" datei="b.wav"/></kit>',
    ],
    [
      'an empty element',
      '<kit><pad><note>40</note><file>a.wav</file></pad><pad><note>41</note><file/></pad><pad><note>43</note><file>b.wav</file></pad></kit>',
    ],
    [
      'a reference to nothing',
      '<kit><files><file id="f1" src="a.wav"/><file id="f2" src="b.wav"/></files><pad key="40" file="f1"/><pad key="41" file=""/><pad key="43" file="f2"/></kit>',
    ],
  ])('are no regions, which is told: %s', (_, text) => {
    expect(valuesIn(text, 'sample', 'key')).toHaveLength(2);
    const { decisions, unread, regions } = readInferred(text);
    expect(regions.join(' ')).not.toContain('41');
    expect(decisions.some(({ message, isGuess }) => isGuess && /no audio file/.test(message))).toBe(true);
    expect(unread.filter((message) => message.includes('left out'))).toHaveLength(1);
  });

  it('stay where a sample is named around them', () => {
    const text =
      '<kit><set file="a.wav"><pad lo="40" hi="42" root="41"/></set><set file="b.wav"><pad lo="43" hi="45" root="44"/></set></kit>';
    expect(valuesIn(text, 'sample')).toEqual(['a.wav', 'b.wav']);
  });
});
