import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';

const formOf = (says: string, values: readonly string[], name = 'response') =>
  inferVocabulary(
    `<crate><!-- ${says} -->${values
      .map((value, at) => `<peg file="${at}.wav" low="${40 + at}" high="${40 + at}" ${name}="${value}"/>`)
      .join('')}</crate>`,
    { path: 'crate.xml' },
  )
    ?.vocabulary.levels.at(-1)
    ?.parameters.find(({ at }) => at === `@${name}`);

describe('a place that says how far velocities move levels', () => {
  it.each([
    'response: how far velocity moves the level, percent (0 = not at all)',
    'response = how much the velocity changes the loudness, in percent',
    'response: wie stark die Anschlagstärke die Lautstärke beeinflusst, in Prozent',
  ])('%s', (says) => {
    expect(formOf(says, ['100', '40'])).toEqual({
      parameter: 'amp_veltrack',
      at: '@response',
      form: { kind: 'number' },
    });
  });

  it('may count up to 1', () => {
    expect(formOf('response: how far velocity moves the level, 0 to 1', ['1', '0.4'])?.form).toEqual({
      kind: 'number',
      times: 0.01,
    });
  });

  it('is none where something else is moved', () => {
    expect(formOf('response: how far velocity moves the filter', ['100', '40'])).toBeUndefined();
  });
});
