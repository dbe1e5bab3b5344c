import { defaultOf, withinRange } from '../generators';
import type { EnvelopeStages } from '../modulations';
import { modulationEnvelope, volumeEnvelope } from '../modulations';
import { secondsOfTimecents, sfzFallSeconds } from '../units';
import type { FontRegion } from './fontRegions';
import type { OpcodeList } from './opcodeList';

const stages = ['delay', 'attack', 'hold', 'decay', 'release'] as const;

/** The opcodes of the envelopes that a region uses. */
export function envelopePrefixes(envelope: EnvelopeStages, region: FontRegion): string[] {
  if (envelope === volumeEnvelope) return ['ampeg'];
  const uses = (generator: number, prefix: string) =>
    region.generators.has(generator) ||
    region.modulators.some((one) => one.destination === generator && one.amount !== 0)
      ? [prefix]
      : [];
  return [...uses(11, 'fileg'), ...uses(7, 'pitcheg')];
}

/**
 * Says how the velocity moves a time of an envelope, where the generator is one. The format multiplies times and SFZ text
 * adds to them: both agree at the lowest and the highest velocity.
 */
export function velocityTimes(
  generator: number,
  amount: number,
  { base, slope }: { base: number; slope: number },
  region: FontRegion,
  list: OpcodeList,
): boolean {
  for (const envelope of [volumeEnvelope, modulationEnvelope]) {
    const stage = stages.find((one) => envelope[one] === generator);
    if (!stage) continue;
    const own = region.generators.get(generator) ?? defaultOf(generator);
    const at = (part: number) => {
      const seconds = secondsOfTimecents(withinRange(generator, own + amount * (base + slope * part)));
      const falls = envelope === volumeEnvelope && (stage === 'decay' || stage === 'release');
      return falls ? sfzFallSeconds(seconds) : seconds;
    };
    for (const prefix of envelopePrefixes(envelope, region)) {
      if (base !== 0) list.measured(`${prefix}_${stage}`, at(0));
      list.measured(`${prefix}_vel2${stage}`, at(1) - at(0), 0);
    }
    list.remark(
      'approximated',
      `In the SoundFont velocity multiplies the ${stage} of an envelope, in SFZ text it adds to it. The two agree at the lowest and highest velocity.`,
    );
    return true;
  }
  return false;
}
