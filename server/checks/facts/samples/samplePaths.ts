import type { Fix, TextEdit } from '../../../model/finding';
import type { Instrument } from '../../../model/instrument';
import { Parameter } from '../../../model/parameterNames';
import type { Span } from '../../../model/text/span';
import type { CheckContext } from '../../rule';
import { fixOfParts, valueEdits } from '../parameters/parameterFixes';
import type { SampleUse } from './sampleUse';

/** Where a finding about a sample stands: its value, or the name where the value is empty. */
export function sampleSpan(instrument: Instrument, { parameter }: SampleUse): Span {
  const span = instrument.valueSpan(parameter);
  return span.end > span.start ? span : instrument.nameSpan(parameter);
}

/** Where a finding about the sample of one region stands: the value in the region itself, else the region's header. */
export function placeInRegion(instrument: Instrument, region: number): Span {
  const parameter = instrument.sampleParameter[region];
  return parameter >= instrument.firstParameter(region)
    ? instrument.valueSpan(parameter)
    : instrument.headerSpan(region);
}

/**
 * A fix that leads a sample to another path. What `default_path` says stays where the path starts with it; where it
 * differs in letter case alone, it is corrected too; where it leads elsewhere, there is no fix.
 */
export function pathFix(
  context: CheckContext,
  use: SampleUse,
  path: string,
  title: string,
  safe: boolean,
): Fix[] {
  const { instrument } = context;
  const control = instrument.control(use.region);
  const prefix = control.defaultPath.replaceAll('\\', '/');
  const start = path.slice(0, prefix.length);
  if (start.toLowerCase() !== prefix.toLowerCase()) return [];
  const parts: TextEdit[][] = [];
  if (start !== prefix) {
    const parameter = instrument.own(control.header, Parameter.default_path);
    parts.push(valueEdits(context, parameter, withSlashesOf(start, control.defaultPath)));
  }
  const written = instrument.valueText(use.parameter);
  const value = path.slice(prefix.length);
  if (value !== written.replaceAll('\\', '/')) {
    parts.push(valueEdits(context, use.parameter, withSlashesOf(value, written)));
  }
  return fixOfParts(title, parts, safe);
}

/** A path with `\` for `/` where the model text separates folders with `\` alone. */
function withSlashesOf(path: string, model: string): string {
  return model.includes('\\') && !model.includes('/') ? path.replaceAll('/', '\\') : path;
}
