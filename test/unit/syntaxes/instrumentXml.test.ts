import { beforeAll, describe, expect, it } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { loadGrammar, tokensOf } from './tokens';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadGrammar('text.xml.instrument');
});
const tokens = (text: string) => tokensOf(grammar, text);

/** Tokens without punctuation. */
const words = (text: string) => tokens(text).filter((token) => !/ punctuation/.test(token));

describe('highlighting of instrument XML', () => {
  it('tells elements, attributes and values apart', () => {
    expect(tokens('<region lokey="c#4"/>')).toEqual([
      '< punctuation.definition.tag.begin',
      'region entity.name.tag.header',
      'lokey entity.other.attribute-name.opcode',
      '= punctuation.separator.key-value',
      '" punctuation.definition.string.begin',
      'c#4 constant.other.note',
      '" punctuation.definition.string.end',
      '/> punctuation.definition.tag.end',
    ]);
  });

  it('colours numbers, options, variables, paths and references', () => {
    expect(
      words(
        `<group volume='-3.5' loop_mode="one_shot" tune="$T" sample="60 a&amp;$B.wav"\n group_label="c4">x</group>`,
      ),
    ).toEqual([
      'group entity.name.tag.header',
      'volume entity.other.attribute-name.opcode',
      '-3.5 constant.numeric',
      'loop_mode entity.other.attribute-name.opcode',
      'one_shot constant.language.option',
      'tune entity.other.attribute-name.opcode',
      '$T variable.other.constant',
      'sample entity.other.attribute-name.opcode',
      '60 a string.quoted',
      '&amp; constant.character.entity',
      '$B variable.other.constant',
      '.wav string.quoted',
      'group_label entity.other.attribute-name.opcode',
      'c4 string.quoted',
      'x text.xml.instrument',
      'group entity.name.tag.header',
    ]);
  });

  it('knows directives, other elements and other vocabularies', () => {
    expect(words('<define name="A" value="1"/><include path="a.xml"/><odd xml:lang="en"/>')).toEqual([
      'define keyword.control.directive',
      'name entity.other.attribute-name.opcode',
      'A string.quoted',
      'value entity.other.attribute-name.opcode',
      '1 constant.numeric',
      'include keyword.control.directive',
      'path entity.other.attribute-name.opcode',
      'a.xml string.quoted',
      'odd entity.name.tag',
      'xml:lang entity.other.attribute-name.namespace',
      'en string.quoted',
    ]);
  });

  it('knows comments over several lines, declarations and CDATA', () => {
    expect(
      words('<?xml version="1.0"?>\n<!-- a\n<region/> --><![CDATA[<b>]]><!DOCTYPE c [ <!-- > --> ]><d/>'),
    ).toEqual([
      'xml entity.name.tag',
      'version entity.other.attribute-name',
      '"1.0" string.quoted',
      'a comment.block',
      '<region/> comment.block',
      '<b> string.unquoted.cdata',
      'c meta.tag.sgml.doctype',
      '[ meta.tag.sgml.doctype',
      '> comment.block',
      '] meta.tag.sgml.doctype',
      'd entity.name.tag',
    ]);
  });

  it('recovers at the next tag from a value that is not closed', () => {
    expect(words('<region sample="a.wav\n<region key="1"/>').slice(3)).toEqual([
      'region entity.name.tag.header',
      'key entity.other.attribute-name.opcode',
      '1 constant.numeric',
    ]);
  });
});
