import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

interface Configuration {
  comments: { lineComment?: string; blockComment: [string, string] };
  wordPattern: string;
  folding: { markers: { start: string; end: string } };
  indentationRules?: { increaseIndentPattern: string; decreaseIndentPattern: string };
  onEnterRules?: { beforeText: string; afterText: string }[];
}

const read = (name: string) =>
  JSON.parse(
    readFileSync(
      fileURLToPath(new URL(`../../../syntaxes/${name}.language-configuration.json`, import.meta.url)),
      'utf8',
    ),
  ) as Configuration;
const sfz = read('sfz');
const xml = read('instrument-xml');
const wordsIn = ({ wordPattern }: Configuration, text: string) => text.match(new RegExp(wordPattern, 'g'));

describe('language configuration', () => {
  it('takes opcodes, notes, numbers and variables as words', () => {
    const words = ['lokey', 'c#4', 'volume', '-3.5', 'amp_velcurve_64', '$KEY'];
    expect(wordsIn(sfz, 'lokey=c#4 volume=-3.5 amp_velcurve_64=$KEY')).toEqual(words);
    expect(wordsIn(xml, 'lokey="c#4" volume="-3.5" amp_velcurve_64="$KEY"')).toEqual(words);
  });

  it('folds between remarks made for it', () => {
    expect('  // region Soft').toMatch(new RegExp(sfz.folding.markers.start));
    expect('// #endregion').toMatch(new RegExp(sfz.folding.markers.end));
    expect('<region> // region').not.toMatch(new RegExp(sfz.folding.markers.start));
    expect('  <!-- #region Soft -->').toMatch(new RegExp(xml.folding.markers.start));
    expect('<region/>').not.toMatch(new RegExp(xml.folding.markers.start));
  });

  it('indents inside elements that hold others', () => {
    const { increaseIndentPattern, decreaseIndentPattern } = xml.indentationRules ?? {};
    expect('  <group sample="a/b">').toMatch(new RegExp(increaseIndentPattern as string));
    expect('  <group lovel="1"/>').not.toMatch(new RegExp(increaseIndentPattern as string));
    expect('  </group>').toMatch(new RegExp(decreaseIndentPattern as string));
    const [rule] = xml.onEnterRules ?? [];
    expect('<group a="1">').toMatch(new RegExp(rule?.beforeText));
    expect('<group a="1"/>').not.toMatch(new RegExp(rule?.beforeText));
    expect('</group>').toMatch(new RegExp(rule?.afterText));
  });
});
