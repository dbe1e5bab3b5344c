import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinPath } from '../../../../server/model/paths';
import { GuardedFiles } from '../../../../server/workspace/files/guardedFiles';
import { MemoryFiles } from '../memoryFiles';

const part = fc.constantFrom('..', '.', 'a', 'b.wav', 'open', 'secret', 'link');
const written = fc
  .array(part, { minLength: 1, maxLength: 6 })
  .map((parts) => joinPath('/music/open', parts.join('/')));

/** Files with a link out of the open folder, which keep in mind what was asked of them. */
class LinkedFiles extends MemoryFiles {
  readonly asked: string[] = [];

  async realPath(path: string): Promise<string> {
    return path.replace(/^\/music\/open\/link(?=\/|$)/, '/secret');
  }

  override async stat(path: string) {
    this.asked.push(path);
    return super.stat(path);
  }

  override async list(folder: string) {
    this.asked.push(folder);
    return super.list(folder);
  }

  override async open(path: string) {
    this.asked.push(path);
    return super.open(path);
  }
}

describe('files of a folder that is not trusted', () => {
  it('are all that is reached, by whatever path and link', async () => {
    await fc.assert(
      fc.asyncProperty(written, async (path) => {
        const files = new LinkedFiles({ '/music/open/a': '', '/secret/a': '' });
        const guarded = new GuardedFiles(files);
        guarded.restrict(['/music/open']);
        await guarded.stat(path);
        await guarded.list(path);
        await guarded.open(path);
        await guarded.refusal(path);
        for (const asked of files.asked) {
          const end = await files.realPath(asked);
          expect(end === '/music/open' || end.startsWith('/music/open/')).toBe(true);
        }
      }),
    );
  });

  it('say why others are not, and are all given once the folder is trusted', async () => {
    const files = new LinkedFiles({ '/music/open/a': '', '/secret/a': 'x' });
    const guarded = new GuardedFiles(files);
    guarded.restrict(['/music/open']);
    expect(await guarded.stat('/music/open/a')).toMatchObject({ kind: 'file' });
    expect(await guarded.stat('/secret/a')).toBeUndefined();
    expect(await guarded.refusal('/secret/a')).toBe('trust');
    expect(await guarded.refusal('/music/open/link/a')).toBe('trust');
    expect(guarded.admits('/secret/a')).toBe(false);
    guarded.trust();
    expect(await guarded.stat('/secret/a')).toMatchObject({ kind: 'file', size: 1 });
    expect(guarded.admits('/secret/a')).toBe(true);
  });
});
