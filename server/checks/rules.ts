import { clipped } from './clipped';
import { controllerUnnamed } from './controllerUnnamed';
import { crossfadeOutside } from './crossfadeOutside';
import { dcOffset } from './dcOffset';
import { definePrefix } from './definePrefix';
import { endClick } from './endClick';
import { endPastEnd } from './endPastEnd';
import { falseStereo } from './falseStereo';
import { keyGap } from './keyGap';
import { keyswitchRange } from './keyswitchRange';
import { keyswitchSounds } from './keyswitchSounds';
import { loopInverted } from './loopInverted';
import { loopPastEnd } from './loopPastEnd';
import { loopSeam } from './loopSeam';
import { loudnessStep } from './loudnessStep';
import { mixedDepths } from './mixedDepths';
import { mixedRates } from './mixedRates';
import { noEffect } from './noEffect';
import { offByUnknown } from './offByUnknown';
import { offsetPastEnd } from './offsetPastEnd';
import { opcodeAlias } from './opcodeAlias';
import { opcodeMisplaced } from './opcodeMisplaced';
import { opcodeUnknown } from './opcodeUnknown';
import { opcodeValue } from './opcodeValue';
import { oppositePhase } from './oppositePhase';
import { randomHole } from './randomHole';
import { rangeInverted } from './rangeInverted';
import { rangeOverlap } from './rangeOverlap';
import { regionDuplicate } from './regionDuplicate';
import { rootMismatch } from './rootMismatch';
import type { Rule, RuleDescription } from './rule';
import { sampleAbsolute } from './sampleAbsolute';
import { sampleCase } from './sampleCase';
import { sampleMissing } from './sampleMissing';
import { sampleUnreadable } from './sampleUnreadable';
import { sequenceHole } from './sequenceHole';
import { silenceBefore } from './silenceBefore';
import { tailCut } from './tailCut';
import { velocityGap } from './velocityGap';
import { velocityOrder } from './velocityOrder';

/** The checks that look at one instrument, in the order in which they run. */
export const instrumentRules: readonly Rule[] = [
  opcodeUnknown,
  opcodeValue,
  opcodeMisplaced,
  opcodeAlias,
  sampleMissing,
  sampleCase,
  sampleUnreadable,
  sampleAbsolute,
  rangeInverted,
  rangeOverlap,
  regionDuplicate,
  keyGap,
  velocityGap,
  loopPastEnd,
  endPastEnd,
  offsetPastEnd,
  loopInverted,
  loopSeam,
  rootMismatch,
  silenceBefore,
  tailCut,
  endClick,
  dcOffset,
  clipped,
  oppositePhase,
  falseStereo,
  loudnessStep,
  velocityOrder,
  mixedRates,
  mixedDepths,
  sequenceHole,
  randomHole,
  offByUnknown,
  keyswitchRange,
  keyswitchSounds,
  crossfadeOutside,
  controllerUnnamed,
  noEffect,
  definePrefix,
];

/** Findings that readers make while they read. */
const readerRules: readonly RuleDescription[] = [
  {
    code: 'syntax-error',
    severity: 'error',
    finds: 'Text that is neither header, opcode, comment nor directive, or XML that is not well formed.',
  },
  {
    code: 'header-unknown',
    severity: 'warning',
    finds: 'A header that is not in the format; the nearest known name is offered.',
  },
  { code: 'include-missing', severity: 'error', finds: 'An included file that does not exist.' },
  {
    code: 'include-cycle',
    severity: 'error',
    finds: 'A file that includes itself, directly or through others.',
  },
  { code: 'define-unknown', severity: 'warning', finds: 'A variable that is used and never defined.' },
  {
    code: 'vocabulary-doubt',
    severity: 'information',
    finds:
      'XML in a vocabulary that was worked out from the text: a point that the text leaves open; a fix settles it.',
  },
];

/** Findings about folders as a whole; see `findUnusedSamples`. */
const folderRules: readonly RuleDescription[] = [
  {
    code: 'sample-unused',
    severity: 'information',
    finds: 'An audio file in a sample folder that no instrument refers to (folder check only).',
  },
];

/** Every finding code, with its severity and what it finds. */
export const rules: readonly RuleDescription[] = [...readerRules, ...instrumentRules, ...folderRules];
