import { ErrorCodes, MessageType, ResponseError } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import type { FixKind } from '../../../features/quickFixes';
import { onesOfKind, safeOnes } from '../../../features/quickFixes';
import { pathOfUri } from '../../conversion/uris';
import type { FolderFindings } from '../../folderFindings';
import type { ServerContext } from '../../serverContext';
import { tell } from '../../tell';
import { checkFolders } from './checkFolder';
import { fixFolders, handleFolderFixes } from './fixFolder';
import { leadPaths, leadPathsCommand } from './folderActions';

/**
 * Applies fixes in all instruments of a folder, by its URI, or of all open folders: those of a kind, by its code and words, or
 * all safe ones.
 */
export const fixFolderCommand = 'zonewright.fixAllInFolder';

/** Checks all instruments of a folder, by its URI, or of all open folders, and tells what is found in them from then on. */
export const checkFolderCommand = 'zonewright.checkFolder';

/** Looks at all files anew and checks again. */
export const checkAgainCommand = 'zonewright.checkAgain';

/** Has the client show a text: what a lens does that only tells something, since each needs a command. */
export const showTextCommand = 'zonewright.showText';

/** The commands that the server carries out itself. */
export const serverCommands = [
  fixFolderCommand,
  checkFolderCommand,
  checkAgainCommand,
  leadPathsCommand,
  showTextCommand,
];

/** Takes the commands that the server carries out itself. */
export function handleCommands(server: ServerContext, folderFindings: FolderFindings): void {
  const { connection } = server;
  handleFolderFixes(server);
  connection.onExecuteCommand(async ({ command, arguments: given = [] }) => {
    switch (command) {
      case fixFolderCommand: {
        const folder = folderIn(given[0]);
        const kind = kindIn(given[1]);
        const folders = folder === undefined ? server.folders : [folder];
        return fixFolders(server, folders, kind ? onesOfKind(kind) : safeOnes);
      }
      case checkFolderCommand: {
        const folder = folderIn(given[0]);
        return checkFolders(server, folderFindings, folder === undefined ? server.folders : [folder]);
      }
      case checkAgainCommand:
        server.documents.forgetFiles();
        folderFindings.checkAgain();
        return null;
      case leadPathsCommand: {
        const [from, to] = [folderIn(given[0]), folderIn(given[1])];
        return from !== undefined && to !== undefined && leadPaths(server, from, to);
      }
      case showTextCommand:
        if (typeof given[0] === 'string') tell(connection, MessageType.Info, given[0]);
        return null;
      default:
        throw new ResponseError(ErrorCodes.InvalidParams, `There is no command "${command}".`);
    }
  });
}

function kindIn(value: unknown): FixKind | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { code, kind } = value as Record<string, unknown>;
  return typeof code === 'string' && typeof kind === 'string' ? { code, kind } : undefined;
}

/** The folder that an editor names: as a URI, written out or in parts. */
function folderIn(value: unknown): string | undefined {
  if (typeof value === 'string') return pathOfUri(value);
  if (typeof value !== 'object' || value === null) return undefined;
  const { scheme, authority, path } = value as Record<string, unknown>;
  if (typeof scheme !== 'string' || typeof path !== 'string') return undefined;
  return pathOfUri(
    URI.from({ scheme, path, ...(typeof authority === 'string' && { authority }) }).toString(),
  );
}
