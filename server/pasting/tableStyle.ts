import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { keyOfNoteName, noteNameOf } from '../model/keys';
import { resolveOpcode } from '../model/opcodes/resolve';
import type { ZoneSection, ZoneValue } from './tableZones';

/** How a document writes its keys. */
export type KeyWriting = (key: number) => string;

const mostLooks = 2000;

const flatNames: Readonly<Record<string, string>> = { C: 'D', D: 'E', F: 'G', G: 'A', A: 'B' };

/** How keys are written in a document: as most of its own are, as numbers where it has none. */
export function keyWritingOf(document: Instrument): KeyWriting {
  const isKey: (boolean | undefined)[] = [];
  let numbers = 0;
  let names = 0;
  let small = 0;
  let flats = 0;
  let sharps = 0;
  for (let one = 0; one < document.parameters.count && numbers + names < mostLooks; one++) {
    const name = document.name(one);
    isKey[name] ??= document.names.opcode(name)?.facts.kind === 'key';
    if (!isKey[name]) continue;
    const text = document.valueText(one);
    if (!Number.isNaN(document.number(one))) numbers++;
    else if (keyOfNoteName(text) !== undefined) {
      names++;
      if (/^[a-g]/.test(text)) small++;
      if (/^.[b♭]/.test(text)) flats++;
      else if (/^.[#♯]/.test(text)) sharps++;
    }
  }
  if (names <= numbers) return String;
  return (key) => {
    const usual = noteNameOf(key);
    const name = flats > sharps && usual[1] === '#' ? `${flatNames[usual[0]]}b${usual.slice(2)}` : usual;
    return small * 2 > names ? name[0]?.toLowerCase() + name.slice(1) : name;
  };
}

/**
 * Values of a region that need not be written where they are as the open SFZ format has them by default. The root key is
 * not among them: without one, some players take that of the sample file.
 */
const defaults: Readonly<Record<string, readonly number[]>> = {
  lokey: [0],
  hikey: [127],
  // Velocity 0 does not start a note (MIDI 1.0, note on), so 0 and 1 say the same.
  lovel: [0, 1],
  hivel: [127],
  volume: [0],
  pan: [0],
  tune: [0],
  transpose: [0],
  offset: [0],
};

/** Whether a value says the same as nothing, where nothing around it is set. */
export function isDefault(name: string, value: number): boolean {
  return defaults[name]?.includes(value) ?? false;
}

/**
 * Brings the values of a table into a document's style: keys written as the document writes them, and values left out
 * that are as the format has them by default, where no header of the document sets others for its regions. The sections
 * are changed in place.
 */
export function styleSections(sections: readonly ZoneSection[], document: Instrument): void {
  const writing = keyWritingOf(document);
  const passedOn = namesPassedOn(document);
  const isNeeded = ({ name, value }: ZoneValue, hasKey: boolean) =>
    !isDefault(name, Number(value)) ||
    value === '' ||
    passedOn.has(name) ||
    (hasKey && /^(lo|hi)key$/.test(name));
  for (const section of sections) {
    section.values = section.values.filter((one) => isNeeded(one, false));
    for (const region of section.regions) {
      const hasKey = region.values.some(({ name }) => name === 'key');
      region.values = region.values.filter((one) => isNeeded(one, hasKey));
      if (writing === String) continue;
      for (const one of region.values) if (isKeyName(one.name)) one.value = writing(Number(one.value));
    }
  }
}

/** Whether an opcode's value is a key. */
export function isKeyName(name: string): boolean {
  return resolveOpcode(name)?.facts.kind === 'key';
}

/** The canonical names of what headers of a document set for the regions in them. */
function namesPassedOn(document: Instrument): ReadonlySet<string> {
  const names = new Set<string>();
  for (let header = 0; header < document.headers.count; header++) {
    const kind = document.kind(header);
    if (kind !== HeaderKind.global && kind !== HeaderKind.master && kind !== HeaderKind.group) continue;
    for (let one = document.firstParameter(header); one < document.endParameter(header); one++)
      names.add(document.names.text(document.canonicalName(one)));
  }
  if (names.has('key')) for (const name of ['lokey', 'hikey']) names.add(name);
  return names;
}
