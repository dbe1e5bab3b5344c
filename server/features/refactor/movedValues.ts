import type { Instrument } from '../../model/instrument';
import { isOpcode } from '../../model/style/keyParameters';

/**
 * The value of a parameter as it is to be written in another header: with its variables where they mean the same there,
 * else with what they stand for. `undefined` where neither can be said to read the same.
 */
export function movedValue(instrument: Instrument, parameter: number, header: number): string | undefined {
  const value = instrument.valueText(parameter);
  const { translated, values } = instrument.parameters;
  if (translated || !values.has(parameter)) return value;
  const { source, start, end } = instrument.valueSpan(parameter);
  const written = instrument.sources[source]?.text.slice(start, end) ?? '';
  const isPlain = /^[\w.#+\- /\\]*$/.test(value) && !value.includes('//') && value.trim() === value;
  if (!/^[\w.#+\- /\\$]*$/.test(written) || isOpcode(instrument, parameter))
    return isPlain ? value : undefined;
  const from = Math.min(instrument.firstParameter(header), parameter);
  const to = Math.max(instrument.endParameter(header), parameter);
  if (!hasDirectiveBetween(instrument, from, to)) return written;
  return isPlain ? value : undefined;
}

/** Whether a variable is defined or a file included between two parameters. */
function hasDirectiveBetween({ directives }: Instrument, from: number, to: number): boolean {
  let low = 0;
  let high = directives.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (directives[middle].parametersBefore < from) low = middle + 1;
    else high = middle;
  }
  for (let at = low; at < directives.length && directives[at].parametersBefore <= to; at++)
    if (directives[at].kind !== 'comment') return true;
  return false;
}

/** Whether a name can be written behind any other parameter. */
export function isPlainName(name: string): boolean {
  return /^[a-z_]\w*$/i.test(name);
}
