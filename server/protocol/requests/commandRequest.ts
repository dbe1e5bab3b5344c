import { RequestType } from 'vscode-languageserver-protocol';

/** Has the server carry out a command that the client has registered itself (Language Server Protocol 3.17, `workspace/executeCommand`). */
export const CommandRequest = {
  type: new RequestType<{ command: string; arguments: unknown[] }, unknown, void>('workspace/executeCommand'),
} as const;
