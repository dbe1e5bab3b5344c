import type { MeasureMemory } from '../../comparison/heardContent';
import type { MeasuredNote } from '../../comparison/measureNotes';
import type { Files } from '../../model/files';
import type { CacheStorage } from '../measuring/measureCache';

/** A memory that can be kept. */
export interface KeptMemory extends MeasureMemory {
  /** Keeps what was used or found since it was opened. */
  keep(): Promise<void>;
}

/**
 * What comparing two instruments measured before, kept under a name. Each measure is found by a sum over all that it depends
 * on, so that it is right whatever became of the instruments since; samples count by path, size and time of change.
 */
export async function measureMemory(
  storage: CacheStorage,
  name: string,
  files: Files,
  sumOf: (text: string) => string,
): Promise<KeptMemory> {
  const before = await read(storage, name);
  const used = new Map<string, MeasuredNote>();
  const states = new Map<string, Promise<string>>();
  let isNew = false;
  return {
    read(content) {
      const sum = sumOf(content);
      const measured = before.get(sum);
      if (measured) used.set(sum, measured);
      return measured;
    },
    write(content, measured) {
      isNew = true;
      used.set(sumOf(content), measured);
    },
    stateOf(path) {
      let state = states.get(path);
      if (!state) {
        state = files.stat(path).then((stat) => `${path} ${stat?.size} ${stat?.modified}`);
        states.set(path, state);
      }
      return state;
    },
    async keep() {
      if (isNew) await storage.write(name, new TextEncoder().encode(JSON.stringify([...used])));
    },
  };
}

async function read(storage: CacheStorage, name: string): Promise<Map<string, MeasuredNote>> {
  const bytes = await storage.read(name);
  if (!bytes) return new Map();
  try {
    return new Map(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    return new Map();
  }
}
