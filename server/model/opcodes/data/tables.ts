import { amplifier } from './amplifier';
import { effects } from './effects';
import { embeddedData } from './embeddedData';
import { envelopes } from './envelopes';
import { filterAndPitch } from './filterAndPitch';
import { instrumentSettings } from './instrumentSettings';
import { lfo } from './lfo';
import { regionLogic } from './regionLogic';
import { samplePlayback } from './samplePlayback';

/**
 * The opcodes of the open SFZ format, by category. The facts (level, type, unit, bounds, default, options, aliases)
 * are those of the format's public documentation (CC0 1.0); the descriptions are our own.
 */
export const opcodeTables = [
  ...samplePlayback,
  ...instrumentSettings,
  ...regionLogic,
  ...amplifier,
  ...filterAndPitch,
  ...envelopes,
  ...lfo,
  ...effects,
  ...embeddedData,
];
