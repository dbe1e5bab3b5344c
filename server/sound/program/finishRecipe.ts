import { fallingShape } from '../modulation/envelope';
import { throughPoints } from './curves';
import type {
  BandRecipe,
  BendRecipe,
  EnvelopeRecipe,
  Fade,
  FilterRecipe,
  FirstLfoRecipe,
  FlexibleEnvelopeRecipe,
  LfoRecipe,
  Route,
  VoiceRecipe,
} from './recipe';
import { RouteKind } from './recipe';
import type { RecipeDraft } from './recipeDraft';
import { Slot } from './slots';

/** Points, waves and steps beyond these are left out; text can name more than anything would play. */
const mostParts = 128;

/** Makes the recipe of what was gathered. */
export function finishRecipe(draft: RecipeDraft): VoiceRecipe {
  const envelopes = sorted(draft.envelopes);
  const lfos = sorted(draft.lfos);
  const routes = routesOf(draft, envelopes, lfos);
  const recipe = {
    fades: fadesOf(draft),
    velocityCurve: velocityCurve(draft),
    filters: filtersOf(draft),
    bands: sorted(draft.bands).flatMap((number) => bandOf(draft, number)),
    amplitudeEnvelope: envelopeOf(draft, 'ampeg'),
    filterEnvelope: isMoved(draft, Slot.fileg_depth) ? envelopeOf(draft, 'fileg') : null,
    pitchEnvelope: isMoved(draft, Slot.pitcheg_depth) ? envelopeOf(draft, 'pitcheg') : null,
    amplitudeLfo: lfoWithTarget(draft, 'amplfo'),
    filterLfo: lfoWithTarget(draft, 'fillfo'),
    pitchLfo: lfoWithTarget(draft, 'pitchlfo'),
    envelopes: envelopes.map((number) => flexibleEnvelope(draft, number)),
    lfos: lfos.map((number) => numberedLfo(draft, number)),
    routes,
    bend: bendOf(draft),
    ...draft.flags,
    loopType: draft.loopType,
    loopCount: draft.setting('loop_count', -1),
    loopCrossfadeSeconds: draft.setting('loop_crossfade', 0),
    sampleCount: draft.setting('count', 0),
    sampleFadeSeconds: draft.setting('sample_fadeout', 0),
    pitchKeytrack: draft.setting('pitch_keytrack', 100),
    offShape: draft.setting('off_shape', fallingShape),
  };
  // Slots are made while the parts are, so base and moves come last.
  return { ...recipe, moves: draft.finishedMoves(), base: Float64Array.from(draft.base) };
}

function sorted(map: ReadonlyMap<number, unknown>): number[] {
  return [...map.keys()].sort((a, b) => a - b);
}

/** Whether a depth is set or something moves it. */
function isMoved(draft: RecipeDraft, slot: number): boolean {
  return draft.base[slot] !== 0 || draft.finishedMoves().some((move) => move.slot === slot);
}

function envelopeOf(draft: RecipeDraft, name: 'ampeg' | 'fileg' | 'pitcheg'): EnvelopeRecipe {
  const falling = name === 'ampeg' ? fallingShape : 0;
  return {
    firstSlot: Slot[`${name}_delay`],
    shapes: {
      attack: draft.setting(`${name}_attack_shape`, 0),
      decay: draft.setting(`${name}_decay_shape`, falling),
      release: draft.setting(`${name}_release_shape`, falling),
      isDecayRate: draft.setting(`${name}_decay_zero`, 1) !== 0,
      isReleaseRate: draft.setting(`${name}_release_zero`, 0) !== 0,
    },
    isDynamic: draft.setting(`${name}_dynamic`, 0) !== 0,
  };
}

function lfoWithTarget(draft: RecipeDraft, name: 'amplfo' | 'fillfo' | 'pitchlfo'): FirstLfoRecipe | null {
  if (!isMoved(draft, Slot[`${name}_depth`])) return null;
  return {
    delay: Slot[`${name}_delay`],
    fade: Slot[`${name}_fade`],
    frequency: Slot[`${name}_freq`],
    depth: Slot[`${name}_depth`],
  };
}

function filtersOf(draft: RecipeDraft): FilterRecipe[] {
  const filters: FilterRecipe[] = [];
  const first = draft.setting('cutoff', 0);
  const second = draft.setting('cutoff2', 0);
  const [type, secondType] = draft.filterTypes;
  if (first > 0 && type) {
    filters.push({ type, hertz: first, cents: Slot.cutoff, resonance: Slot.resonance, gain: Slot.fil_gain });
  }
  if (second > 0 && secondType) {
    filters.push({
      type: secondType,
      hertz: second,
      cents: Slot.cutoff2,
      resonance: Slot.resonance2,
      gain: Slot.fil2_gain,
    });
  }
  return filters;
}

function bandOf(draft: RecipeDraft, number: number): BandRecipe[] {
  const { type } = draft.band(number);
  if (!type) return [];
  const slot = (name: string) => draft.slot(`eq${number}_${name}`);
  return [{ type, hertz: slot('freq'), bandwidth: slot('bw'), gain: slot('gain') }];
}

function velocityCurve(draft: RecipeDraft): Float64Array | null {
  if (draft.velocityPoints.size === 0) return null;
  return throughPoints(new Map([[0, 0], [127, 1], ...draft.velocityPoints]));
}

/** Pairs of which nothing is set, or that hold the documented defaults, are no crossfades. */
function fadesOf(draft: RecipeDraft): Fade[] {
  const fades: Fade[] = [];
  for (const { subject = 0, isIn = true, low, high } of draft.fades.values()) {
    const whole = isIn ? 0 : 127;
    const fade = { subject, isIn, low: low ?? whole, high: high ?? whole };
    if (fade.low === fade.high && (fade.low === whole || (subject >= 0 && fade.low === 0))) continue;
    const of = subject === -1 ? 'key' : subject === -2 ? 'velocity' : 'controller';
    fades.push({ ...fade, isPower: draft.isPower[of] });
  }
  return fades;
}

function bendOf(draft: RecipeDraft): BendRecipe {
  const step = draft.setting('bend_step', 1);
  return {
    up: draft.setting('bend_up', 200),
    down: draft.setting('bend_down', -200),
    stepUp: draft.setting('bend_stepup', step),
    stepDown: draft.setting('bend_stepdown', step),
    smoothMs: draft.setting('bend_smooth', 0),
  };
}

function flexibleEnvelope(draft: RecipeDraft, number: number): FlexibleEnvelopeRecipe {
  const { settings, parts } = draft.envelope(number);
  const count = settings.get('points') ?? Math.max(-1, ...parts) + 1;
  const points = Array.from({ length: Math.max(0, Math.min(mostParts, Math.trunc(count))) }, (_, point) => ({
    time: draft.slot(`eg${number}_time${point}`),
    level: draft.slot(`eg${number}_level${point}`),
    shape: settings.get(`shape${point}`) ?? 0,
    curve: settings.get(`curve${point}`) ?? -1,
  }));
  return {
    points,
    sustain: settings.get('sustain') ?? -1,
    loop: settings.get('loop') ?? -1,
    loopCount: settings.get('loop_count') ?? -1,
    isAmplitude: (settings.get('ampeg') ?? 0) !== 0,
    isDynamic: (settings.get('dynamic') ?? 0) !== 0,
  };
}

function numberedLfo(draft: RecipeDraft, number: number): LfoRecipe {
  const { settings, parts } = draft.lfo(number);
  const waves = [...new Set([1, ...parts])].sort((a, b) => a - b).slice(0, mostParts);
  const steps = Math.min(mostParts, Math.trunc(settings.get('steps') ?? 0));
  return {
    frequency: draft.slot(`lfo${number}_freq`),
    delay: draft.slot(`lfo${number}_delay`),
    fade: draft.slot(`lfo${number}_fade`),
    phase: draft.slot(`lfo${number}_phase`),
    count: settings.get('count') || Number.POSITIVE_INFINITY,
    waves: waves.map((part) => ({
      wave: settings.get(`wave${part}`) ?? 1,
      offset: settings.get(`offset${part}`) ?? 0,
      ratio: settings.get(`ratio${part}`) ?? 1,
      scale: settings.get(`scale${part}`) ?? 1,
    })),
    steps: Array.from(
      { length: Math.max(0, steps) },
      (_, step) => (settings.get(`step${step + 1}`) ?? 0) / 100,
    ),
  };
}

function routesOf(draft: RecipeDraft, envelopes: readonly number[], lfos: readonly number[]): Route[] {
  const routes: Route[] = [];
  for (const [opcode, { isLfo, number, target, other }] of draft.routes) {
    const [kind, slot] = targetOf(draft, target, other, lfos);
    if (slot < 0) continue;
    const panCurve =
      target === 'pan' && !isLfo ? draft.envelope(number).settings.get('pan_curve') : undefined;
    routes.push({
      isLfo,
      source: (isLfo ? lfos : envelopes).indexOf(number),
      kind,
      target: slot,
      depth: draft.slot(opcode),
      curve: panCurve ?? -1,
    });
  }
  return routes;
}

function targetOf(
  draft: RecipeDraft,
  target: string,
  other: number,
  lfos: readonly number[],
): [kind: number, target: number] {
  if (target === 'amplitude') return [RouteKind.amplitude, Slot.amplitude];
  if (target.endsWith(' depth')) return [RouteKind.lfoDepth, lfos.indexOf(other)];
  return [RouteKind.add, draft.slot(target)];
}
