import { OutputError } from '../../model/output';
import { folderOf, joinPath } from '../../model/paths';
import type { PackPlan } from './packPlan';
import { packRoot } from './packPlan';
import type { PackText } from './packSource';

/**
 * Reads the texts of a pack again, from the pack alone, and fails with an {@link OutputError} unless each region plays the file
 * that it played before.
 */
export function checkPack(
  { instrument, notation }: PackText,
  texts: ReadonlyMap<string, string>,
  plan: PackPlan,
): void {
  const main = plan.moves.after(instrument.sources[0].path);
  const packed = notation.read(texts.get(main.slice(packRoot.length + 1)) ?? '', {
    path: main,
    include: (path) => {
      const text = texts.get(path.slice(packRoot.length + 1));
      return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
    },
  });
  const folder = folderOf(instrument.sources[0].path);
  const isSame =
    packed.regions.length === instrument.regions.length &&
    instrument.regions.every((region, at) => {
      const before = instrument.samplePath(region);
      const now = packed.samplePath(packed.regions[at]);
      if (before === now && (before === undefined || before.startsWith('*'))) return true;
      if (before === undefined || now === undefined) return false;
      const from = plan.actual(joinPath(folder, before));
      const there = joinPath(folderOf(main), now);
      if (plan.moves.after(from) === there)
        return plan.files.has(there.slice(packRoot.length + 1)) || before === now;
      return before === now && !plan.files.has(there.slice(packRoot.length + 1));
    });
  if (!isSame) throw new OutputError('it cannot be packed, because its regions would then play other files');
}
