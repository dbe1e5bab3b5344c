import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';

/** A controller with the name that the instrument gives it. */
export interface NamedController {
  controller: number;
  label: string;
}

/** The controllers that `label_ccN` names, by their number; the last label of one counts. */
export function namedControllers(instrument: Instrument): NamedController[] {
  const labels = new Map<number, string>();
  for (let header = 0; header < instrument.headers.count; header++) {
    const end = instrument.endParameter(header);
    if (instrument.kind(header) !== HeaderKind.control) continue;
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const digits = /^label_cc(\d+)$/.exec(instrument.names.text(instrument.canonicalName(parameter)))?.[1];
      if (digits !== undefined) labels.set(Number(digits), instrument.valueText(parameter).trim());
    }
  }
  return [...labels]
    .map(([controller, label]) => ({ controller, label }))
    .sort((a, b) => a.controller - b.controller);
}
