import { HeaderKind } from '../../model/headerKinds';
import { keysOff } from '../../model/inForce/headerRanges';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { joinPath, nameOf } from '../../model/paths';
import type { SampleState } from '../../model/samples';
import { counted } from '../../model/wording/counted';
import { keysText, keyText } from '../../model/wording/rangeWords';
import { headerSentence } from '../headerText';
import { opcodeMarkdown } from '../opcodeText';
import type { PlayedByLink, ReadDocument } from '../readDocument';
import { escaped } from '../sampleReport/markdown';
import { playedPart, playedPartText } from './playedPart';
import { code, generatorMarkdown, sampleMarkdown } from './sampleText';
import { pictureMarkdown, waveformPicture } from './waveformPicture';

/** What is said of a place in a document: Markdown, and the stretch of text that it is about. */
export interface HoverText {
  start: number;
  end: number;
  markdown: string;
}

/** What there is to say of what stands at an offset; `undefined` where there is nothing. Sample files are looked into. */
export async function hoverAt(document: ReadDocument, offset: number): Promise<HoverText | undefined> {
  const { instrument, notation } = document;
  const place = notation.placeAt(instrument, offset);
  switch (place.kind) {
    case 'header':
      if (place.header < 0) return undefined;
      return { start: place.start, end: place.end, markdown: headerMarkdown(document, place.header) };
    case 'name':
      return place.parameter < 0
        ? undefined
        : { ...place, markdown: parameterMarkdown(document, place.header, place.parameter) };
    case 'value': {
      const { start, end, header, parameter } = place;
      if (parameter < 0) return undefined;
      const about = parameterMarkdown(document, header, parameter);
      if (instrument.canonicalName(parameter) !== Parameter.sample) return { start, end, markdown: about };
      const sample = await sampleParameterMarkdown(document, header, parameter);
      const plays = playedRegionLinks(document, header, parameter);
      return { start, end, markdown: [sample, ...plays].join('\n\n') };
    }
    case 'variable': {
      const definition = instrument.directives.findLast(
        ({ kind, name, source, start }) =>
          kind === 'define' && name === place.name && (source !== 0 || start <= offset),
      );
      if (!definition) return undefined;
      return { ...place, markdown: `${code(place.name)} stands for ${code(definition.value)}` };
    }
    default:
      return undefined;
  }
}

function headerMarkdown(document: ReadDocument, header: number): string {
  const { instrument } = document;
  const kind = instrument.kind(header);
  const lines = [nameMarkdown(instrument.headerName(header)), headerSentence(kind)];
  const isOuter = kind === HeaderKind.global || kind === HeaderKind.master || kind === HeaderKind.group;
  const regions =
    kind === HeaderKind.region
      ? [header]
      : isOuter
        ? [...instrument.regions].filter((region) => isWithin(instrument, region, header))
        : [];
  if (isOuter && regions.length === 0) lines.push('It holds no region.');
  if (regions.length > 0) {
    const span = spanText(instrument, regions);
    lines.push(isOuter ? `${counted(regions.length, 'region')}: ${span}` : span);
  }
  if (kind === HeaderKind.region) {
    const sample = instrument.samplePath(header);
    lines.push(
      sample === undefined
        ? 'No sample is set.'
        : `Sample ${code(nameOf(sample))}, root ${keyText(instrument.rootKey(header))}`,
      ...playLinks(document, header, ['region', 'sample']),
    );
  }
  return lines.join('\n\n');
}

const playWords: Readonly<Record<PlayedByLink, string>> = { region: 'Play region', sample: 'Play sample' };

/** Links that play a region of the document, or its sample alone, where something plays them: a line, or none. */
function playLinks(
  { instrument, playLink }: ReadDocument,
  region: number,
  whats: readonly PlayedByLink[],
): string[] {
  const span = instrument.bodySpan(region);
  if (!playLink || span.source !== 0 || instrument.samplePath(region) === undefined) return [];
  const { start } = instrument.headerSpan(region);
  const links = whats.flatMap((what) => {
    const target = playLink(what, { start: start + 1, end: start + 1 });
    return target === undefined ? [] : [`[${playWords[what]}](<${target}>)`];
  });
  return links.length === 0 ? [] : [links.join(' · ')];
}

/** Links that play the first region that a sample is in force in: the sample alone, and the region where it says it itself. */
function playedRegionLinks(document: ReadDocument, header: number, parameter: number): string[] {
  const { instrument } = document;
  const region = instrument.regions.find((one) => instrument.effective(one, Parameter.sample) === parameter);
  if (region === undefined) return [];
  return playLinks(document, region, region === header ? ['sample', 'region'] : ['sample']);
}

function isWithin(instrument: Instrument, region: number, header: number): boolean {
  let at = instrument.parent(region);
  while (at > header) at = instrument.parent(at);
  return at === header;
}

function spanText(instrument: Instrument, regions: readonly number[]): string {
  let lowKey = 128;
  let highKey = -1;
  let lowVelocity = 128;
  let highVelocity = 0;
  for (const region of regions) {
    const low = instrument.lowKey[region];
    const high = instrument.highKey[region];
    if (low !== keysOff && high !== keysOff) {
      lowKey = Math.min(lowKey, low);
      highKey = Math.max(highKey, high);
    }
    lowVelocity = Math.min(lowVelocity, Math.max(1, instrument.lowVelocity[region]));
    highVelocity = Math.max(highVelocity, instrument.highVelocity[region]);
  }
  const keys = highKey < 0 ? 'no keys' : keysText(lowKey, highKey);
  return `${keys}, ${lowVelocity === highVelocity ? `velocity ${lowVelocity}` : `velocities ${lowVelocity} to ${highVelocity}`}`;
}

function parameterMarkdown(document: ReadDocument, header: number, parameter: number): string {
  const { instrument } = document;
  const opcode = instrument.names.opcode(instrument.name(parameter));
  const name = instrument.names.text(instrument.name(parameter));
  const canonical = instrument.names.text(instrument.canonicalName(parameter));
  const title =
    canonical === name ? nameMarkdown(name) : `${nameMarkdown(name)}, the same as ${nameMarkdown(canonical)}`;
  const lines = [title];
  if (opcode) lines.push(opcodeMarkdown(opcode.facts));
  else lines.push('The format does not know this opcode.');
  if (header >= 0) lines.push(...inForceLines(document, header, parameter));
  return lines.join('\n\n');
}

/** A name in bold; one with signs that Markdown could take for its own as code. */
function nameMarkdown(name: string): string {
  return /^\w+$/.test(name) ? `**${name}**` : code(name);
}

/** The value, where it holds, and what it takes the place of. */
function inForceLines(document: ReadDocument, header: number, parameter: number): string[] {
  const { instrument } = document;
  const canonical = instrument.canonicalName(parameter);
  const opcode = instrument.names.opcode(instrument.name(parameter));
  const lines = [`Here: ${shownValue(instrument, parameter)}`];
  const own = instrument.effective(header, canonical);
  if (own !== parameter && own >= 0) {
    lines.push(
      `Replaced by ${shownValue(instrument, own)} from ${placeText(document, own)}, which is written later.`,
    );
    return lines;
  }
  const kind = instrument.kind(header);
  if (kind !== HeaderKind.region && kind <= HeaderKind.group && kind !== HeaderKind.control) {
    const within = [...instrument.regions].filter((region) => isWithin(instrument, region, header));
    const count = within.filter((region) => instrument.effective(region, canonical) === parameter).length;
    lines.push(`In force in ${count} of ${counted(within.length, 'region')}.`);
  }
  const parent = instrument.parent(header);
  const outer = parent < 0 ? -1 : instrument.effective(parent, canonical);
  if (outer >= 0)
    lines.push(`Overrides ${shownValue(instrument, outer)} from ${placeText(document, outer)}.`);
  else if (opcode?.facts.defaultText !== undefined && canonical !== Parameter.sample)
    lines.push(`Without it: ${code(opcode.facts.defaultText)}, the default.`);
  return lines;
}

/** Where a parameter stands, in words; a link where the document can be opened there. */
function placeText({ instrument, linkTo }: ReadDocument, parameter: number): string {
  const header = instrument.headerOfParameter(parameter);
  const { source, start } = instrument.nameSpan(parameter);
  const at = instrument.sources[source];
  const line = at?.positionAt(start).line ?? 1;
  const file = source === 0 || !at ? '' : ` of ${escaped(nameOf(at.path))}`;
  const words = `the ${escaped(instrument.headerName(header)) || 'text before any header'} in line ${line}${file}`;
  const target = linkTo?.(source, line);
  return target === undefined ? words : `[${words}](<${target}>)`;
}

/** A value as code; a key with its other spelling. */
function shownValue(instrument: Instrument, parameter: number): string {
  const text = instrument.valueText(parameter);
  const opcode = instrument.names.opcode(instrument.name(parameter));
  if (opcode?.facts.kind !== 'key') return code(text);
  const key = instrument.keyNumber(parameter);
  if (!(key >= 0 && key <= 127)) return code(text);
  const { keyOffset } = instrument.control(instrument.headerOfParameter(parameter));
  const shifted =
    keyOffset === 0
      ? ''
      : `, shifted by ${keyOffset} to ${keyText(Math.max(0, Math.min(127, key + keyOffset)))}`;
  return `${code(text)}, key ${keyText(key)}${shifted}`;
}

async function sampleParameterMarkdown(
  document: ReadDocument,
  header: number,
  parameter: number,
): Promise<string> {
  const { instrument, folder, samples } = document;
  const value = instrument.valueText(parameter);
  if (value.startsWith('*')) return generatorMarkdown(value);
  const { defaultPath } = instrument.control(header);
  const path = (defaultPath + value).replaceAll('\\', '/');
  if (folder === undefined) return `${code(path)}\n\nSave the document to look up its samples.`;
  const state = await samples.fetchState(folder, path);
  const nearest = state.kind === 'missing' ? samples.lookup(folder).nearest(path, 3) : [];
  const markdown = sampleMarkdown(path, state, nearest, samples.glance(folder, path));
  const picture = await waveformMarkdown(document, header, path, state);
  return picture === undefined ? markdown : `${markdown}\n\n${picture}`;
}

/** A picture of what a region plays of its sample, where its audio can be read. */
async function waveformMarkdown(
  { instrument, folder, outline }: ReadDocument,
  header: number,
  path: string,
  state: SampleState,
): Promise<string | undefined> {
  if (!outline || folder === undefined || (state.kind !== 'file' && state.kind !== 'otherCase'))
    return undefined;
  const { reading } = state;
  if (reading?.kind !== 'facts') return undefined;
  const found = await outline(joinPath(folder, state.kind === 'file' ? path : state.actual));
  if (!found) return undefined;
  const played = playedPart(instrument, header, reading.facts);
  const words = playedPartText(played);
  return `${pictureMarkdown(waveformPicture(found, played), words)}\n\n${words}`;
}
