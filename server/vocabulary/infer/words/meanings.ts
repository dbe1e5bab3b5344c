import type { Unit } from '../../../trade/meaning';
import { conceptsOf, letteredConcepts } from './tradeWords';

/**
 * What a place may hold. Names of the open SFZ format, and some of our own where the values have to tell more: a range
 * of keys, velocities or positions in one text, a length instead of an end, a switch with words, a name of an element.
 */
export type InferredTarget = string;

/** One thing that the name of a place can mean. */
export interface Meaning {
  target: InferredTarget;
  /** 0..1: how well the name says so. */
  weight: number;
  unit: NameUnit | undefined;
}

/** A unit that a name gives. */
export type NameUnit = Unit | 'ratio';

/** What names say, by the things that their words stand for; where a name leaves it open, the likeliest first. */
const rules: ReadonlyMap<string, readonly InferredTarget[]> = new Map(
  `
lo key = lokey
hi key = hikey
lo = lokey lovel offset
hi = hikey hivel end
key = key
key range = key_range
key lo range = lokey
key hi range = hikey
range = key_range velocity_range
lo range = lokey lovel
hi range = hikey hivel
root = pitch_keycenter
root key = pitch_keycenter
hi root = pitch_keycenter
root pitch = pitch_keycenter
key pitch = pitch_keycenter
root key pitch = pitch_keycenter
file key = pitch_keycenter
pitch = pitch_keycenter tune
pitch ratio = tune
lo pitch = lokey
hi pitch = hikey
pitch range = key_range
vel = velocity_range
vel range = velocity_range
lo vel = lovel
hi vel = hivel
lo vel range = lovel
hi vel range = hivel
vel group = velocity_range
lo vel group = lovel
hi vel group = hivel
loop = loop
loop mode = loop
loop on = loop
loop on mode = loop
loop dir = loop_type
loop rev = loop_type
lo loop = loop_start
hi loop = loop_end
in loop = loop_start
sus lo loop = loop_start
sus hi loop = loop_end
sus loop = loop
out loop = loop_end
loop shift = loop_start
loop shift start = loop_start
loop pos = loop_start
loop len = loop_length
loop range = loop_range
loop pos range = loop_range
loop count = loop_count
loop xfade = loop_crossfade
len loop xfade = loop_crossfade
fade loop = loop_crossfade
loop tune = loop_tune
shot = one_shot
shot loop = one_shot
file = sample
path = sample
file path = sample
file name = sample
name path = sample
start = offset
shift = offset
file start = offset
file shift = offset
start shift = offset
file start shift = offset
lo file = offset
end = end
file end = end
hi file = end
end shift = end
len = sample_length
file len = sample_length
file range = sample_range
start range = sample_range
tune = tune
pitch tune = tune
tune fine = tune
fine = tune
fine pitch = tune
pitch shift = tune
shift tune = tune
tune ratio = tune
ratio = tune
cents = tune
cents pitch = tune
pitch semis = transpose
semis tune = transpose
key tune = tune
shift key = transpose
coarse = transpose
coarse tune = transpose
coarse pitch = transpose
key coarse = transpose
semis = transpose
level = volume
key level = volume
file level = volume
group level = volume
dB = volume
centibels = volume
ratio level = volume
shift level = volume
att = attenuation
att level = attenuation
pan = pan
pan pos = pan
place = pan group
pan place = pan
level pan = pan
name = label
name group = label
group = group_name
key name = label
vel name = label
rr = seq
pos rr = seq_position
key rr = seq_position
count rr = seq_length
len rr = seq_length loop_length
rr start = loop_start
end rr = loop_end
on rr = loop
hi rr = seq_length
group rr = seq_position
in rr = seq_position
pos count rr = seq_position
lo rand = lorand
hi rand = hirand
in rand = lorand
out rand = hirand
rand range = rand_range
rand = rand_range
trig = trigger
mode trig = trigger
key trig = key trigger
trig on = trigger
rel trig = release_switch
on play = trigger
on start = trigger
midi = key
key num = key
num rr = seq_position
mode play = trigger direction loop
play trig = trigger
dir play = direction
play start = offset
end play = end
play rr = seq_position
lo play = offset
hi play = end
rel on = release_switch
file rel = release_switch
rel = ampeg_release release_switch
poly = polyphony
hi poly = polyphony
count poly = polyphony
poly key = note_polyphony
key poly hi = note_polyphony
choke = choke
choke group = choke
group off = choke
group poly = choke
by off = off_by
by choke = off_by
by off group = off_by
off = off_by
mode off = off_mode
chan = channel
lo chan = lochan
hi chan = hichan
atk = ampeg_attack
att env = ampeg_attack
hold = ampeg_hold
dec = ampeg_decay
sus = ampeg_sustain
level sus = ampeg_sustain
delay = delay
delay env = ampeg_delay
atk filter = fileg_attack
filter hold = fileg_hold
dec filter = fileg_decay
filter sus = fileg_sustain
filter rel = fileg_release
atk pitch = pitcheg_attack
dec pitch = pitcheg_decay
cutoff = cutoff
filter cutoff = cutoff
filter frequency = cutoff
frequency = cutoff
filter = cutoff fil_type
cutoff frequency = cutoff
reso = resonance
filter reso = resonance
filter mode = fil_type
switch = sw_last
key switch = sw_last
last switch = sw_last
key last switch = sw_last
lo switch = sw_lokey
hi switch = sw_hikey
key lo switch = sw_lokey
hi key switch = sw_hikey
default switch = sw_default
default key switch = sw_default
down switch = sw_down
up switch = sw_up
name switch = sw_label
bend = bend_up
bend range = bend_up
bend up = bend_up
bend down = bend_down
hi bend = bend_up
lo bend = bend_down
key track = pitch_keytrack
pitch track = pitch_keytrack
key pitch track = pitch_keytrack
track = pitch_keytrack
level vel = amp_veltrack
track vel = amp_veltrack
level track vel = amp_veltrack
rev = reverse
dir = direction
rev dir = direction
mode dir = direction
bus = output
octave = octave
key lo xfade in = xfin_lokey
key hi xfade in = xfin_hikey
key lo xfade out = xfout_lokey
key hi xfade out = xfout_hikey
lo vel xfade in = xfin_lovel
hi vel xfade in = xfin_hivel
lo vel xfade out = xfout_lovel
hi vel xfade out = xfout_hivel
vel xfade in range = xfin_velocity_range
vel xfade out range = xfout_velocity_range
vel xfade in = xfin_velocity_range
vel xfade out = xfout_velocity_range
key xfade in = xfin_key_range
key xfade out = xfout_key_range
`
    .trim()
    .split('\n')
    .map((line) => {
      const [words, targets] = line.split(' = ') as [string, string];
      return [setKey(words.split(' ')), targets.split(' ')] as const;
    }),
);

/** What is counted in dB. */
const inDecibels: ReadonlySet<InferredTarget> = new Set([
  'volume',
  'attenuation',
  'resonance',
  'ampeg_sustain',
  'amp_veltrack',
]);

const units: Readonly<Record<string, NameUnit>> = {
  dB: 'dB',
  centibels: 'centibels',
  percent: 'percent',
  cents: 'cents',
  semis: 'semitones',
  ratio: 'ratio',
  frames: 'frames',
  s: 's',
  ms: 'ms',
  hertz: 'Hz',
};

/** Words for an end of a range that say the same of keys, velocities and positions. */
const sameEnds: readonly (readonly [from: string, to: string])[] = [
  ['first', 'lo'],
  ['last', 'hi'],
  ['start', 'lo'],
  ['end', 'hi'],
];
const laterEnds: readonly (readonly [from: string, to: string])[] = [
  ['down', 'lo'],
  ['up', 'hi'],
  ['in', 'lo'],
  ['out', 'hi'],
];
/** What may be left out, one after the other, until the rest says something. */
const droppable: readonly (readonly string[])[] = [
  ['weak', 'play'],
  ['midi', 'num'],
  ['on'],
  Object.keys(units),
  ['env', 'level'],
  ['file'],
  ['name', 'count'],
  ['pos', 'mode'],
  ['group', 'range'],
];

function setKey(concepts: readonly string[]): string {
  return [...new Set(concepts)].sort().join(' ');
}

interface Understood {
  concepts: string[];
  certainty: number;
  unknown: number;
}

function understand(words: readonly string[]): Understood {
  const understood: Understood = { concepts: [], certainty: 1, unknown: 0 };
  let skipped = -1;
  for (const [at, word] of words.entries()) {
    if (at === skipped) continue;
    const joined = word.length === 1 ? letteredConcepts(word + (words[at + 1] ?? '')) : undefined;
    if (joined) {
      understood.concepts.push(...joined);
      skipped = at + 1;
      continue;
    }
    if (smallWords.has(word) && isUnitWord(words[at + 1])) continue;
    if (smallWords.has(words[at - 1] ?? '') && sampleWords.has(word)) {
      understood.concepts.push('frames');
      continue;
    }
    if (/^\d+$/.test(word)) {
      understood.concepts.push(word === '1' || word === '0' ? 'lo' : word === '2' ? 'hi' : 'number');
      continue;
    }
    const found = conceptsOf(word);
    if (!found) {
      understood.unknown++;
      continue;
    }
    understood.concepts.push(...found.concepts);
    understood.certainty = Math.min(understood.certainty, found.certainty);
  }
  return understood;
}

/** What stands before a unit: `GainInDecibels`. */
const smallWords: ReadonlySet<string> = new Set(['in', 'en', 'em']);
/** Frames are often called samples. */
const sampleWords: ReadonlySet<string> = new Set(['sample', 'samples']);

function isUnitWord(word: string | undefined): boolean {
  if (word === undefined) return false;
  return (
    sampleWords.has(word) || (conceptsOf(word)?.concepts.every((one) => units[one] !== undefined) ?? false)
  );
}

/**
 * What a place can mean by its name: `own` are the words of the attribute (or of the element whose text it is), `around`
 * those of the child elements that it stands in, from the outermost inwards, and `level` those of the element that
 * carries it. The likeliest first; empty where nothing is known of it.
 */
export function meaningsOf(
  own: readonly string[],
  around: readonly (readonly string[])[],
  level: readonly string[],
): Meaning[] {
  const inner = understand(own);
  if (inner.concepts.includes('ignored') || inner.concepts.includes('lfo')) return [];
  if (own.length > 0 && inner.unknown === own.length && (own[0]?.length !== 1 || around.length > 0))
    return [];
  const all = understand(around.flat());
  const nearest = understand(around.at(-1) ?? []);
  const unit = unitIn(inner.concepts) ?? unitIn(nearest.concepts);
  const found: Meaning[] = [];
  const push = (concepts: readonly string[], certainty: number) => {
    // A ratio of what is not said.
    const times = concepts.join() === 'ratio' ? 0.6 : 1;
    for (const [at, target] of (targetsOf(concepts) ?? []).entries()) {
      if (found.some((one) => one.target === target)) continue;
      if ((unit === 'dB' || unit === 'centibels') && !inDecibels.has(target)) {
        if (at === 0) found.push({ target: 'volume', weight: certainty * 0.6, unit });
        continue;
      }
      found.push({ target, weight: certainty * times * (at === 0 ? 1 : 0.8), unit });
    }
  };
  const doubt = inner.unknown > 0 ? 0.7 : 1;
  if (around.length > 0) {
    if (all.unknown === 0)
      push([...all.concepts, ...inner.concepts], inner.certainty * all.certainty * doubt);
    if (around.length > 1 || all.unknown > 0) {
      push([...nearest.concepts, ...inner.concepts], inner.certainty * nearest.certainty * doubt * 0.98);
    }
  }
  let isTold = false;
  const bare = inner.concepts.filter((one) => !generic.has(one)).length === 0;
  if (bare && level.length > 0) {
    const outer = understand(level);
    const telling = outer.concepts.filter((one) => telled.has(one));
    if (telling.length > 0) push([...telling, ...inner.concepts], inner.certainty * 0.9 * doubt);
    isTold = telling.length > 0;
  }
  const certainty = inner.certainty * (around.length > 0 && !found.length ? 0.9 : 1) * doubt;
  push(inner.concepts, certainty * (bare && (around.length > 0 || isTold) ? 0.7 : 1));
  const [letter] = own;
  if (own.length === 1 && letter?.length === 1 && around.length === 0) {
    for (const target of letters[letter] ?? []) {
      if (!found.some((one) => one.target === target)) found.push({ target, weight: 0.5, unit: undefined });
    }
  }
  // A place beside a level is one between left and right, if it is not one in a file.
  if (inner.concepts.join() === 'pos' && nearest.concepts.some((one) => one === 'key' || one === 'level')) {
    found.push({ target: 'pan', weight: 0.6, unit: undefined });
  }
  return found;
}

/** What a single letter may stand for; it says so little that the values have to tell. */
const letters: Readonly<Record<string, readonly InferredTarget[]>> = {
  l: ['lokey'],
  h: ['hikey'],
  r: ['pitch_keycenter'],
  p: ['pan'],
  t: ['tune'],
  a: ['volume'],
  g: ['volume'],
  n: ['label'],
};

/** Whether words say little without what stands around them: `from`, `max`. */
export function isBare(words: readonly string[]): boolean {
  return understand(words).concepts.every((one) => generic.has(one));
}

/** Words that say little without what stands around them. */
const generic: ReadonlySet<string> = new Set(
  'lo hi first last start end in out range name weak count pos mode on len number num'.split(' '),
);
/** What the name of an element tells of its bare attributes. */
const telled: ReadonlySet<string> = new Set('key vel loop rr rand switch xfade'.split(' '));

function unitIn(concepts: readonly string[]): NameUnit | undefined {
  for (const concept of concepts) if (units[concept]) return units[concept];
  return undefined;
}

function targetsOf(concepts: readonly string[]): readonly InferredTarget[] | undefined {
  let left = new Set(concepts);
  for (const dropped of [[], ...droppable]) {
    for (const one of dropped) if (left.size > 1) left.delete(one);
    // What is left must still say what it is an end of, if anything did.
    if (
      [...left].every((one) => generic.has(one)) &&
      concepts.some((one) => !generic.has(one) && !isUnit(one))
    ) {
      return undefined;
    }
    const found =
      rules.get(setKey([...left])) ??
      rules.get(replaced(left, sameEnds)) ??
      rules.get(replaced(left, [...sameEnds, ...laterEnds]));
    if (found) return found;
    left = new Set(left);
  }
  return undefined;
}

function isUnit(concept: string): boolean {
  return units[concept] !== undefined || concept === 'midi';
}

function replaced(concepts: ReadonlySet<string>, ends: readonly (readonly [string, string])[]): string {
  return setKey([...concepts].map((one) => ends.find(([from]) => from === one)?.[1] ?? one));
}
