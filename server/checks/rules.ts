import type { Rule, RuleDescription } from './rule';
import { clipped } from './rules/clipped';
import { controllerUnnamed } from './rules/controllerUnnamed';
import { crossfadeOutside } from './rules/crossfadeOutside';
import { dcOffset } from './rules/dcOffset';
import { definePrefix } from './rules/definePrefix';
import { endClick } from './rules/endClick';
import { endPastEnd } from './rules/endPastEnd';
import { falseStereo } from './rules/falseStereo';
import { keyGap } from './rules/keyGap';
import { keyswitchRange } from './rules/keyswitchRange';
import { keyswitchSounds } from './rules/keyswitchSounds';
import { loopInverted } from './rules/loopInverted';
import { loopPastEnd } from './rules/loopPastEnd';
import { loopSeam } from './rules/loopSeam';
import { loudnessStep } from './rules/loudnessStep';
import { mixedDepths } from './rules/mixedDepths';
import { mixedRates } from './rules/mixedRates';
import { noEffect } from './rules/noEffect';
import { offByUnknown } from './rules/offByUnknown';
import { offsetPastEnd } from './rules/offsetPastEnd';
import { opcodeAlias } from './rules/opcodeAlias';
import { opcodeMisplaced } from './rules/opcodeMisplaced';
import { opcodeUnknown } from './rules/opcodeUnknown';
import { opcodeValue } from './rules/opcodeValue';
import { oppositePhase } from './rules/oppositePhase';
import { randomHole } from './rules/randomHole';
import { rangeInverted } from './rules/rangeInverted';
import { rangeOverlap } from './rules/rangeOverlap';
import { regionDuplicate } from './rules/regionDuplicate';
import { rootMismatch } from './rules/rootMismatch';
import { sampleAbsolute } from './rules/sampleAbsolute';
import { sampleCase } from './rules/sampleCase';
import { sampleMissing } from './rules/sampleMissing';
import { sampleUnreadable } from './rules/sampleUnreadable';
import { sequenceHole } from './rules/sequenceHole';
import { silenceBefore } from './rules/silenceBefore';
import { tailCut } from './rules/tailCut';
import { velocityGap } from './rules/velocityGap';
import { velocityOrder } from './rules/velocityOrder';

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
    finds: 'A header that is not in the format. The nearest known name is offered.',
  },
  { code: 'include-missing', severity: 'error', finds: 'An included file that does not exist.' },
  {
    code: 'include-refused',
    severity: 'error',
    finds:
      'An include that leads out of the folder of the instrument and the open folder, or to a file that is no instrument text.',
  },
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
      'XML in words of its own, whose meaning was worked out from the text: a point that the text leaves open. Choose with a quick fix.',
  },
];

/** Findings about folders and SoundFonts as a whole; see `UnusedSamples`, `FontView.problems`. */
const wholeRules: readonly RuleDescription[] = [
  {
    code: 'font-structure',
    severity: 'warning',
    finds:
      'A SoundFont that breaks a rule of its format but can still be read. Tells what is cut off, left out or not used.',
  },
  {
    code: 'sample-unused',
    severity: 'information',
    finds: 'An audio file in a sample folder that no instrument refers to (folder check only).',
  },
];

/** Every finding code, with its severity and what it finds. */
export const rules: readonly RuleDescription[] = [...readerRules, ...instrumentRules, ...wholeRules];
