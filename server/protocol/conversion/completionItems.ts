import type { CompletionItem, Range } from 'vscode-languageserver';
import { CompletionItemKind, InsertTextFormat, type MarkupKind } from 'vscode-languageserver';
import type { CompletionOffer } from '../../features/completion/completionOffer';
import { markupFor } from './markup';

/** What a client can do with completions. */
export interface CompletionAbilities {
  snippets: boolean;
  labelDetails: boolean;
  /** The client's command that offers completions, for items after which there is more to choose. */
  suggestCommand: string | undefined;
}

const kinds: Readonly<Record<CompletionOffer['kind'], CompletionItemKind>> = {
  header: CompletionItemKind.Class,
  opcode: CompletionItemKind.Property,
  option: CompletionItemKind.EnumMember,
  key: CompletionItemKind.Constant,
  file: CompletionItemKind.File,
  folder: CompletionItemKind.Folder,
  variable: CompletionItemKind.Variable,
  generator: CompletionItemKind.Function,
  shape: CompletionItemKind.Snippet,
};

/** Offers as items of the protocol; documentation is left to be asked for. */
export function completionItems(
  offers: readonly CompletionOffer[],
  rangeOf: (span: { start: number; end: number }) => Range,
  abilities: CompletionAbilities,
): CompletionItem[] {
  // Most offers take the place of the same stretch of text.
  let last: { start: number; end: number; range: Range } | undefined;
  return offers.map((offer) => {
    const { start, end } = offer;
    if (last?.start !== start || last.end !== end) last = { start, end, range: rangeOf(offer) };
    return itemOf(offer, last.range, abilities);
  });
}

function itemOf(
  offer: CompletionOffer,
  range: Range,
  { snippets, labelDetails, suggestCommand }: CompletionAbilities,
) {
  const [before, after] = offer.insert;
  const asSnippet = snippets && (after !== '' || offer.blanks !== undefined);
  const item: CompletionItem = {
    label: offer.label,
    kind: kinds[offer.kind],
    sortText: `${String(offer.rank).padStart(3, '0')} ${offer.label}`,
    textEdit: { range, newText: asSnippet ? snippetOf(offer) : before + after },
  };
  if (asSnippet) item.insertTextFormat = InsertTextFormat.Snippet;
  if (offer.filter !== undefined) item.filterText = offer.filter;
  if (offer.detail !== undefined) item.detail = offer.detail;
  if (offer.remark !== undefined) {
    if (labelDetails) item.labelDetails = { description: offer.remark };
    else item.detail = [offer.remark, offer.detail].filter(Boolean).join(', ');
  }
  if (offer.documented !== undefined) item.data = offer.documented;
  if (offer.goesOn && suggestCommand) item.command = { title: 'Choose on', command: suggestCommand };
  return item;
}

/** Adds documentation to an item that was asked about. */
export function withDocumentation(
  item: CompletionItem,
  markdown: string | undefined,
  formats: readonly MarkupKind[] | undefined,
): CompletionItem {
  return markdown === undefined ? item : { ...item, documentation: markupFor(formats, markdown) };
}

function snippetOf({ insert: [before, after], blanks = [] }: CompletionOffer): string {
  let text = '';
  let at = 0;
  blanks.forEach(({ start, end }, number) => {
    text += `${escaped(before.slice(at, start))}\${${number + 1}:${escaped(before.slice(start, end))}}`;
    at = end;
  });
  text += escaped(before.slice(at));
  // A value between quotation marks is left by the key that goes from part to part.
  const quote = /^["']/.exec(after)?.[0];
  if (quote === undefined) return `${text}$0${escaped(after)}`;
  return `${text}$${blanks.length + 1}${quote}$0${escaped(after.slice(1))}`;
}

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}
