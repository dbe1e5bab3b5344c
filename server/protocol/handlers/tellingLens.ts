import type { CodeLens, Range } from 'vscode-languageserver';
import { showTextCommand } from './actions/handleCommands';

/** A lens that tells something and does no more: its command has the client show the text. */
export function tellingLens(range: Range, title: string): CodeLens {
  return { range, command: { title, command: showTextCommand, arguments: [title] } };
}
