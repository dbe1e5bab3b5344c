/** What errors of the system mean to a person who wanted to write. */
const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist',
  ENOTDIR: 'a file of that name is there',
  EEXIST: 'a file of that name is there',
  EACCES: 'writing there is not allowed',
  EPERM: 'writing there is not allowed',
  EROFS: 'nothing can be written to this disk',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
  EFBIG: 'the file would be too large',
  EISDIR: 'this is a folder, a file is needed',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'the name is too long',
  EIO: 'the disk does not work',
};

/** Why something could not be written, as the end of a sentence: in words where they are known, else as the system's code. */
export function systemReason(error: unknown): string {
  if (!(error instanceof Error)) return 'unknown reason';
  const code = 'code' in error ? String(error.code) : undefined;
  return code === undefined ? error.message : (reasons[code] ?? code);
}
