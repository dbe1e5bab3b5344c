import { pitchClaimsOf } from '../../checks/facts/samples/pitchClaims';
import { playedLoudnessesOf } from '../../checks/facts/samples/playedLoudness';
import { sampleUsesOf } from '../../checks/facts/samples/sampleUses';
import type { CheckContext } from '../../checks/rule';
import type { MapMeasures, RegionMeasure } from '../../map/views/mapMeasures';
import { playableInstrument } from '../../playing/playable/makePlayable';
import { soundOf } from '../../sound/program/soundOf';
import { velocityResponse } from '../../sound/response/velocityResponse';

/** A pitch measured with less confidence says nothing of tuning. */
const surely = 0.8;

/** What is known by now of an instrument for the views of its map, and of the velocities of a key; the rest is asked for in passing. */
export function mapMeasures(context: CheckContext, key: number): MapMeasures {
  const { instrument } = context;
  const regions = new Map<number, RegionMeasure>();
  const of = (header: number) => {
    const known = regions.get(header) ?? { header };
    regions.set(header, known);
    return known;
  };
  for (const { region, pitch, deviationCents } of pitchClaimsOf(context)?.all() ?? [])
    if (pitch.confidence >= surely) of(region).cents = deviationCents;
  const played = playedLoudnessesOf(context);
  played?.loudness.forEach((level, number) => {
    if (Number.isFinite(level)) of(instrument.regions[number]).levelDb = level;
  });
  const response = velocityResponse(playableInstrument(instrument), soundOf(instrument), key, (number) => {
    const level = (played?.loudness[number] ?? Number.NaN) - (played?.gain[number] ?? 0);
    return Number.isFinite(level) ? level : 0;
  });
  const { uses, useOfRegion } = sampleUsesOf(context);
  const isUnmeasured = (number: number) =>
    uses[useOfRegion[number]]?.isFile && !Number.isFinite(played?.loudness[number] ?? Number.NaN);
  const velocities = response.map(({ velocity, levelDb, regions: numbers }) => {
    const unmeasured = numbers.filter(isUnmeasured).length;
    return {
      velocity,
      ...(Number.isFinite(levelDb) && { levelDb }),
      regions: numbers.map((number) => instrument.regions[number]),
      ...(unmeasured > 0 && { unmeasured }),
    };
  });
  return { regions: [...regions.values()], key, velocities };
}
