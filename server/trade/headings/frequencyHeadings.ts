import { bareWord } from '../languages/spelling';
import { unitInHeading } from './headings';

/** Stems of words for a frequency in the languages of the trade, without accents. */
const frequency =
  /(?<!\p{L})(?:(?:grund|basis|grond|perus|alap|eigen|root|base)?(?:freq|frequ|frecu|frekv|frekw)|f0(?!\p{L})|taajuu|perustaajuu|sagedus|gyakoris|frekans|rezgesszam|schwingung|частот|συχνοτ)|周波数|频率|頻率|주파수/u;
/** Stems of words for what a sample sounds at by itself: its root, its base. */
const ofRoot =
  /(?<!\p{L})(?:root|bas|fundament|fondament|grund|grond|pitch|original|notes?(?!\p{L})|nota|ton|key|f0(?!\p{L})|tun|natural|recorded|sound|nominal|perus|savel|alap|hang|temel|perde|podstaw|zaklad|dzwiek|основн|базов|тон|нот|βασικ|τον|θεμελι)|基|根|原|音|기준|기본|근음/u;
/** Stems of words for what else has a frequency: filters, slow oscillators, clocks and rates. */
const ofOthers =
  /(?<!\p{L})(?:cut|filt|corte|taglio|coupure|grens|grenz|eckfreq|knee|cross|lfo|vib|trem|chorus|reson|rezon|risonan|rate|sampl|sampel|abtast|campionam|echant|muestr|amostr|bemonst|naytteen|probkow|vzork|dis[ck]ret|mintav|ornekle|eq|equal|band|shelf|notch|low ?pass|high ?pass|lp|hp|lpf|hpf|bpf|tiefpass|hochpass|laagdoor|hoogdoor|clock|nyquist|срез|фильтр|дискрет|выбор|φιλτρ|δειγμ)|采样|取樣|取样|サンプリング|フィルタ|カットオフ|滤波|濾波|표본|샘플|필터/u;

/**
 * What a heading of frequencies counts: those of `root` keys by a word, or some that may be them, by a word for a frequency or a unit
 * alone. `undefined` for headings of other things, and of the frequencies of filters and the like.
 */
export function frequencyHeading(heading: string): 'root' | 'open' | undefined {
  const words = bareWord(heading).replace(/[_-]/gu, ' ');
  const unit = unitInHeading(heading);
  const isCounted = unit === 'Hz' || unit === 'kHz';
  if ((!isCounted && !frequency.test(words)) || speaksOfOtherFrequency(heading)) return undefined;
  return ofRoot.test(words) ? 'root' : 'open';
}

/** Whether a heading speaks of the frequency of a filter, a slow oscillator or a rate. */
export function speaksOfOtherFrequency(heading: string): boolean {
  return ofOthers.test(bareWord(heading).replace(/[_-]/gu, ' '));
}

/** Stems of words for filters and slow oscillators alone. */
const ofFilters =
  /(?<!\p{L})(?:cut[ -]?off|filt|corte|taglio|coupure|grens|grenz|eckfreq|lfo|vibr|tremol|chorus|equal|low[ -]?pass|high[ -]?pass|band[ -]?pass|lpf|hpf|bpf|tiefpass|hochpass|bandpass|laagdoor|hoogdoor|passe-|pasa|passa|срез|фильтр|φιλτρ)|フィルタ|カットオフ|滤波|濾波|필터/u;

/** Whether a sentence or title speaks of filters or slow oscillators, so that frequencies may be theirs. */
export function speaksOfFilters(text: string): boolean {
  return ofFilters.test(bareWord(text));
}
