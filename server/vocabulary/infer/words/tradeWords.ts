import { languages } from '../../../trade/languages/languages';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';

/**
 * Words in the names of elements and attributes by what they stand for (common practice of the trade, and terms of
 * MIDI, SoundFont, DLS and the open SFZ format). A word may stand for several things at once: `softest` for the low
 * end of velocities. To know another word, add it here.
 */
const concepts: Readonly<Record<string, string>> = {
  lo: 'lo low lower lowest least min minimum minimal bottom floor from since under lowest beneath lowerbound lowerlimit deepest ground',
  hi: 'hi high higher upper highest most max maximum top ceiling ceil to until till through thru upto upperbound upperlimit',
  first: 'first',
  last: 'last',
  start: 'start begin beginning begins starts onset startpoint entry',
  end: 'end ends stop stops finish endpoint ending exit',
  shift: 'offset skip shift displacement',
  in: 'in',
  out: 'out',
  up: 'up',
  down: 'down',
  len: 'length len size duration dur long',
  count: 'count total of times many steps',
  pos: 'position pos index idx slot place step no nr which',
  range: 'range span extent zone split bounds limits interval stretch reach compass',
  key: 'key keys note notes nt nte ky keyboard keynumber notenumber notename keyno noteno keynum tones tone semitonenumber',
  vel: 'velocity velocities vel velo velos veloc dynamic dynamics dyn nuance nuances dynamik dinamica dynamiek force strength strike hardness touch hit blow intensity dynamics',
  root: 'root rt base basis original orig unity reference ref home centre center tonic fundamental fundament natural nat native recorded rec keycenter keycentre kc unison basenote rootkey rootnote unitynote sampled tuned',
  pitch: 'pitch pitched pitches frequencykey',
  loop: 'circle circles loop loops looped looping lp cycle repeat repeats sustainloop loopy ring',
  file: 'file filename sample samples smp smpl audio wave wav waveform sound recording take clip source src soundfile samplefile wavefile audiofile asset media',
  path: 'path href uri url filepath location loc link pathname filespec fname',
  tune: 'tune tun tuning detune detuning finetune tunecents intonation mistune retune correction adjust',
  fine: 'fine micro',
  coarse: 'coarse transpose transposition trans transposed coarsetune xpose',
  level: 'level lvl lev gain volume vol amplitude amp loudness trim boost gn loud makeup gaindb output',
  att: 'attenuation attenuate atten att pad reduction damping quieter softer cutback',
  pan: 'pan pn panning panorama panpot balance bal stereo azimuth side placement lr leftright',
  mode: 'mode kind type style sort behaviour behavior method how',
  on: 'on an ein aktiv actif active activo attivo enabled enable active activated is has use used uses does switched flag state whether',
  shot: 'shot oneshot singleshot once',
  env: 'envelope env ampenv eg adsr ahdsr contour ampeg',
  atk: 'attack atk attacktime attk',
  hold: 'hold',
  dec: 'decay dcy',
  sus: 'sustain sus sustained',
  rel: 'release rel releasetime rls dieaway fadeaway ringout',
  delay: 'delay wait predelay',
  fade: 'fade',
  cutoff: 'cutoff corner brightness cutofffrequency',
  frequency: 'frequency freq',
  reso: 'resonance reso q emphasis',
  filter: 'filter flt lowpass vcf',
  rr: 'rr robin roundrobin roundrobins round seq sequence alternate alternation turn rotation rotate variation variant variants seqpos alternating robinposition order',
  rand: 'random rand chance probability luck dice lottery rnd odds',
  trig: 'trigger trig triggers triggered event fires fire when started startson playson starter',
  poly: 'polyphony voices poly maxvoices voice voicelimit',
  choke: 'choke chokes exclusive exclusion mutegroup cutgroup exclusiveclass chokegroup hush',
  by: 'by',
  off: 'off cut cuts silence silences silenced muted mutedby cutby offby choked chokedby stopped stoppedby damped dampedby hushed hushedby',
  name: 'name names named entitled entitle titled title label caption called nickname heading designation legend',
  group: 'group grp class bank family articulation layer section set division',
  chan: 'channel chan channels midichannel ch',
  xfade: 'crossfade xfade xf crossfading blend crossover',
  switch: 'switch keyswitch ks keyswitches articulationkey latch selector',
  default: 'default initial',
  bend: 'bend bender pitchbend pitchwheel wheel',
  rev: 'rev reverse reversed backward backwards flipped',
  dir: 'direction dir',
  track:
    'track trk tracking keytrack keytracking follow follows sensitivity sens scaling velocitytracking veltrack',
  fixed:
    'fixed constant ignore ignores unchanging untransposed fest fixe fijo fisso fixo konstant staly pevna',
  octave: 'octave octaves oct',
  bus: 'bus outputbus out',
  ctrl: 'controller cc ctrl control modwheel',
  lfo: 'lfo vibrato tremolo modulation mod depth rate',
  play: 'play playback playing played plays',
  num: 'number num',
  midi: 'midi',
  weak: 'pt pts one after value val amount is at sound region data setting settings parameter param info point point property prop field text body content the a for with time mapping map with numeric absolute',
  ignored:
    'id uuid guid colour color comment comments remark author version date created modified checksum hash md icon image picture x y width height selected visible locked collapsed xmlns schema lang solo revision description tags tag category vendor maker url notes2 order2 copyright format created editor tempo bpm',
  dB: 'db decibel decibels',
  centibels: 'cb centibel centibels',
  millibels: 'millibel millibels',
  percent: 'percent pct pc percentage',
  cents: 'cents cent ct cts centitones hundredths',
  semis: 'semitones semitone semis semi halftones halftone halfsteps halfstep st',
  ratio: 'ratio factor multiplier multiply scale linear lin mult',
  frames: 'frames frame sampleframes framecount smps spl frm',
  s: 'seconds second secs sec s',
  ms: 'ms msec msecs millis milliseconds millisecond',
  hertz: 'hz hertz',
  lofade: 'fadein fadeinlow',
};

/** Whole names that stand for several things at once. */
const joint: Readonly<Record<string, string>> = {
  speed: 'pitch ratio',
  playspeed: 'pitch ratio',
  playbackspeed: 'pitch ratio',
  vitesse: 'pitch ratio',
  geschwindigkeit: 'pitch ratio',
  abspieltempo: 'pitch ratio',
  snelheid: 'pitch ratio',
  softest: 'lo vel',
  quietest: 'lo vel',
  gentlest: 'lo vel',
  weakest: 'lo vel',
  loudest: 'hi vel',
  hardest: 'hi vel',
  strongest: 'hi vel',
  lk: 'lo key',
  kl: 'lo key',
  klo: 'lo key',
  ln: 'lo key',
  nl: 'lo key',
  nlo: 'lo key',
  hk: 'hi key',
  kh: 'hi key',
  khi: 'hi key',
  hn: 'hi key',
  nh: 'hi key',
  nhi: 'hi key',
  lv: 'lo vel',
  vl: 'lo vel',
  vlo: 'lo vel',
  hv: 'hi vel',
  vh: 'hi vel',
  vhi: 'hi vel',
  rk: 'root key',
  rn: 'root key',
  kr: 'root key',
  nr2: 'root key',
  vr: 'vel range',
  ls: 'loop start',
  ltype: 'loop mode',
  lps: 'loop start',
  lst: 'loop start',
  le: 'loop end',
  lpe: 'loop end',
  len2: 'len',
  keyrange: 'key range',
  chromatic: 'pitch track',
  chromatically: 'pitch track',
  chromatisch: 'pitch track',
  chromatique: 'pitch track',
  cromatico: 'pitch track',
  unpitched: 'pitch fixed',
  noterange: 'key range',
  velrange: 'vel range',
  loopmode: 'loop mode',
  pan: 'pan',
  lorand: 'lo rand',
  hirand: 'hi rand',
  k: 'key',
  n: 'key',
  v: 'vel',
  st: 'start',
  en: 'end',
};

/** Words of the zone table room that say the same here; words that are listed above keep their meaning. */
const ofTables: readonly (readonly [part: string, concept: string])[] = [
  ['velocity', 'vel'],
  ['key', 'key'],
  ['root', 'root'],
  ['low', 'lo'],
  ['high', 'hi'],
  ['loop', 'loop'],
  ['range', 'range'],
  ['start', 'start'],
  ['end', 'end'],
  ['file', 'file'],
];
const ofHeadings: Readonly<Partial<Record<ColumnMeaning, string>>> = {
  tune: 'tune',
  transpose: 'coarse',
  volume: 'level',
  attenuation: 'att',
  pan: 'pan',
  loop: 'loop',
  pitch_keycenter: 'root',
  seq_position: 'rr',
  group: 'group',
  comment: 'ignored',
  offset: 'shift',
  sample: 'file',
};

/** Words of other languages that XML names use and zone tables do not. */
const foreign: Readonly<Record<string, string>> = {
  first:
    'primo prima premier premiere primer primero primera primeiro primeira erste erster erstes eerste pierwszy pierwsza forste forsta prvni',
  last: 'ultimo ultima dernier derniere letzte letzter letztes laatste ostatni ostatnia siste sista sidste posledni',
  root: 'proprio propria propre propio propia eigen eigenton own suena suona sonne soa klingt klinkt klinger home heimat',
  lo: 'minimo minima minimale mindest mindestens tiefste laagste najnizszy past oltre ueber oberhalb nad dessous sotto debajo du mini unterste untergrenze kleinste bas',
  hi: 'massimo massima maximo maxima maximale hochstens hoogste najwyzszy dessus sopra encima au maxi oberste obergrenze grosste',
  loop: 'again herhalen herhaling herhaal repetir repeticion ripeti ripetere ripetizione repeter boucler wiederholen wiederholung',
  len: 'lengte durata duracion lange laenge longueur longitud lunghezza comprimento dauer duree duracion durata długość delka langd lengde laengde pituus kesto varighed varighet trvani',
  mode: 'modus art modo typ tipo',
  path: 'pfad chemin ruta percorso caminho',
  name: 'bezeichnung titel nom nombre nome titre titulo titolo naam namn navn nimi nazwa nazev jmeno nev имя название',
  rr: 'reihum rundlauf abwechselnd wechsel tour tours tourniquet rotacion turno turni rotazione giro beurt beurten afwisseling kolej runda stridani',
  atk: 'anstieg attaque ataque attacco einschwingzeit einschwingen',
  hold: 'halten maintien mantener',
  dec: 'abfall abklingen declin chute decaimiento decadimento',
  sus: 'halten haltepegel entretien sostenimiento sostegno',
  rel: 'ausschwingen ausschwingzeit nachklang abklingzeit smorzamento estinzione apagado caida uitklank uitsterftijd dohasinanie efterklang ausklang ausklingen loslassen relachement extinction liberacion rilascio',
  trig: 'ausloser ausloeser declenchement declencheur disparo innesco',
  rev: 'ruckwarts rueckwarts rueckwaerts inverse alenvers inverso',
  dir: 'richtung sens direccion direzione direcao',
  poly: 'stimmen polyphonie polifonia voix voces voci',
  off: 'stumm stummschalten',
  vel: 'tocco toque toucher aanraking sterkte laut lautheit kraft starke fuerza intensidad forza intensita forca intensite force kracht',
  ratio: 'rapport verhaltnis razon rapporto proporcion razao',
  place: 'lage',
  s: 'sek sekunde sekunden sekund sekunder sekundy secondes seconde seconden segundos secondi',
  ms: 'millisekunden millisecondes milliseconden milisegundos millisecondi',
  track:
    'folgt folge folgen verfolgung suivi suivre suit sigue seguir seguimiento segue seguimento inseguimento volgt volgen foljer folj folger folg seuraa sledzi sleduje следует',
};

const lexicon = new Map<string, readonly string[]>();
/** Those that are written as two words, the words joined. */
const pairs = new Set<string>();

function add(word: string, meant: readonly string[]): void {
  const bare = bareWord(word);
  const key = bare.replace(/[^\p{L}\p{N}]/gu, '');
  if (key === '' || lexicon.has(key)) return;
  lexicon.set(key, meant);
  if (/^\S+ \S+$/u.test(bare)) pairs.add(key);
}

for (const [word, meant] of Object.entries(joint)) add(word, meant.split(' '));
for (const list of [concepts, foreign]) {
  for (const [concept, words] of Object.entries(list)) {
    for (const word of words.split(' ')) add(word, [concept]);
  }
}
for (const { parts, phrases } of languages) {
  for (const [part, concept] of ofTables) for (const word of parts[part] ?? []) add(word, [concept]);
  for (const [meaning, words] of Object.entries(phrases) as [ColumnMeaning, readonly string[]][]) {
    const concept = ofHeadings[meaning];
    for (const word of words) {
      if (concept && !word.includes('{') && !word.includes(' ')) add(word, [concept]);
    }
  }
}

/** Words before the least or the greatest of the values meant. */
const ofEnds = [
  ['from', 'lo'],
  ['above', 'lo'],
  ['upTo', 'hi'],
] as const;
const smallWords: ReadonlySet<string> = new Set(languages.flatMap(({ fillers }) => fillers.map(bareWord)));
for (const { ends } of languages) {
  for (const [end, concept] of ofEnds) {
    for (const word of ends[end] ?? [])
      if (/^\p{L}+$/u.test(word) && !smallWords.has(bareWord(word))) add(word, [concept]);
  }
}

/** What two words in lower case stand for that are listed together, as `en az`; `undefined` for others. */
export function pairConcepts(word: string, next: string): readonly string[] | undefined {
  return pairs.has(word + next) ? lexicon.get(word + next) : undefined;
}

/** Short words that may be a part of a longer one without a sign between. */
const shortParts: ReadonlySet<string> = new Set('lo hi rr kc nt to ms db cb of by on'.split(' '));
const longestGlued = 40;
const remembered = new Map<string, Concepts | undefined>();
const mostRemembered = 4000;

/** What a word stands for, and how sure that is. */
export interface Concepts {
  concepts: readonly string[];
  certainty: number;
}

/**
 * What a word in lower case stands for: as it is listed, as words in one (`lokey`), or as the beginning of a listed word
 * (`transp`). `undefined` for other words.
 */
export function conceptsOf(word: string): Concepts | undefined {
  if (remembered.has(word)) return remembered.get(word);
  const found = lookUp(word);
  if (remembered.size >= mostRemembered) remembered.clear();
  remembered.set(word, found);
  return found;
}

function lookUp(word: string): Concepts | undefined {
  const listed = lexicon.get(word) ?? letteredConcepts(word);
  if (listed) return { concepts: listed, certainty: word.length > 1 ? 1 : 0.8 };
  if (word.length < 4 || word.length > longestGlued) return undefined;
  const parts = glued(word);
  if (parts) return { concepts: parts.flatMap((part) => lexicon.get(part) as string[]), certainty: 0.95 };
  if (word.endsWith('s')) {
    const single = lexicon.get(word.slice(0, -1));
    if (single) return { concepts: single, certainty: 0.95 };
  }
  const unit = tuningUnit.exec(word)?.[1];
  if (unit !== undefined) return { concepts: lexicon.get(unit) ?? [], certainty: 0.75 };
  let meant: readonly string[] | undefined;
  for (const [longer, one] of lexicon) {
    if (longer.length < 6 || !longer.startsWith(word)) continue;
    if (meant && meant.join() !== one.join()) return undefined;
    meant = one;
  }
  return meant && { concepts: meant, certainty: 0.85 };
}

/** A unit of tuning behind a word that says nothing by itself: `driftcents`. */
const tuningUnit = /^(?!(?:cres|des|adoles)cents)\p{L}{3,}(cents|semitones|halftones)$/u;

/** What a letter for what it is about says before an end or a kind of it: `vmin`, `kTo`, `lstart`; `undefined` for other words. */
export function letteredConcepts(word: string): readonly string[] | undefined {
  const about = lettersBefore[word[0]];
  const rest = about && lexicon.get(word.slice(1));
  if (!about || word.length < 3 || rest?.length !== 1) return undefined;
  return about.ends.includes(rest[0]) ? [about.concept, rest[0]] : undefined;
}

const lettersBefore: Readonly<Record<string, { concept: string; ends: readonly string[] }>> = {
  k: { concept: 'key', ends: ['lo', 'hi', 'range'] },
  n: { concept: 'key', ends: ['lo', 'hi', 'range'] },
  v: { concept: 'vel', ends: ['lo', 'hi', 'range'] },
  l: { concept: 'loop', ends: ['start', 'end', 'mode', 'len'] },
};

/** The fewest listed words that a word is made of. */
function glued(word: string): readonly string[] | undefined {
  const best: (readonly string[] | undefined)[] = [[]];
  for (let end = 1; end <= word.length; end++) {
    for (let start = Math.max(0, end - 16); start < end; start++) {
      const before = best[start];
      if (!before || before.length >= 4) continue;
      const part = word.slice(start, end);
      if (part.length < 3 && !shortParts.has(part)) continue;
      if (!lexicon.has(part)) continue;
      const shortest = best[end];
      if (!shortest || before.length + 1 < shortest.length) best[end] = [...before, part];
    }
  }
  const parts = best[word.length];
  return parts && parts.length > 1 ? parts : undefined;
}
