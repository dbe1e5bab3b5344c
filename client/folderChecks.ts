import type { Disposable } from 'vscode';
import { commands } from 'vscode';
import { CommandRequest } from '../server/protocol/requests/commandRequest';
import type { ServerClient } from './serverClient';

/**
 * Commands that the server carries out and that a person may choose before it runs: the client would have them only once it
 * does. They start it.
 */
export const folderCheckCommands = ['zonewright.checkFolder', 'zonewright.checkAgain'] as const;

/** Registers the commands that check the instruments of a folder. */
export function registerFolderChecks(client: ServerClient): Disposable[] {
  return folderCheckCommands.map((command) =>
    commands.registerCommand(command, (...given: unknown[]) =>
      client.sendRequest(CommandRequest.type, { command, arguments: given.slice(0, 1) }),
    ),
  );
}
