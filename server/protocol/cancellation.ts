import type { CancellationToken } from 'vscode-languageserver';
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** Ends the work on a request that nobody waits for any more; asked between its steps. */
export function stopIfCancelled(token: CancellationToken): void {
  if (token.isCancellationRequested)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
}
