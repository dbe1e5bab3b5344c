import { Range } from 'vscode';
import type { Range as ProtocolRange } from 'vscode-languageserver-protocol';

/** A stretch of the editor as the protocol has it. */
export function toProtocol({ start, end }: Range): ProtocolRange {
  return {
    start: { line: start.line, character: start.character },
    end: { line: end.line, character: end.character },
  };
}

/** A stretch of the protocol as the editor has it. */
export function toEditor({ start, end }: ProtocolRange): Range {
  return new Range(start.line, start.character, end.line, end.character);
}
