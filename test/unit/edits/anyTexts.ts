import fc from 'fast-check';
import type { Format } from '../features/anyInstrument';
import type { Texts } from './includingTexts';
import { anyIncludingSfz, anyIncludingXml } from './includingTexts';
import { anyMutatedSfz } from './realTexts';

/** Texts with includes anywhere: invented ones, and such that are there with changes. */
export const anyTexts: Readonly<Record<Format, fc.Arbitrary<Texts>>> = {
  sfz: fc.oneof({ weight: 3, arbitrary: anyIncludingSfz }, { weight: 1, arbitrary: anyMutatedSfz }),
  xml: anyIncludingXml,
};
