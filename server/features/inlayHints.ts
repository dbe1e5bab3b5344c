import { effectiveValues } from '../model/effectiveValues';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { noteNameOf } from '../model/keys';
import { code } from './hover/sampleText';
import { escaped } from './sampleReport/markdown';

/** A few words shown between the letters of the text. */
export interface InlayText {
  at: number;
  label: string;
  /** What there is to read about it, as Markdown. */
  more?: string;
}

/** Which hints are wanted. */
export interface InlayChoice {
  /** Note names beside key numbers. */
  keyNames: boolean;
  /** What regions inherit, beside their header. */
  effectiveValues: boolean;
}

/** Inherited values that one hint lists; the rest is in what there is to read. */
const mostListed = 6;
const longestValue = 24;

/** Keys that note and octave offset move; see `effectiveValues`. */
const playedKey = /^(?:key|lokey|hikey|pitch_keycenter|sw_.+|xf(?:in|out)_(?:lo|hi)key)$/;

/** The hints between two offsets of the document, in the order of the text. */
export function inlayTexts(
  instrument: Instrument,
  from: number,
  to: number,
  choice: InlayChoice,
): InlayText[] {
  const texts: InlayText[] = [];
  if (!choice.keyNames && !choice.effectiveValues) return texts;
  const { count } = instrument.headers;
  for (let header = Math.max(0, instrument.headerAt(0, from)); header < count; header++) {
    const span = instrument.headerSpan(header);
    if (span.source === 0 && span.start > to) break;
    if (choice.effectiveValues && span.source === 0 && span.end >= from) {
      const inherited = inheritedText(instrument, header);
      if (inherited) texts.push({ at: span.end, ...inherited });
    }
    if (choice.keyNames) addKeyNames(instrument, header, from, to, texts);
  }
  return texts;
}

function addKeyNames(
  instrument: Instrument,
  header: number,
  from: number,
  to: number,
  texts: InlayText[],
): void {
  const end = instrument.endParameter(header);
  for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
    const value = instrument.valueSpan(parameter);
    if (value.source !== 0 || value.end < from || value.end > to) continue;
    const facts = instrument.names.opcode(instrument.name(parameter))?.facts;
    if (facts?.kind !== 'key') continue;
    // A note name needs no hint.
    const key = instrument.number(parameter);
    if (!(Number.isInteger(key) && key >= 0 && key <= 127)) continue;
    const name = noteNameOf(key);
    const { keyOffset } = instrument.control(header);
    if (keyOffset === 0 || !playedKey.test(facts.pattern)) texts.push({ at: value.end, label: name });
    else {
      const moved = Math.max(0, Math.min(127, key + keyOffset));
      texts.push({
        at: value.end,
        label: `${name} → ${noteNameOf(moved)}`,
        more: `Note and octave offset move key ${key} (${name}) by ${keyOffset} to key ${moved} (${noteNameOf(moved)}).`,
      });
    }
  }
}

/** What a region inherits from the headers around it and does not set itself. */
function inheritedText(instrument: Instrument, header: number): Omit<InlayText, 'at'> | undefined {
  if (instrument.kind(header) !== HeaderKind.region) return undefined;
  const inherited = instrument
    .effectiveParameters(header)
    .filter((one) => one.header !== header)
    .map((one) => ({ ...one, text: instrument.names.text(one.name) }));
  if (inherited.length === 0) return undefined;
  const values = effectiveValues(instrument, header);
  const shown = inherited
    .slice(0, mostListed)
    .map(({ text }) => `${text}=${shortened(String(values[text]))}`);
  const more = inherited.length - shown.length;
  return {
    label: shown.join(' ') + (more > 0 ? ` and ${more} more` : ''),
    more: inherited
      .map(({ text, header: from }) => {
        const { source, start } = instrument.headerSpan(from);
        const line = instrument.sources[source]?.positionAt(start).line ?? 1;
        return `${code(`${text}=${values[text]}`)} from ${escaped(instrument.headerName(from))}, line ${line}`;
      })
      .join('\n\n'),
  };
}

function shortened(text: string): string {
  return text.length > longestValue ? `${text.slice(0, longestValue - 1)}…` : text;
}
