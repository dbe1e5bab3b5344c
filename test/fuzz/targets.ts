import { audioTargets } from './audioFiles';
import { conversionTargets } from './conversions';
import { editTargets } from './edits';
import { readingTargets } from './readings';
import { tableTargets } from './tables';
import type { FuzzTarget } from './target';
import { wordTargets } from './wordTexts';

/** All that is tried. */
export const targets: readonly FuzzTarget[] = [
  ...conversionTargets,
  ...editTargets,
  ...readingTargets,
  ...tableTargets,
  ...wordTargets,
  ...audioTargets,
];
