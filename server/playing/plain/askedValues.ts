import type { Instrument } from '../../model/instrument';

/** What the values in force in a region are asked, by canonical name. */
export interface AskedValues {
  /** The parameter of a name, or −1. */
  parameter(name: string): number;
  has(name: string): boolean;
  /** The number of a name, or what holds where it is not set or no number. */
  number(name: string, without: number): number;
  /** The key of a name; NaN where it is not set. */
  key(name: string): number;
  /** The text of a name in small letters; `undefined` where it is not set. */
  word(name: string): string | undefined;
  /** The names that match, with what their groups caught. */
  matching(pattern: RegExp): { name: string; found: RegExpExecArray }[];
}

/** The values in force in a region, without those that are passed over. */
export function askedValues(
  instrument: Instrument,
  region: number,
  passesOver: (name: string) => boolean,
): AskedValues {
  const parameters = new Map<string, number>();
  for (const { name: id, parameter } of instrument.effectiveParameters(region)) {
    const name = instrument.names.text(id);
    if (!passesOver(name)) parameters.set(name, parameter);
  }
  const parameter = (name: string) => parameters.get(name) ?? -1;
  return {
    parameter,
    has: (name) => parameters.has(name),
    number(name, without) {
      const value = parameter(name) < 0 ? Number.NaN : instrument.number(parameter(name));
      return Number.isNaN(value) ? without : value;
    },
    key: (name) => (parameter(name) < 0 ? Number.NaN : instrument.keyNumber(parameter(name))),
    word: (name) =>
      parameter(name) < 0 ? undefined : instrument.valueText(parameter(name)).trim().toLowerCase(),
    matching: (pattern) =>
      [...parameters.keys()].flatMap((name) => {
        const found = pattern.exec(name);
        return found ? [{ name, found }] : [];
      }),
  };
}
