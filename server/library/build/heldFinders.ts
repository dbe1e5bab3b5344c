import type { Files } from '../../model/files';
import { audioFilesBelow } from '../../workspace/samples/audioFilesBelow';
import { isLarge, SampleFinder } from '../../workspace/samples/sampleFinder';

/** What was found in a folder of samples: the folders below it, and what finds names in them where these are many. */
interface Held {
  folders: string[];
  finder: SampleFinder | undefined;
}

/**
 * Keeps what finds samples in large folders, so that many tables over one folder do not sort it anew each. In small ones each
 * table looks for near names too, of which every table may have so many, so that nothing is shared there.
 */
export class HeldFinders {
  readonly #held = new Map<string, Promise<Held>>();

  /** What finds samples in a folder for texts in another one; `undefined` where the folder is small. */
  async finder(files: Files, samples: string, output: string): Promise<SampleFinder | undefined> {
    const key = `${samples}\n${output}`;
    const known = this.#held.get(key);
    const held = known ?? find(files, samples, output);
    this.#held.set(key, held);
    const { folders, finder } = await held;
    // Whoever keeps in mind what was read is to know it of this table too.
    if (known && finder) for (const folder of folders) await files.list(folder);
    return finder;
  }
}

async function find(files: Files, samples: string, output: string): Promise<Held> {
  const folders: string[] = [];
  const noting: Files = {
    stat: (path) => files.stat(path),
    open: (path) => files.open(path),
    list: (folder) => {
      folders.push(folder);
      return files.list(folder);
    },
  };
  const paths = await audioFilesBelow(noting, samples);
  return { folders, finder: isLarge(paths.length) ? new SampleFinder(paths, output) : undefined };
}
