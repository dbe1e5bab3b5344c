import { expect, it } from 'vitest';
import { dictionaryOf } from '../../../../server/trade/headings/dictionary';
import { isPlainHeading } from '../../../../server/trade/headings/plainHeadings';
import { languages } from '../../../../server/trade/languages/languages';
import { statementsIn } from '../../../../server/trade/statements/statements';

/** All headings that the languages know, as they are written in a table. */
const known = languages.flatMap((language) =>
  [...dictionaryOf(language).byStart.values()].flat().map(({ words }) => {
    const text = words.join(' ');
    return text.charAt(0).toUpperCase() + text.slice(1);
  }),
);

it('tells headings that only name a kind of values', () => {
  for (const text of ['Sample', 'Low key', 'Root', 'hivel', 'Pan', 'Loop end', 'Untere Taste'])
    expect([text, isPlainHeading(text)]).toEqual([text, true]);
  const telling = [
    'Pan (-50..50)',
    'Volume dB',
    'Tune in cents',
    'Round robin',
    'Start key',
    'Loop last frame',
  ];
  for (const text of [...telling, 'Root 60', 'C4 = 60', 'Notes by Ann', ''])
    expect([text, isPlainHeading(text)]).toEqual([text, false]);
});

it('tells none that states how values are to be read', () => {
  const plain = known.filter(isPlainHeading);
  expect(plain.length).toBeGreaterThan(known.length / 2);
  const none = stated([]);
  // One in five: a word of a language stands in many of its headings.
  for (let at = 0; at < plain.length; at += 5) {
    // The space behind makes it a text like any other.
    const text = `${plain[at]} `;
    expect(isPlainHeading(text)).toBe(false);
    expect(`${text}${stated([text])}`).toBe(`${text}${none}`);
  }
});

/** What is stated, as text, without the texts themselves. */
function stated(written: readonly string[]): string {
  const { texts: _, ...rest } = statementsIn(written);
  return JSON.stringify(rest, (_name, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...value] : value,
  );
}
