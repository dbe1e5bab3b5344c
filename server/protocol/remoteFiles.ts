import type { RequestType } from 'vscode-languageserver-protocol';
import type { Files } from '../model/files';
import { FileRangeRequest, FileStatRequest, FolderListRequest } from './requests/fileRequests';

/** A connection to who has the files. */
export interface FileConnection {
  sendRequest<Answer>(method: string, params: object): Promise<Answer>;
}

/** Files that the other side of a connection has; `addressOf` gives the address of a path there. */
export function remoteFiles(connection: FileConnection, addressOf: (path: string) => string): Files {
  const ask = <Params extends object, Answer>(
    { method }: RequestType<Params, Answer, void>,
    params: Params,
  ) => connection.sendRequest<Answer>(method, params);
  const files: Files = {
    async stat(path) {
      try {
        return (await ask(FileStatRequest.type, { file: addressOf(path) })) ?? undefined;
      } catch {
        return undefined;
      }
    },

    async list(folder) {
      try {
        return (await ask(FolderListRequest.type, { file: addressOf(folder) })) ?? undefined;
      } catch {
        return undefined;
      }
    },

    async open(path) {
      const found = await files.stat(path);
      if (found?.kind !== 'file') return undefined;
      const { size, modified } = found;
      const file = addressOf(path);
      return {
        size,
        async read(start, wanted) {
          const length = Math.max(0, Math.min(wanted, size - start));
          if (length === 0) return new Uint8Array(0);
          return ask(FileRangeRequest.type, { file, size, modified, start, length });
        },
        close: async () => {},
      };
    },
  };
  return files;
}
