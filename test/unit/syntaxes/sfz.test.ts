import { beforeAll, describe, expect, it } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { loadGrammar, tokensOf } from './tokens';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadGrammar('source.sfz');
});
const tokens = (text: string) => tokensOf(grammar, text);

/** Tokens without those of tags and `=`. */
const values = (text: string) =>
  tokens(text).filter((token) => !/ (punctuation|keyword\.operator|entity|meta)/.test(token));

describe('highlighting of SFZ', () => {
  it('tells headers, opcodes and values apart', () => {
    expect(tokens('<region> lokey=c#4 volume=-3.5 loop_mode=one_shot')).toEqual([
      '< punctuation.definition.tag.begin',
      'region entity.name.tag.header',
      '> punctuation.definition.tag.end',
      'lokey entity.other.attribute-name.opcode',
      '= keyword.operator.assignment',
      'c#4 constant.other.note',
      'volume entity.other.attribute-name.opcode',
      '= keyword.operator.assignment',
      '-3.5 constant.numeric',
      'loop_mode entity.other.attribute-name.opcode',
      '= keyword.operator.assignment',
      'one_shot constant.language.option',
    ]);
  });

  it('lets a path run up to the next opcode, header or comment', () => {
    expect(values('sample=Soft A#3 (take 2).wav key=58 sample=b c.wav <region>sample=d.wav // e')).toEqual([
      'Soft A#3 (take 2).wav string.unquoted.path',
      '58 constant.numeric',
      'b c.wav string.unquoted.path',
      'd.wav string.unquoted.path',
      'e comment.line.double-slash',
    ]);
  });

  it('ends a value with its line', () => {
    expect(values('sample=a b\nkey=1\nregion_label=Two words\nsample=\nkey=2')).toEqual([
      'a b string.unquoted.path',
      '1 constant.numeric',
      'Two words string.unquoted.label',
      '2 constant.numeric',
    ]);
  });

  it('knows comments on a line and over several', () => {
    expect(values('// a key=1\nkey=2 /* b\nkey=3 */ tune=4')).toEqual([
      'a key=1 comment.line.double-slash',
      '2 constant.numeric',
      'b comment.block',
      'key=3 comment.block',
      '4 constant.numeric',
    ]);
  });

  it('knows directives and variables', () => {
    expect(
      tokens('#define $KEY 60 #define $D a\n#include "$D/b c.sfz"\ntune=$KEY sample=$D.wav lo$CC=1'),
    ).toEqual([
      '#define keyword.control.directive.define',
      '$KEY variable.other.constant',
      '60 constant.numeric',
      '#define keyword.control.directive.define',
      '$D variable.other.constant',
      'a constant.language.option',
      '#include keyword.control.directive.include',
      '" punctuation.definition.string',
      '$D variable.other.constant',
      '/b c.sfz string.quoted.double.include',
      '" punctuation.definition.string',
      'tune entity.other.attribute-name.opcode',
      '= keyword.operator.assignment',
      '$KEY variable.other.constant',
      'sample entity.other.attribute-name.opcode',
      '= keyword.operator.assignment',
      '$D variable.other.constant',
      '.wav string.unquoted.path',
      'lo entity.other.attribute-name.opcode',
      '$CC variable.other.constant',
      '= keyword.operator.assignment',
      '1 constant.numeric',
    ]);
  });

  it('shows a header that the format does not have as one of its own', () => {
    expect(tokens('<regoin>')[1]).toBe('regoin entity.name.tag.unknown');
  });
});
