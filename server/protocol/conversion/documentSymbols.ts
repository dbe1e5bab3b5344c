import type { DocumentSymbol, SymbolInformation } from 'vscode-languageserver';
import { SymbolKind } from 'vscode-languageserver';
import type { HeaderSymbol } from '../../features/navigation/symbols';
import { HeaderKind } from '../../model/headerKinds';
import type { Source } from '../../model/text/source';
import { rangeOf } from './positions';

const kinds: Readonly<Record<HeaderKind, SymbolKind>> = {
  [HeaderKind.control]: SymbolKind.Module,
  [HeaderKind.global]: SymbolKind.Namespace,
  [HeaderKind.master]: SymbolKind.Package,
  [HeaderKind.group]: SymbolKind.Class,
  [HeaderKind.region]: SymbolKind.Field,
  [HeaderKind.curve]: SymbolKind.Array,
  [HeaderKind.effect]: SymbolKind.Operator,
  [HeaderKind.midi]: SymbolKind.Event,
  [HeaderKind.sample]: SymbolKind.File,
  [HeaderKind.unknown]: SymbolKind.Null,
};

/** Headers as the outline of a document. */
export function documentSymbols(source: Source, symbols: readonly HeaderSymbol[]): DocumentSymbol[] {
  return symbols.map((symbol) => {
    const { name, detail, children, tagStart, tagEnd } = symbol;
    const range = rangeOf(source, symbol);
    const selectionRange = rangeOf(source, { start: tagStart, end: tagEnd });
    const one: DocumentSymbol = { name, detail, kind: kinds[symbol.kind], range, selectionRange };
    if (children.length > 0) one.children = documentSymbols(source, children);
    return one;
  });
}

/** Headers as a flat list, for clients that show no outline. */
export function flatSymbols(
  source: Source,
  symbols: readonly HeaderSymbol[],
  uri: string,
  containerName?: string,
): SymbolInformation[] {
  return symbols.flatMap((symbol) => [
    {
      name: symbol.name,
      kind: kinds[symbol.kind],
      location: { uri, range: rangeOf(source, symbol) },
      ...(containerName !== undefined && { containerName }),
    },
    ...flatSymbols(source, symbol.children, uri, symbol.name),
  ]);
}
