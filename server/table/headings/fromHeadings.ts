import { loudnessEnd } from '../../trade/headings/headingStems';
import type { HeadingReading } from '../../trade/headings/headings';
import { languageOf, likelyHeading, readHeading } from '../../trade/headings/headings';
import { turnWord } from '../../trade/headings/turnWord';
import type { ColumnMeaning } from '../../trade/meaning';
import { meaningNames } from '../../trade/meaning';
import type { ColumnContents } from '../columns/columnContents';
import { shareOf } from '../columns/columnContents';
import { shortened } from '../columns/columnReading';
import type { ColumnState } from '../columns/columnState';
import { agrees } from '../columns/likeness';
import type { Explained, Glossary } from './glossary';
import { fitOf } from './headingFit';

const channelWord = /chann?el|kana|canal|^(?:side|seite|c\u00f4t\u00e9|lado|lato|kant|stereo)$/iu;
/** Words that speak of a root key; under others that may mean one, numbers below 0 are a tuning. */
const rootWord = /(?<!\p{L})(?:root|base|grund|unity|original|raíz|raiz|fondam|fundam|grond|kökn|podstaw)/iu;

/** In many languages one word is a level and a layer. */
const levelOrLayer =
  /^\s*(?:levels?|niveaux?|niveles|nivel|n\u00edvel|livell[oi]|taso|niv\u00e5|poziom|\u00farove\u0148|уровень|\u03b5\u03c0\u03af\u03c0\u03b5\u03b4\u03bf|szint|seviye|d\u00fczey)(?!\p{L})/iu;

/** A word for a zone, which may be named or numbered, without a word for a file beside it. */
const zoneWord =
  /^\s*(?:zon[eas]?s?|zones?n?|region(?:e[ns]?)?|regi\u00f3n|regi\u00e3o|r\u00e9gions?|regio's|strefa|z\u00f3na|z\u00f3n|\u0437\u043e\u043d\u0430|\u03b6\u03ce\u03bd\u03b7)\s*$|^(?:\u30be\u30fc\u30f3|\u9818\u57df|\u533a\u57df|\u5340\u57df|\uc874|\uc601\uc5ed)$/iu;

const levels: ReadonlySet<ColumnMeaning> = new Set(['volume', 'attenuation', 'velocity_range', 'dynamics']);

/** A heading whose column may hold what it says. */
interface Doubtful {
  index: number;
  meaning: ColumnMeaning;
}

/** Finds what columns hold from their headings, unless the cells below contradict them. */
export function readFromHeadings(state: ColumnState, glossary: Glossary): void {
  const isShifted = shiftHeadings(state);
  const { columns, contents, chosen } = state;
  const language = languageOf(columns.map(({ heading }) => heading));
  const unsure: Doubtful[] = [];
  const alike: { index: number; heading: HeadingReading }[] = [];
  for (const column of columns) {
    const { index } = column;
    const explained = explain(state, index, glossary);
    const found = explained ?? likelyHeading(column.heading, language);
    if (!found) continue;
    const heading = settledByCells(found, state, index);
    if (heading.likeness !== 'spelling' && !state.labelled.has(index)) state.headingsKnown = true;
    if (levels.has(heading.meaning) && !chosen.has(index)) {
      if (state.isMeasured(index)) continue;
      const measured = heading.unit === undefined ? glossary.measured(column.heading) : undefined;
      if (measured !== undefined) {
        state.leaveMeasured(index, `"${shortened(measured)}"`);
        continue;
      }
    }
    if (chosen.has(index)) {
      column.unit = heading.unit;
      continue;
    }
    if (heading.likeness) {
      // `lauteste` is a word of its own, not one of another language with slips.
      if (heading.likeness === 'spelling' && isLoudness(column.heading, heading.meaning)) continue;
      alike.push({ index, heading });
      continue;
    }
    column.unit = heading.unit;
    const fit = fitOf(heading, contents[index], state.othersHoldFiles(index));
    if (fit === 'yes') {
      if (heading.meaning === 'seq_position' && !turnWord.test(column.heading)) {
        const evidence = 'Its heading may mean that, and its numbers run from 1.';
        state.claim(index, heading.meaning, 0.8, evidence);
        continue;
      }
      state.claim(
        index,
        heading.meaning,
        isShifted ? 0.8 : 0.95,
        isShifted
          ? 'The headings seem to stand one column too far left: read one column further right, they fit the cells.'
          : explained
            ? `"${shortened(explained.text)}" says that it is the ${meaningNames[heading.meaning]}.`
            : `Its heading means "${meaningNames[heading.meaning]}".`,
      );
    } else if (fit === 'unsure') unsure.push({ index, meaning: heading.meaning });
    else {
      column.evidence.push(
        `Its heading means "${meaningNames[heading.meaning]}", but its cells do not fit that. The cells decide.`,
      );
    }
  }
  const isOpen = ({ heading }: (typeof alike)[number]) => heading.orElse !== undefined;
  for (const one of alike.filter((one) => !isOpen(one))) readAlike(state, one.index, one.heading);
  // What the others leave tells what one that is like several headings means.
  for (const one of alike.filter(isOpen)) readOpen(state, one.index, one.heading);
  // A column that holds what its heading says comes before an empty one of the same heading.
  for (const { index, meaning } of unsure) {
    const empty = contents[index].filled === 0;
    const doubt = empty ? 'its cells are empty' : 'only some of its cells fit that';
    state.claim(
      index,
      meaning,
      empty ? 0.7 : 0.6,
      `Its heading means "${meaningNames[meaning]}", but ${doubt}.`,
    );
  }
}

/** The field of SoundFont that refers to a sample, by name where a program shows it. */
const sampleNumber = /^\s*sample ?id\s*$/i;

/** In the north one word is loud and high. */
const loudOrHigh = /^h[o\u00f6\u00f8][gj]/iu;

/** Whether a heading like a known one speaks of the softest or the loudest. */
function isLoudness(heading: string, meaning: ColumnMeaning): boolean {
  return loudnessEnd(heading) !== undefined && !(meaning === 'hikey' && loudOrHigh.test(heading));
}

/** What the text around says of a heading that is not known by itself, where the cells agree. */
function explain(state: ColumnState, index: number, glossary: Glossary): Explained | undefined {
  const { heading } = state.columns[index];
  const explained = glossary.explain(heading);
  if (!explained) return undefined;
  if (explained.isSettled) return explained;
  const own = readHeading(heading);
  if (own && !own.likeness && explained.meaning !== 'deviation') return undefined;
  return fitOf(explained, state.contents[index], state.othersHoldFiles(index)) === 'yes'
    ? explained
    : undefined;
}

/** A heading that is only like a known one counts where the cells agree. */
function readAlike(state: ColumnState, index: number, { meaning, unit, likeness }: HeadingReading): void {
  const column = state.columns[index];
  const name = meaningNames[meaning];
  const isTaken = state.taken.has(meaning) && meaning !== 'comment' && meaning !== 'row_number';
  if (isTaken || !agrees(state, index, meaning)) {
    if (!isTaken)
      column.evidence.push(`Its heading is like one for "${name}", but its cells do not fit that.`);
    return;
  }
  column.unit = unit;
  const isBeginning = likeness === 'beginning';
  // Of a few letters many words can be the beginning.
  const isShort = isBeginning && column.heading.replace(/\W/g, '').length < 4;
  state.claim(
    index,
    meaning,
    (isBeginning && !isShort) || likeness === 'stems' ? 0.95 : 0.8,
    isBeginning
      ? `Its heading is the beginning of one for "${name}", and its cells fit that.`
      : likeness === 'stems'
        ? `Its heading speaks of "${name}", and its cells fit that.`
        : `Its heading is spelt almost like one for "${name}", and its cells fit that.`,
  );
}

/** A heading that is like several counts where the cells agree with one of them that no other column has. */
function readOpen(state: ColumnState, index: number, heading: HeadingReading): void {
  const { meaning, orElse = [] } = heading;
  const left = [meaning, ...orElse].filter((one) => !state.taken.has(one) && agrees(state, index, one));
  const [only] = left;
  if (only && left.length === 1) readAlike(state, index, { ...heading, meaning: only });
}

/** A pitch below 0, or in parts of a key, is no key but a tuning; a release in numbers is the time of an envelope. */
function settledByCells(
  heading: HeadingReading,
  { columns, contents }: ColumnState,
  index: number,
): HeadingReading {
  const isTime =
    heading.unit === 's' || heading.unit === 'ms' || contents[index].bits < contents[index].filled;
  if (heading.meaning === 'trigger' && isTime && shareOf(contents[index], 'number') >= 0.9)
    return { ...heading, meaning: 'release_time' };
  // A fade in a unit of time is that of the envelope, not of velocities.
  const { meaning, unit } = heading;
  if ((meaning === 'fade_in' || meaning === 'fade_out') && (unit === 's' || unit === 'ms'))
    return { ...heading, meaning: meaning === 'fade_in' ? 'attack_time' : 'release_time' };
  // A zone may be named, or be the keys that it takes.
  const areRanges = shareOf(contents[index], 'note-range', 'number-range') >= 0.5;
  if (heading.meaning === 'sample' && areRanges) return { ...heading, meaning: 'key_range' };
  if (heading.meaning === 'sample' && zoneWord.test(columns[index].heading) && areCounted(contents[index]))
    return { ...heading, meaning: 'row_number' };
  // Numbers of samples name none.
  if (sampleNumber.test(columns[index].heading) && shareOf(contents[index], 'number') === 1)
    return { ...heading, meaning: 'row_number' };
  const isLevel = levelOrLayer.test(columns[index].heading) && areLevels(contents[index]);
  if (heading.meaning === 'group' && isLevel)
    return { meaning: 'volume', unit: contents[index].units.has('dB') ? 'dB' : heading.unit };
  // Numbers under a heading of channels count them.
  if (
    heading.meaning === 'pan' &&
    channelWord.test(columns[index].heading) &&
    shareOf(contents[index], 'pan') < 0.5
  )
    return { ...heading, meaning: 'comment' };
  if (heading.meaning !== 'pitch_keycenter' || heading.unit !== undefined) return heading;
  const { negative } = contents[index];
  const isTuning =
    negative > 0 && !rootWord.test(columns[index].heading) && shareOf(contents[index], 'number') >= 0.9;
  return isTuning ? { ...heading, meaning: 'tune' } : heading;
}

/** Whole numbers count zones, and name no files. */
function areCounted({ counts, filled, fractional, negative }: ColumnContents): boolean {
  return counts.number === filled && fractional === 0 && negative === 0;
}

/** Numbers in dB, below 0 or with fractions name no group. */
function areLevels(contents: ColumnContents): boolean {
  if (shareOf(contents, 'number') < 0.9) return false;
  const [unit, ...others] = contents.units.keys();
  if (unit !== undefined) return unit === 'dB' && others.length === 0;
  return contents.negative > 0 || contents.fractional > 0;
}

/**
 * Above a column without a heading of its own, as that of the row numbers, headings may stand one column too far left. Answers
 * whether they do; they are then put right.
 */
function shiftHeadings(state: ColumnState): boolean {
  const { columns, contents, chosen } = state;
  const last = columns.length - 1;
  if (last < 2 || chosen.size > 0 || columns[last]?.heading !== '') return false;
  if (contents[last]?.filled === 0 || columns[0]?.heading === '') return false;
  if (agreement(state, 1) < agreement(state, 0) + 2) return false;
  for (let index = last; index >= 0; index--) {
    const column = columns[index];
    column.heading = columns[index - 1]?.heading ?? '';
    column.headingSpan = columns[index - 1]?.headingSpan;
  }
  return true;
}

/** How many more headings agree with the cells than contradict them, if they stood so many columns to the right. */
function agreement(state: ColumnState, shift: number): number {
  let sum = 0;
  for (const { index, heading } of state.columns) {
    const contents = state.contents[index + shift];
    const said = heading === '' ? undefined : readHeading(heading);
    if (!contents || !said) continue;
    const fit = fitOf(said, contents, state.othersHoldFiles(index + shift));
    sum += fit === 'yes' ? 1 : fit === 'no' ? -1 : 0;
  }
  return sum;
}
