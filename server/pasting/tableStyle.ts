import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { resolveOpcode } from '../model/opcodes/resolve';
import { keyWritingOf } from '../model/style/keySpeller';
import type { ZoneSection, ZoneValue } from './tableZones';

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
