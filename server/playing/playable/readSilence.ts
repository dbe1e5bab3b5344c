import { Parameter } from '../../model/parameterNames';
import type { SampleState } from '../../model/samples';
import type { PlayableOptions } from './playableInstrument';
import { Silence } from './playableInstrument';
import type { ValuesInForce } from './valuesInForce';

/** Why each region never makes a sound; see {@link Silence}. */
export function readSilence(values: ValuesInForce, { samples }: PlayableOptions): Uint8Array {
  const { instrument } = values;
  const silence = new Uint8Array(instrument.regions.length);
  const ends = values.parameters(Parameter.end);
  for (const [at, region] of instrument.regions.entries()) {
    const path = samples && instrument.samplePath(region);
    const end = ends?.[at] ?? -1;
    if (instrument.sampleParameter[region] < 0) silence[at] = Silence.noSample;
    else if (path !== undefined && !path.startsWith('*')) silence[at] = silenceOf(samples?.state(path));
    if (silence[at] === Silence.none && end >= 0 && instrument.number(end) < 0) silence[at] = Silence.off;
  }
  return silence;
}

function silenceOf(state: SampleState | undefined): number {
  if (state?.kind === 'missing' || state?.kind === 'folder') return Silence.sampleMissing;
  if (state?.kind === 'file' || state?.kind === 'otherCase')
    return state.reading?.kind === 'unreadable' ? Silence.sampleUnreadable : Silence.none;
  return Silence.none;
}
