import type { PlayableInstrument } from '../playable/playableInstrument';

/**
 * What the decay of release regions adds to the level of one in dB, 0 or less for decays above 0, after its note was
 * held for some seconds: `rt_decay` for each second, or the stages of `rt_decayN` where there are some.
 */
export function releaseGainDb(playable: PlayableInstrument, region: number, heldSeconds: number): number {
  const { start, decayDb, endSeconds } = playable.releaseStages;
  const end = start[region + 1];
  let stage = start[region];
  if (stage === end) return 0 - playable.releaseDecayDb[region] * heldSeconds;
  let gainDb = 0;
  let from = 0;
  for (; stage < end; stage++) {
    const to = stage === end - 1 ? heldSeconds : Math.min(heldSeconds, endSeconds[stage]);
    if (to <= from) continue;
    gainDb -= decayDb[stage] * (to - from);
    from = to;
  }
  return gainDb;
}
