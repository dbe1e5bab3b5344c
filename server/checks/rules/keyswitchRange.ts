import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { keyText } from '../../model/wording/rangeWords';
import { parametersNamed, usedName } from '../facts/parameters/parameterUses';
import type { Rule } from '../rule';

/** Finds keyswitches outside the range of keys in which keyswitches are looked for. */
export const keyswitchRange: Rule = {
  code: 'keyswitch-range',
  severity: 'warning',
  finds: 'A keyswitch (sw_last) outside the keys from sw_lokey to sw_hikey, so that it never switches.',
  check(context, report) {
    const low = usedName(context, 'sw_lokey');
    const high = usedName(context, 'sw_hikey');
    const byDefault = usedName(context, 'sw_default');
    if (usedName(context, 'sw_last') < 0 || (low < 0 && high < 0)) return;
    const { instrument } = context;
    const key = (parameter: number, without: number) =>
      parameter < 0 ? without : instrument.keyNumber(parameter);
    const seen = new Set<string>();
    const headers = new Set<number>();
    for (const name of [Parameter.sw_last, low, high]) {
      for (const parameter of parametersNamed(context, name)) {
        headers.add(instrument.headerOfParameter(parameter));
      }
    }
    for (const header of headers) {
      const triple = inForceIn(instrument, header, low, high);
      const [last, from, to] = triple;
      if (last < 0) continue;
      const lowest = key(from, 0);
      const highest = key(to, 127);
      const chosen = instrument.keyNumber(last);
      if (!(lowest <= highest) || !(chosen < lowest || chosen > highest)) continue;
      const id = triple.join(' ');
      if (seen.has(id) || !isInForceSomewhere(instrument, header, triple, low, high)) continue;
      seen.add(id);
      const isFirst = byDefault >= 0 && key(instrument.effective(header, byDefault), Number.NaN) === chosen;
      const what = isFirst
        ? 'so this never sounds again once another keyswitch was pressed'
        : 'so this never sounds';
      report({
        ...instrument.valueSpan(last),
        message: `The keyswitch ${keyText(chosen)} lies outside the keyswitch range, ${keyText(lowest)} to ${keyText(highest)}, ${what}. Widen sw_lokey and sw_hikey, or move the keyswitch.`,
        related: [from, to]
          .filter((end) => end >= 0)
          .map((end) => ({
            ...instrument.valueSpan(end),
            message: `The range ${end === from ? 'starts' : 'ends'} here.`,
          })),
      });
    }
  },
};

function inForceIn(
  instrument: Instrument,
  header: number,
  low: number,
  high: number,
): [number, number, number] {
  return [
    instrument.effective(header, Parameter.sw_last),
    low < 0 ? -1 : instrument.effective(header, low),
    high < 0 ? -1 : instrument.effective(header, high),
  ];
}

/** Whether a region at a header or inside it has these parameters in force. */
function isInForceSomewhere(
  instrument: Instrument,
  header: number,
  triple: readonly number[],
  low: number,
  high: number,
): boolean {
  if (instrument.regionNumber(header) >= 0) return true;
  for (const region of instrument.regions) {
    if (region < header || !isWithin(instrument, region, header)) continue;
    if (inForceIn(instrument, region, low, high).every((parameter, at) => parameter === triple[at]))
      return true;
  }
  return false;
}

function isWithin(instrument: Instrument, region: number, header: number): boolean {
  let at = region;
  while (at > header) at = instrument.parent(at);
  return at === header;
}
