import { describe, expect, it } from 'vitest';
import { nestingIn } from '../../../../server/vocabulary/infer/stated/nesting';
import { valuesIn } from './inferred';

// Tunings that lie closer together where they are added to the one around, so that the numbers alone would speak for a sum.
const marimba = (around: string, said = '') =>
  `<marimba>${said}<row>${around}${[
    [48, 12],
    [50, 10],
    [52, 11],
  ]
    .map(
      ([key, cents]) =>
        `<bar low="${key}" high="${key + 1}" root="${key}" cents="${cents}" file="${key}.wav"/>`,
    )
    .join('')}<bar low="54" high="55" root="54" file="54.wav"/></row></marimba>`;

describe('defaults of elements around', () => {
  it.each(['defaults', 'usual'])('are replaced by own values where they stand in <%s>', (name) => {
    expect(valuesIn(marimba(`<${name} cents="-10"/>`), 'tune', 'group_tune')).toEqual([
      '12 -',
      '10 -',
      '11 -',
      '-10 -',
    ]);
  });

  it('are added where the text says so', () => {
    const text = marimba('<usual cents="-10"/>', '<!-- Cents add up over the levels. -->');
    expect(valuesIn(text, 'group_tune')).toEqual(['-10', '-10', '-10', '-10']);
  });

  it.each([
    ['Cents of a bar are not added to those of its row.', 'replaces'],
    ['A level of its own is never on top of the one around.', 'replaces'],
    ['Die Pegel werden nicht addiert.', 'replaces'],
    ["Le niveau ne s'ajoute pas au groupe.", 'replaces'],
    ['The levels are added.', 'adds'],
    ['The level is not only added but counted in dB.', 'adds'],
  ])('%s', (text, is) => {
    expect(nestingIn([text])?.is).toBe(is);
  });
});
