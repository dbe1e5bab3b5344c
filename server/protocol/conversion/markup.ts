import type { MarkupContent } from 'vscode-languageserver';
import { MarkupKind } from 'vscode-languageserver';
import { plainFromMarkdown } from '../../features/plainText';

/** Markdown for a client that shows it, plain text for one that prefers that or names no format. */
export function markupFor(formats: readonly MarkupKind[] | undefined, markdown: string): MarkupContent {
  const kind = formats?.find((one) => one === MarkupKind.Markdown || one === MarkupKind.PlainText);
  return kind === MarkupKind.Markdown
    ? { kind, value: markdown }
    : { kind: MarkupKind.PlainText, value: plainFromMarkdown(markdown) };
}
