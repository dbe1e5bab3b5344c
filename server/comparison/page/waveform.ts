const width = 1000;
const height = 44;
const steps = 500;

/** The outline of one channel as a picture of one shape, in the colour of the text around it; `full` is the value at its edge. */
export function waveform(values: Float32Array, full: number, words: string): string {
  const upper: string[] = [];
  const lower: string[] = [];
  const y = (value: number) => Math.round((height / 2 - (value / full) * (height / 2 - 1)) * 10) / 10;
  for (let step = 0; step < steps; step++) {
    const from = Math.floor((step * values.length) / steps);
    const to = Math.max(from + 1, Math.floor(((step + 1) * values.length) / steps));
    let [lowest, highest] = [0, 0];
    for (let at = from; at < to && at < values.length; at++) {
      lowest = Math.min(lowest, values[at]);
      highest = Math.max(highest, values[at]);
    }
    const x = (step * width) / steps;
    upper.push(`${x} ${y(highest)}`);
    lower.push(`${x} ${Math.max(y(highest) + 0.6, y(lowest))}`);
  }
  const shape = `M${upper.join('L')}L${lower.reverse().join('L')}Z`;
  return `<svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${words}" preserveAspectRatio="none"><line class="zero" x1="0" y1="${height / 2}" x2="${width}" y2="${height / 2}"/><path class="wave" d="${shape}"/></svg>`;
}
