import { describe, expect, it } from 'vitest';
import { HeaderKind } from '../../../server/model/headerKinds';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { examples } from './examples';

const notationOf = (name: string) => vocabularyNotation(examples[name]?.vocabulary);

describe('what a person starts to type', () => {
  it.each([
    ['foundry', 'lokey', ['bottomKey="', '"']],
    ['orchard', 'lokey', ['<note-span from="', '"/>']],
    ['harbour', 'lokey', ['<LOWEST_NOTE>', '</LOWEST_NOTE>']],
    ['observatory', 'lokey', ['<reading what="lower key" shows="', '"/>']],
  ])('%s spells %s', (name, parameter, spelled) => {
    expect(notationOf(name).spelling.parameter(parameter)).toEqual(spelled);
  });

  it('goes by where it is typed', () => {
    const { spelling, parameters } = notationOf('orchard');
    const tag = { text: '<orchard-book><fruit-tree><note-span ', start: 37 };
    expect(spelling.parameter('hikey', tag)).toEqual(['to="', '"']);
    expect(parameters?.(HeaderKind.region, tag)).toEqual(['lokey', 'hikey', 'pitch_keycenter']);
    const begun = { text: '<orchard-book><fruit-tree><no', start: 27 };
    expect(spelling.parameter('hikey', begun)).toEqual(['note-span to="', '"/>']);
    const word = { text: '<sky><night><star><reading what="', start: 33 };
    expect(notationOf('observatory').spelling.parameter('hikey', word)).toEqual(['upper key', '']);
    expect(notationOf('observatory').parameters?.(HeaderKind.region, word)).toContain('hikey');
  });

  it('knows the parameters and headers of the vocabulary alone', () => {
    const { parameters, headers, spelling } = notationOf('brewery');
    expect(headers).toEqual(['global', 'master', 'group', 'region']);
    expect(spelling.header('region', '')).toEqual(['pint ', '/>', 0]);
    expect(spelling.header('group', '')).toEqual(['vat ', '></vat>', 0]);
    expect(parameters?.(HeaderKind.group)).toContain('ampeg_attack');
    expect(parameters?.(HeaderKind.group)).not.toContain('sample');
    expect(parameters?.(HeaderKind.region)).not.toContain('cutoff');
  });

  it('gives values in the form of their place', () => {
    const { inForm } = notationOf('foundry').spelling;
    expect(inForm?.('loop_mode', 'loop_continuous', '')).toBe('endless');
    expect(inForm?.('loop_mode', 'one_shot', '')).toBeUndefined();
    // Key 60 is called C5 in this vocabulary.
    expect(notationOf('observatory').spelling.inForm?.('lokey', '60', 'c')).toBe('C5');
  });
});
