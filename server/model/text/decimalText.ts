/** A number in plain decimal notation: the shortest text that reads back to it, without an exponent and without `-0`. */
export function decimalText(number: number): string {
  if (number === 0) return '0';
  const text = String(number);
  if (!text.includes('e')) return text;
  if (Math.abs(number) >= 1) return BigInt(number).toString();
  const [digits = '', exponent = '0'] = Math.abs(number).toString().split('e-');
  const zeros = '0'.repeat(Number(exponent) - 1);
  return `${number < 0 ? '-' : ''}0.${zeros}${digits.replace('.', '')}`;
}
