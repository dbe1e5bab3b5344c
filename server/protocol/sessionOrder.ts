import type { Connection, Message, MessageStrategy } from 'vscode-languageserver';
import { ErrorCodes, ResponseError } from 'vscode-languageserver';

/** Requests at a time that is not theirs are handed on under these names, and refused. */
const early = 'zonewright/notInitialized';
const late = 'zonewright/shutDown';

/**
 * Keeps to the order of a session (Language Server Protocol 3.17, lifecycle): before `initialize` nothing is served, which
 * comes once, and behind `shutdown` nothing but `exit`. Requests at other times get an error, notifications are dropped.
 */
export function sessionOrder(): MessageStrategy {
  let isInitialized = false;
  let isShutDown = false;
  return {
    handleMessage(message, next) {
      const method = 'method' in message ? (message as Message & { method: unknown }).method : undefined;
      if (method === undefined || method === 'exit') return next(message);
      const isRequest = 'id' in message;
      const isFirst = isRequest && method === 'initialize' && !isInitialized;
      if (isShutDown || (method === 'initialize' && !isFirst)) {
        if (isRequest) return next({ ...message, method: late } as Message);
      } else if (isInitialized || isFirst) {
        isInitialized = true;
        isShutDown = isRequest && method === 'shutdown';
        return next(message);
      } else if (isRequest) return next({ ...message, method: early } as Message);
    },
  };
}

/** Answers the requests that came at the wrong time. */
export function refuseUntimely(connection: Connection): void {
  connection.onRequest(early, () => {
    throw new ResponseError(ErrorCodes.ServerNotInitialized, 'The server is not initialized yet.');
  });
  connection.onRequest(late, () => {
    throw new ResponseError(ErrorCodes.InvalidRequest, 'The server is shut down, or was initialized before.');
  });
}
