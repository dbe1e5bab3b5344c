import type { OutputContent } from '../../model/output';

/** Puts files on a disk for a build. Paths are absolute. Fails with the system's error. */
export interface FileWriter {
  /** Puts a whole file in place with the folders around it, or leaves what is there as it is. */
  write(path: string, content: OutputContent): Promise<void>;
  /** Puts a whole folder of files in the place of what is there, or leaves that as it is; paths start from the folder. */
  writeFolder(path: string, files: ReadonlyMap<string, OutputContent>): Promise<void>;
  /** Takes a file away where it is there. */
  remove(path: string): Promise<void>;
}
