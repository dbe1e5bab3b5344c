import type { SemanticTokensEdit } from 'vscode-languageserver';
import type { Token } from '../../features/semanticTokens';
import type { Source } from '../../model/text/source';

/** Tokens as the protocol counts them: line and character from the token before, length, kind, marks. */
export function tokenData(source: Source, tokens: readonly Token[]): number[] {
  const { lineStarts } = source;
  const data = new Array<number>(tokens.length * 5);
  let line = 0;
  let lastLine = 0;
  let lastStart = 0;
  let at = 0;
  for (const { start, end, kind, marks } of tokens) {
    while (line + 1 < lineStarts.length && lineStarts[line + 1] <= start) line++;
    const isSameLine = line === lastLine && at > 0;
    data[at++] = line - lastLine;
    data[at++] = isSameLine ? start - lastStart : start - lineStarts[line];
    data[at++] = end - start;
    data[at++] = kind;
    data[at++] = marks;
    lastLine = line;
    lastStart = start;
  }
  return data;
}

/** The one stretch that changed between two lists of token data; none where they are equal. */
export function tokenEdits(before: readonly number[], after: readonly number[]): SemanticTokensEdit[] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let tail = 0;
  while (tail < shorter - start && before[before.length - 1 - tail] === after[after.length - 1 - tail])
    tail++;
  return [
    {
      start,
      deleteCount: before.length - start - tail,
      data: after.slice(start, after.length - tail),
    },
  ];
}

/** The token data that clients were told last, a few documents' worth, so that they can be told of changes alone. */
export class ToldTokens {
  readonly #byUri = new Map<string, { resultId: string; data: readonly number[] }>();
  #serial = 0;

  /** Notes what a client is told of a document; answers the name that it goes by. */
  note(uri: string, data: readonly number[]): string {
    const resultId = String(++this.#serial);
    this.#byUri.delete(uri);
    this.#byUri.set(uri, { resultId, data });
    const [oldest] = this.#byUri.keys();
    if (this.#byUri.size > mostDocuments && oldest !== undefined) this.#byUri.delete(oldest);
    return resultId;
  }

  /** What the client was told under a name; `undefined` where that is not kept any more. */
  told(uri: string, resultId: string): readonly number[] | undefined {
    const told = this.#byUri.get(uri);
    return told?.resultId === resultId ? told.data : undefined;
  }
}

const mostDocuments = 8;
