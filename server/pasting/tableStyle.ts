import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { resolveOpcode } from '../model/opcodes/resolve';
import type { Steps } from '../model/steps';
import { keyWritingOf } from '../model/style/keySpeller';
import type { GroupedZones } from '../table/zones/groups/sharedValues';
import type { ZoneWriting } from '../table/zones/instrumentOfZones';
import { valueNames } from '../table/zones/zoneList';

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
 * Brings the values of zones into a document's style: keys written as the document writes them, and values left out
 * that are as the format has them by default, where no header of the document sets others for its regions. The zones are
 * changed in place.
 */
export function* styleZones(
  { zones, groups }: GroupedZones,
  document: Instrument,
): Steps<{ grouped: GroupedZones; writing: ZoneWriting | undefined }> {
  const passedOn = namesPassedOn(document);
  for (const [at, name] of valueNames.entries()) {
    yield at / valueNames.length;
    const column = zones.values(name);
    if (!column || passedOn.has(name)) continue;
    const isKeyEnd = name === 'lokey' || name === 'hikey';
    for (let zone = 0; zone < zones.count; zone++) {
      if (!isDefault(name, column.numbers[zone])) continue;
      if (!isKeyEnd || !zones.has('key', zone)) column.cells[zone] = -1;
    }
  }
  const styled = groups.map((group) => ({
    ...group,
    shared: group.shared.filter((name) => zones.has(name, group.zones[0])),
  }));
  const text = keyWritingOf(document);
  const writing = text === String ? undefined : { names: new Set(valueNames.filter(isKeyName)), text };
  return { grouped: { zones, groups: styled }, writing };
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
