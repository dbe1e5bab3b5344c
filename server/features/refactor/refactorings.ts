import { closeKeyGaps } from './closeKeyGaps';
import { extractDefine } from './extractDefine';
import { inlineInclude } from './inlineInclude';
import { joinKeys, splitKeys } from './keyForms';
import { keySpellings } from './keySpelling';
import { pushDown } from './pushDown';
import type { Refactoring } from './refactoring';
import { roundRobins } from './roundRobins';
import { shareOpcodes } from './shareOpcodes';
import { sortRegions } from './sortRegions';
import { regionsToFile, regionsToGroup } from './splitRegions';

/** All refactorings, in the order in which they are offered. */
export const refactorings: readonly Refactoring[] = [
  ...keySpellings,
  joinKeys,
  splitKeys,
  extractDefine,
  inlineInclude,
  shareOpcodes,
  pushDown,
  regionsToGroup,
  regionsToFile,
  sortRegions,
  closeKeyGaps,
  roundRobins,
];
