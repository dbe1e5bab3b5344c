import type { RowTable } from '../interpolation/windowedSinc';
import { CompiledKernel } from './compiledKernel';
import type { Kernel } from './kernel';
import { PlainKernel } from './plainKernel';

/** A kernel with tables, compiled where that is wished and allowed: a page's policy or an old engine may refuse it. */
export function kernelWith(tables: readonly RowTable[], mayCompile: boolean): Kernel {
  if (!mayCompile) return new PlainKernel(tables);
  try {
    return new CompiledKernel(tables);
  } catch {
    return new PlainKernel(tables);
  }
}
