import type { Fix } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { keyOfNoteName } from '../../model/keys';
import type { OpcodeFacts } from '../../model/opcodes/opcode';
import type { ValueFault } from '../../model/opcodes/values';
import { numberIn, valueFault } from '../../model/opcodes/values';
import { nearestWords } from '../../model/text/nearest';
import { counted } from '../../model/wording/counted';
import { listText } from '../../model/wording/listText';
import { valueFix } from '../facts/parameters/parameterFixes';
import { parameterSurveyOf } from '../facts/parameters/parameterSurvey';
import type { PastBound } from '../facts/parameters/pastBound';
import { isGainBesideVolume, pastBound } from '../facts/parameters/pastBound';
import type { CheckContext, Report, Rule } from '../rule';

/** Finds values of the wrong type, options that do not exist, and numbers past the documented bounds (information). */
export const opcodeValue: Rule = {
  code: 'opcode-value',
  severity: 'error',
  finds:
    'A value of the wrong type, or a word that the opcode does not take. A value past the documented bounds is information, and a warning where it could hurt the ears.',
  check(context, report) {
    const { instrument } = context;
    const past = new Map<string, Past>();
    for (const parameter of parameterSurveyOf(instrument).values) {
      checkText(context, parameter, report, past);
    }
    for (const one of past.values()) reportPast(context, one, report);
  },
};

/** The values of one opcode in one file that go past one documented bound. */
interface Past {
  facts: OpcodeFacts;
  fault: Extract<ValueFault, { bound: number }>;
  /** The one that goes furthest past it. */
  parameter: number;
  value: number;
  /** The volume in dB that is in force beside a gain; 0 for other opcodes. */
  volume: number;
  count: number;
}

function checkText(context: CheckContext, parameter: number, report: Report, past: Map<string, Past>): void {
  const { instrument } = context;
  const facts = instrument.names.opcode(instrument.name(parameter))?.facts;
  if (!facts) return;
  const text = instrument.valueText(parameter);
  if (facts.kind === 'key' && keyOfNoteName(text) !== undefined) return;
  const fault = valueFault(facts, text);
  if (!fault || /\$\w/.test(text)) return;
  if (facts.options.includes(text.toLowerCase())) return;
  if (isPercentage(context, parameter, facts)) return;
  if (fault.kind === 'below' || fault.kind === 'above') {
    gather(instrument, parameter, facts, fault, past);
    return;
  }
  const name = instrument.names.text(instrument.name(parameter));
  report(() => ({
    ...(text.trim() === '' ? instrument.nameSpan(parameter) : instrument.valueSpan(parameter)),
    message: messageOf(fault, name, shorten(text), facts),
    fixes: () => fixesOf(context, parameter, fault, text, facts),
  }));
}

function gather(
  instrument: Instrument,
  parameter: number,
  facts: OpcodeFacts,
  fault: Past['fault'],
  past: Map<string, Past>,
): void {
  const { source } = instrument.valueSpan(parameter);
  const key = `${source} ${fault.kind} ${instrument.name(parameter)}`;
  const value = numberIn(instrument.valueText(parameter).trim()) ?? fault.bound;
  const volume = isGainBesideVolume(facts)
    ? greatestVolume(instrument, instrument.headerOfParameter(parameter))
    : 0;
  const known = past.get(key);
  if (!known) {
    past.set(key, { facts, fault, parameter, value, volume, count: 1 });
    return;
  }
  known.count++;
  const side = fault.kind === 'above' ? 1 : -1;
  if (side * (value + volume) <= side * (known.value + known.volume)) return;
  known.parameter = parameter;
  known.value = value;
  known.volume = volume;
}

/** The greatest volume in dB in force in a header or in the regions inside it. */
function greatestVolume(instrument: Instrument, header: number): number {
  const name = instrument.names.canonical(instrument.names.idOf('volume'));
  const volumeIn = (one: number) => {
    const parameter = instrument.effective(one, name);
    return parameter < 0 ? 0 : instrument.number(parameter) || 0;
  };
  let greatest: number | undefined;
  for (const region of instrument.regions) {
    let outer = region;
    while (outer >= 0 && outer !== header) outer = instrument.parent(outer);
    if (outer === header) greatest = Math.max(greatest ?? Number.NEGATIVE_INFINITY, volumeIn(region));
  }
  return greatest ?? volumeIn(header);
}

/** One finding for all values of an opcode past a bound, at the one that goes furthest. */
function reportPast(
  context: CheckContext,
  { facts, fault, parameter, value, volume, count }: Past,
  report: Report,
): void {
  const { instrument } = context;
  const text = instrument.valueText(parameter);
  const written = `${instrument.names.text(instrument.name(parameter))}=${shorten(text)}`;
  const more =
    count === 1
      ? ''
      : ` ${counted(count - 1, 'more value in this file is', 'more values in this file are')} past it.`;
  const judged = fault.kind === 'above' ? pastBound(facts, value, fault.bound, volume) : undefined;
  report(() => ({
    ...instrument.valueSpan(parameter),
    message: pastText(written, more, fault, judged, facts),
    severity: judged?.mayHurt ? ('warning' as const) : ('information' as const),
    fixes: () => fixesOf(context, parameter, fault, text, facts),
  }));
}

function pastText(
  written: string,
  more: string,
  { kind, bound }: Past['fault'],
  judged: PastBound | undefined,
  { pattern }: OpcodeFacts,
): string {
  const documented = `${bound}, the ${kind === 'below' ? 'lowest' : 'highest'} documented value`;
  const past = `${written} is ${kind} ${documented}.${more}`;
  if (judged?.mayHurt)
    return `${written} is ${judged.distance} above ${documented}; it may be painfully loud.${more} Turn the sound down before you play it, then lower the value.`;
  if (judged?.isUsual) return `${past} Most players take it. Lower it if the sound distorts.`;
  return `${past} ${pattern === 'tune' ? 'Most players take it. For whole semitones use transpose.' : `Players differ in what they do with it. Use ${bound} to be safe.`}`;
}

/** Where `offset_mode=percent` is in force, an offset is no count of frames. */
function isPercentage({ instrument }: CheckContext, parameter: number, facts: OpcodeFacts): boolean {
  if (!facts.pattern.startsWith('offset')) return false;
  const mode = instrument.effective(
    instrument.headerOfParameter(parameter),
    instrument.names.canonical(instrument.names.idOf('offset_mode')),
  );
  return mode >= 0 && instrument.valueText(mode).toLowerCase() === 'percent';
}

/** Options that are all offered where none is spelt like the value. */
const fewOptions = 5;

function messageOf(
  fault: Exclude<ValueFault, { bound: number }>,
  name: string,
  text: string,
  facts: OpcodeFacts,
): string {
  switch (fault.kind) {
    case 'empty':
      return `${name} has no value. Give it ${wantedOf(facts)} or remove it.`;
    case 'number-expected':
      return `"${text}" is not a number. ${name} takes ${wantedOf(facts)}, without a unit.`;
    case 'whole-expected':
      return `${name} takes ${wantedOf(facts)}; "${text}" has a fraction.`;
    case 'key-expected':
      return `"${text}" is not a key. ${name} takes ${wantedOf(facts)}.`;
    case 'option-expected':
      return `"${text}" is not a value of ${name}. It takes ${wantedOf(facts)}.`;
  }
}

function wantedOf(facts: OpcodeFacts): string {
  switch (facts.kind) {
    case 'key':
      return 'a key number from 0 to 127 or a note name such as c4 (middle C, 60)';
    case 'whole':
      return 'a whole number';
    case 'option':
      return facts.options.length > 12
        ? `${facts.options.slice(0, 12).join(', ')} or another documented word`
        : listText(facts.options, 'or');
    default:
      return 'a number';
  }
}

function fixesOf(
  context: CheckContext,
  parameter: number,
  fault: ValueFault,
  text: string,
  facts: OpcodeFacts,
): Fix[] {
  const to = (value: string) => valueFix(context, parameter, value, `Change to ${value}`, false);
  switch (fault.kind) {
    case 'empty':
      return [];
    case 'option-expected': {
      const near = nearestWords(text, facts.options, 3);
      return (near.length === 0 && facts.options.length <= fewOptions ? facts.options : near).flatMap(to);
    }
    case 'below':
    case 'above':
      return to(String(fault.bound));
    case 'whole-expected':
      return to(String(Math.round(numberIn(text.trim()) ?? 0)));
    case 'number-expected':
    case 'key-expected': {
      // A comma for the decimal point, or a unit behind the number.
      const start = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)/.exec(text.trim())?.[0].replace(',', '.');
      return start !== undefined && valueFault(facts, start) === undefined ? to(start) : [];
    }
  }
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
