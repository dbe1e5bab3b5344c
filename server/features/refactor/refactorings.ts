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
import { whereItFits } from './whereItFits';

/** Those that spell keys themselves, or use variables or included files. */
const free: readonly Refactoring[] = [...keySpellings, joinKeys, splitKeys, extractDefine, inlineInclude];

/** All refactorings, in the order in which they are offered. */
export const refactorings: readonly Refactoring[] = [
  ...free.map((one) => whereItFits(one, true)),
  ...[shareOpcodes, pushDown, regionsToGroup].map((one) => whereItFits(one, false)),
  whereItFits(regionsToFile, true),
  ...[sortRegions, closeKeyGaps, roundRobins].map((one) => whereItFits(one, false)),
];
