/** Says why a text cannot be a table at all: it is empty, or bytes of something else. */
export function textFault(text: string): string | undefined {
  const start = text.slice(0, 1 << 16);
  if (start.trim() === '') return 'There is no text to read.';
  let odd = 0;
  for (let at = 0; at < start.length; at++) {
    const code = start.charCodeAt(at);
    if (code === 0) return 'This is not text but binary data.';
    if (code === 0xfffd || (code < 32 && code !== 9 && code !== 10 && code !== 13)) odd++;
  }
  return odd * 10 > start.length ? 'This is not text but binary data.' : undefined;
}
