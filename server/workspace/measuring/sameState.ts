import type { FileStat } from '../../model/files';

/** Whether a file is still in the state that something is remembered of. */
export function isSameState(one: Pick<FileStat, 'size' | 'modified'>, other: typeof one): boolean {
  return one.size === other.size && one.modified === other.modified;
}
