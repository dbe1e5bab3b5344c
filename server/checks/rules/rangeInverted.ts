import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { ParameterNames } from '../../model/parameterNames';
import { Parameter } from '../../model/parameterNames';
import { fixOfParts, valueEdits } from '../facts/parameters/parameterFixes';
import { parameterSurveyOf } from '../facts/parameters/parameterSurvey';
import { rangeNamesOf } from '../facts/parameters/rangeNames';
import type { Rule } from '../rule';

/** Finds ranges whose low end is above their high end. */
export const rangeInverted: Rule = {
  code: 'range-inverted',
  severity: 'error',
  finds: 'A range of keys, velocities, controllers or another condition whose low end is above its high end.',
  check(context, report) {
    const { instrument } = context;
    const { low: lows, high: highs } = rangeNamesOf(instrument.names);
    const { rangeEnds, rangeHeaders } = parameterSurveyOf(instrument);
    const seen = new Set<number>();
    for (let at = 0; at < rangeEnds.length; at++) {
      const header = rangeHeaders[at];
      const name = instrument.name(rangeEnds[at]);
      const lowName = lows[name];
      const low = instrument.effective(header, lowName);
      const high = instrument.effective(header, highs[name]);
      // Stryker disable next-line ConditionalExpression,LogicalOperator: only sooner; what is not set is above nothing, nor is a value above itself
      if (low < 0 || high < 0 || low === high) continue;
      const lowValue = instrument.keyNumber(low);
      const highValue = instrument.keyNumber(high);
      // Below 0 a range is switched off, but for pitch bend.
      if (!(lowValue > highValue) || (highValue < 0 && lowName !== bendOf(instrument.names))) continue;
      // Stryker disable next-line ArithmeticOperator: a number for each pair in these ways too
      const pair = low * 2 ** 26 + high;
      if (seen.has(pair) || !isInForce(instrument, header, lowName, low, highs[name], high)) continue;
      seen.add(pair);
      const place = Math.max(low, high);
      const other = Math.min(low, high);
      const text = (parameter: number) =>
        `${instrument.names.text(instrument.name(parameter))}=${instrument.valueText(parameter)}`;
      report({
        ...instrument.valueSpan(place),
        message: `${text(low)} is above ${text(high)}${resultText(instrument.names.text(lowName))}. Swap the two values.`,
        related: [
          { ...instrument.valueSpan(other), message: `The other end of the range is ${text(other)}.` },
        ],
        fixes: () => {
          if ([low, high].some((one) => instrument.canonicalName(one) === Parameter.key)) return [];
          const parts = [
            valueEdits(context, low, instrument.valueText(high)),
            valueEdits(context, high, instrument.valueText(low)),
          ];
          return fixOfParts('Swap the two values', parts, false);
        },
      });
    }
  },
};

/** What comes of an inverted range of that name, so far as players agree on it. */
function resultText(name: string): string {
  if (name.startsWith('xfin_')) return ': the fade-in ends before it starts';
  if (name.startsWith('xfout_')) return ': the fade-out ends before it starts';
  if (/^(?:on|start)_/.test(name)) return ', so the controller never starts this';
  return ', so this never sounds';
}

function bendOf(names: ParameterNames): number {
  return names.canonical(names.idOf('lobend'));
}

/** Whether the two parameters make a range in the header, or in a region that inherits both of them. */
function isInForce(
  instrument: Instrument,
  header: number,
  lowName: number,
  low: number,
  highName: number,
  high: number,
): boolean {
  const kind = instrument.kind(header);
  if (kind === HeaderKind.region) return true;
  for (let inner = header + 1; inner < instrument.headers.count; inner++) {
    const innerKind = instrument.kind(inner);
    if (innerKind >= HeaderKind.global && innerKind <= kind) return false;
    if (
      innerKind === HeaderKind.region &&
      instrument.effective(inner, lowName) === low &&
      instrument.effective(inner, highName) === high
    )
      return true;
  }
  return false;
}
