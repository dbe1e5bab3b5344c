import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import oniguruma from 'vscode-oniguruma';
import type { IGrammar, IRawGrammar } from 'vscode-textmate';
import textmate from 'vscode-textmate';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const files: Readonly<Record<string, string>> = {
  'source.sfz': 'syntaxes/sfz.tmLanguage.json',
  'text.xml.instrument': 'syntaxes/instrument-xml.tmLanguage.json',
};

/** A grammar, run by the library that the editor itself runs grammars with. */
export async function loadGrammar(scope: string): Promise<IGrammar> {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  const bytes = readFileSync(wasm);
  await oniguruma.loadWASM(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (name) => {
      const file = files[name];
      return file === undefined ? null : (JSON.parse(readFileSync(`${root}/${file}`, 'utf8')) as IRawGrammar);
    },
  });
  const grammar = await registry.loadGrammar(scope);
  if (!grammar) throw new Error(`There is no grammar for ${scope}.`);
  return grammar;
}

/** The pieces of a text with the innermost scope of each, its language suffix left out; blanks alone are left out. */
export function tokensOf(grammar: IGrammar, text: string): string[] {
  let state = textmate.INITIAL;
  const tokens: string[] = [];
  for (const line of text.split('\n')) {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    for (const { startIndex, endIndex, scopes } of result.tokens) {
      const piece = line.slice(startIndex, endIndex).trim();
      const scope = (scopes.at(-1) ?? '').replace(/\.(sfz|xml)$/, '');
      if (piece !== '') tokens.push(`${piece} ${scope}`);
    }
  }
  return tokens;
}
